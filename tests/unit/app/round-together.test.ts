/**
 * A finished or half-walked round is held together in the background: what only shows there reaches the boards' pages,
 * the lists and the open round. The suspicions themselves are the core's (`tests/unit/probing/suspicions-of-round.test.ts`).
 */
import { beforeEach, expect, test, vi } from 'vitest';
import { planSpots } from '../../../shared-core/probing/readings/spots.ts';
import { DAY_MS } from '../../../shared-core/time.ts';
import { message } from '../../../shared-core/words/message.ts';
import { aimAt, type } from './in-round.ts';
import { withYardOfTwo, yard } from './yard-of-two.ts';

const CODES = ['WAL-01', 'WAL-02', 'WAL-03', 'WAL-04', 'WAL-05', 'WAL-06', 'WAL-07', 'WAL-08'];
/** Two of the boards were sawn later than the rest, and read so at first. */
const FIRST = [14, 14, 14, 24, 14, 14, 14, 14];
/** Three weeks in the shop later; WAL-04 and WAL-07 were taken for each other. */
const SWAPPED = [12, 12, 12, 12, 12, 12, 16, 12];
const SOUND = [12, 12, 12, 16, 12, 12, 12, 12];

// Some hundred readings are committed to a real file, one by one.

withYardOfTwo({ thicknessMm: 27 });
let idOf: Map<string, number>;
beforeEach(async () => {
  await yard.command(
    'boards.add',
    CODES.slice(2).map((code) => ({ ...yard.board(code), lengthMm: 900 })),
  );
  const { rows } = await yard.query('boards.list', {
    stackId: yard.stack.id,
    search: '',
    offset: 0,
    limit: 100,
  });
  idOf = new Map(rows.map(({ code, id }) => [code, id]));
});

/** Walks the stack and reads each board at that, a little wetter inside. */
async function walk(pcts: readonly number[], boards = pcts.length): Promise<number> {
  const { id: roundId, boards: inRound } = await yard.command('rounds.start', {
    stackId: yard.stack.id,
    woodTempC: 20,
  });
  for (const [boardIndex, pct] of pcts.slice(0, boards).entries()) {
    await aimAt(roundId, boardIndex);
    for (const [index, { spot }] of planSpots(inRound[boardIndex]!).plan.entries()) {
      await type(roundId, pct + (spot.depth === 'core' ? 1 : 0) + 0.1 * (index % 2));
      yard.later(5000);
    }
  }
  return roundId;
}

async function walkAll(pcts: readonly number[]): Promise<number> {
  const roundId = await walk(pcts);
  await yard.command('rounds.finish', { roundId });
  return roundId;
}

const mixedUpWith = (otherCode: string) => message('suspicion.apart-from-stack.swapped.do', { otherCode });

const roundSuspicionsOf = async (code: string, roundId: number) => {
  const { readings } = await yard.query('boards.get', { id: idOf.get(code) as number });
  return readings
    .filter((reading) => reading.roundId === roundId)
    .flatMap(({ suspicions }) => suspicions)
    .filter(({ rule }) => rule === 'apart-from-stack');
};

const reasonInList = async (code: string) => {
  const { rows } = await yard.query('boards.list', { stackId: null, search: code, offset: 0, limit: 1 });
  return rows[0]?.latest;
};

test('two boards mixed up are found once the round is finished, each with the ID of the other', async () => {
  await walkAll(FIRST);
  yard.later(21 * DAY_MS);
  const roundId = await walkAll(SWAPPED);
  await vi.waitFor(async () => {
    expect((await roundSuspicionsOf('WAL-04', roundId))[0]?.whatToDo).toEqual(mixedUpWith('WAL-07'));
    expect((await roundSuspicionsOf('WAL-07', roundId))[0]?.whatToDo).toEqual(mixedUpWith('WAL-04'));
  });
  expect(await roundSuspicionsOf('WAL-02', roundId)).toEqual([]);
  // The list shows it, too.
  expect(await reasonInList('WAL-04')).toMatchObject({ call: 'probe-again', roundId });
});

test('a round in which nothing is odd changes no call', async () => {
  await walkAll(FIRST);
  yard.later(21 * DAY_MS);
  const roundId = await walkAll(SOUND);
  const before = await Promise.all(CODES.map(reasonInList));
  const heard = yard.heard('changed').length;
  await vi.waitFor(() => expect(yard.heard('changed').length).toBeGreaterThan(heard), 15_000);
  for (const code of CODES) expect(await roundSuspicionsOf(code, roundId)).toEqual([]);
  expect(await Promise.all(CODES.map(reasonInList))).toEqual(before);
});

test('the suspicion comes up while the stack is still being walked, at the board it is about', async () => {
  await walkAll(FIRST);
  yard.later(21 * DAY_MS);
  const roundId = await walk(SWAPPED, 7);
  await vi.waitFor(() => {
    const changes = yard.heard('round.changed').filter((change) => change.roundId === roundId);
    const newest = changes.findLast(({ board }) => board?.code === 'WAL-04')?.board;
    expect(newest?.assessment?.readings[0]?.suspicions).toContainEqual(
      expect.objectContaining({ rule: 'apart-from-stack', whatToDo: mixedUpWith('WAL-07') }),
    );
  });
});

test('excluded readings take the suspicion on the other board with them', async () => {
  await walkAll(FIRST);
  yard.later(21 * DAY_MS);
  const roundId = await walkAll(SWAPPED);
  await vi.waitFor(async () => expect(await roundSuspicionsOf('WAL-04', roundId)).not.toEqual([]), 15_000);
  const { readings } = await yard.query('boards.get', { id: idOf.get('WAL-07') as number });
  for (const { id: readingId } of readings.filter((reading) => reading.roundId === roundId)) {
    await yard.command('readings.exclude', { readingId, why: { text: 'That was another board.' } });
  }
  await vi.waitFor(async () => {
    const left = await roundSuspicionsOf('WAL-04', roundId);
    expect(left.map(({ whatToDo }) => whatToDo)).not.toContainEqual(mixedUpWith('WAL-07'));
  });
});

test('what a round said is still there when the yard is opened again', async () => {
  await walkAll(FIRST);
  yard.later(21 * DAY_MS);
  const roundId = await walkAll(SWAPPED);
  await vi.waitFor(async () => expect(await roundSuspicionsOf('WAL-04', roundId)).not.toEqual([]), 15_000);
  await yard.command('yard.openDemo', {});
  await yard.command('yard.openOwn', {});
  expect(await roundSuspicionsOf('WAL-04', roundId)).not.toEqual([]);
});

test('a comparison cut short by leaving the yard is taken up when it is opened again', async () => {
  await walkAll(FIRST);
  yard.later(21 * DAY_MS);
  const roundId = await walkAll(SWAPPED);
  await yard.command('yard.openDemo', {});
  await yard.command('yard.openOwn', {});
  await vi.waitFor(async () => expect(await roundSuspicionsOf('WAL-07', roundId)).not.toEqual([]), 15_000);
});

test('a board entered as another wood than its stack is asked about; a person who looked has the last word', async () => {
  const id = idOf.get('WAL-04') as number;
  const { board } = await yard.query('boards.get', { id });
  // Typed figures stand on the scale of Douglas-fir; walnut has no curve, and elm reads some 3 % lower.
  const elm = await yard.command('boards.edit', {
    id,
    basedOn: board.version,
    changed: { speciesId: 'elm-american' },
  });
  await walkAll([20, 20.3, 19.8, 20.1, 20.2, 19.9, 20, 20.1]);
  const rulesNow = async () =>
    (await yard.query('boards.get', { id })).readings.flatMap(({ suspicions }) =>
      suspicions.map(({ rule }) => rule),
    );
  await vi.waitFor(async () => expect(await rulesNow()).toContain('species-unlike-stack'), 15_000);

  await yard.command('boards.confirmSpecies', { id });
  await vi.waitFor(async () => expect(await rulesNow()).not.toContain('species-unlike-stack'), 15_000);
  expect((await yard.query('boards.get', { id })).isSpeciesConfirmed).toBe(true);

  // What was confirmed was elm: said to be another wood, it is open again.
  await yard.command('boards.edit', {
    id,
    basedOn: elm.version,
    changed: { speciesId: 'hickory-mockernut' },
  });
  expect((await yard.query('boards.get', { id })).isSpeciesConfirmed).toBe(false);
});
