import { expect, test } from 'vitest';
import type { CommandName, RequestInput } from '../../../shared-core/contract/requests.ts';
import { doing, redo, seen, undo } from './seen-yard.ts';
import { withYardOfTwo, yard } from './yard-of-two.ts';

// Boards that background work changes meanwhile would not be as they were.
withYardOfTwo({ forecastAfterMs: 600_000 });

/** The same numbers for the same seed: mulberry32, a public-domain generator. */
function randomBy(seed: number) {
  let state = seed;
  return (): number => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4_294_967_296;
  };
}

/** Does something at random to the yard, whatever it now holds. Answers its act; null where it is refused. */
function createActor(random: () => number) {
  let count = 0;
  const upTo = (n: number): number => Math.floor(random() * n);
  const oneOf = <T>(all: readonly T[]): T => all[upTo(all.length)] as T;
  const name = (word: string): string => `${word} ${++count}`;
  const boards = async () =>
    (await yard.query('boards.list', { stackId: null, search: '', offset: 0, limit: 500 })).rows;
  const openRound = async (): Promise<number> =>
    (await yard.command('rounds.start', { stackId: yard.stack.id, woodTempC: null, startedOn: null })).id;

  const kinds: (() => Promise<readonly [CommandName, unknown]>)[] = [
    async () => ['boards.add', [yard.board(`NEW-${++count}`), yard.board(`NEW-${++count}`)]],
    async () => {
      const { id, version } = oneOf(await boards());
      return [
        'boards.edit',
        { id, basedOn: version, changed: { note: name('Note'), widthMm: 100 + upTo(9) } },
      ];
    },
    async () => {
      const some = (await boards()).filter(() => random() < 0.5);
      return [
        'boards.editTogether',
        {
          boards: some.map(({ id, version }) => ({ id, basedOn: version })),
          changed: { speciesId: oneOf(['oak-white', 'walnut-black', 'ash-white']) },
        },
      ];
    },
    async () => ['places.add', { ...yard.place, name: name('Place') }],
    async () => {
      const place = oneOf(await yard.query('places.list', {}));
      return ['boards.move', { boardIds: [oneOf(await boards()).id], placeId: place.id, since: yard.now() }];
    },
    async () => {
      const { id, version } = oneOf(await yard.query('places.list', {}));
      return ['places.edit', { id, basedOn: version, changed: { name: name('Renamed') } }];
    },
    async () => ['settings.edit', { nextBoardAfterS: oneOf([2, 5, null]) }],
    async () => {
      const board = oneOf(await boards());
      const { readings } = await yard.query('boards.get', { id: board.id });
      const newest = readings
        .filter(({ spotIndex, excluded }) => spotIndex === 0 && excluded === null)
        .at(-1);
      return [
        'rounds.saveTyped',
        {
          roundId: await openRound(),
          boardId: board.id,
          spotIndex: 0,
          newestReadingId: newest?.id ?? null,
          raw: 8 + upTo(100) / 10,
        },
      ];
    },
    async () => {
      const { readings } = await yard.query('boards.get', { id: oneOf(await boards()).id });
      return ['readings.exclude', { readingId: oneOf(readings).id, why: { code: 'defect' } }];
    },
    async () => ['rounds.setTemperature', { roundId: await openRound(), boardId: null, woodTempC: upTo(30) }],
    async () => ['rounds.finish', { roundId: await openRound() }],
    async () => ['samples.weigh', { boardId: oneOf(await boards()).id, kg: 5 + random(), at: yard.now() }],
    async () => ['labels.recordPrint', { boardIds: [oneOf(await boards()).id], paperId: 'sheet' }],
  ];

  return async (): Promise<string | null> => {
    try {
      const [command, input] = await oneOf(kinds)();
      return (await doing(command, input as RequestInput<typeof command>)).act;
    } catch {
      return null;
    }
  };
}

/** How many acts each seed does, and what the list of acts says then: those that only prepared one are among them. */
const ACTS = 25;
const idsDone = async (): Promise<string[]> =>
  (await yard.query('acts.list', { boardId: null, before: null, limit: 200 })).acts.map(({ id }) => id);

test.each([1, 2, 28])(
  'random acts, all undone and all redone, leave the yard as it was: seed %i',
  async (seed) => {
    const act = createActor(randomBy(seed));
    const earlier = new Set(await idsDone());
    const before = await seen();
    let done = 0;
    for (let tries = 0; done < ACTS && tries < ACTS * 3; tries++) if ((await act()) !== null) done++;
    expect(done).toBe(ACTS);
    const after = await seen();
    const acts = (await idsDone()).filter((id) => !earlier.has(id));
    expect(acts.length).toBeGreaterThanOrEqual(ACTS);
    for (const id of acts) await undo(id);
    expect(await seen()).toEqual(before);
    for (const id of acts.toReversed()) await redo(id);
    expect(await seen()).toEqual(after);
    for (const id of acts) await undo(id);
    expect(await seen()).toEqual(before);
  },
);
