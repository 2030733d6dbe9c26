import { describe, expect, test } from 'vitest';
import type { RequestInput } from '../../../shared-core/contract/requests.ts';
import type { BoardSort, Place } from '../../../shared-core/contract/yard.ts';
import { readyOf } from '../../../shared-core/probing/calls/judgement.ts';
import { planSpots } from '../../../shared-core/probing/readings/spots.ts';
import { DAY_MS } from '../../../shared-core/time.ts';
import { emcOfYear } from '../../../shared-core/wood/climate/climate.ts';
import { inEnglish } from '../words/in-english.ts';
import { aimAt, type } from './in-round.ts';
import { pastPage } from './past-page.ts';
import { outlooksMade, withYardOfTwo, yard } from './yard-of-two.ts';

withYardOfTwo();

const list = async (which: Partial<RequestInput<'boards.list'>> = {}) =>
  (await yard.query('boards.list', { stackId: null, search: '', offset: 0, limit: 100, ...which })).rows;
const codes = async (which: Partial<RequestInput<'boards.list'>> = {}) =>
  (await list(which)).map(({ code }) => code);
const theStack = () => yard.query('stacks.get', { id: yard.stack.id });

/** One round: every spot of each board reads the same; null leaves it out. */
async function probe(raws: (number | null)[], woodTempC = 20): Promise<void> {
  const { id: roundId, boards } = await yard.command('rounds.start', {
    stackId: yard.stack.id,
    woodTempC,
  });
  for (const [boardIndex, raw] of raws.entries()) {
    if (raw === null) continue;
    for (const spotIndex of planSpots(boards[boardIndex]!).plan.keys()) {
      await aimAt(roundId, boardIndex, spotIndex);
      await type(roundId, raw);
    }
  }
  await yard.command('rounds.finish', { roundId });
}

/** Boards sawn on the day that the tests begin, so that each can be forecast. */
const sawn = (...named: string[]) =>
  yard.command(
    'boards.add',
    named.map((code) => ({ ...yard.board(code), sawnOn: '2026-05-31' })),
  );

describe('what the forecast says of each board', () => {
  test('is made in the background, and windows are told', async () => {
    await sawn('SAWN-01');
    await outlooksMade();
    const [, unknown, known] = await list();
    expect(unknown?.outlook).toBeNull();
    // A shop at 20 °C and 40 % RH dries wood to 7.7 %, within the range of furniture: Wood Handbook (2021), Table 4-2.
    const { likely, from, to } = readyOf(known!.judgement)!.when;
    expect(likely).toMatch(/^202[67]-/);
    expect(from < likely && (to === null || likely < to)).toBe(true);
    await expect.poll(() => yard.heard('changed').flatMap(({ topics }) => topics)).toContain('outlooks');
  });

  test('says of a place what part of its air was measured, also once that value is deleted', async () => {
    await sawn('SAWN-01');
    await probe([13, 13, 13]);
    const stated = async () => (await yard.query('places.list', {}))[0]!.airOffset;
    const byBoards = (offset: Awaited<ReturnType<typeof stated>>) =>
      (offset?.offsetPct ?? 0) - (offset?.measuredPct ?? 0);
    await outlooksMade();
    const before = await stated();
    const placeId = yard.place.id;
    for (const measuredOn of ['2026-05-29', '2026-05-30', '2026-05-31'])
      await yard.command('air.type', { placeId, measuredOn, tempC: 20, rh: 0.75 });
    await outlooksMade();
    const measured = await stated();
    expect(measured!.measuredPct).toBeGreaterThan(0.1);
    for (const { id } of (await yard.query('air.ofPlace', { placeId })).typed)
      await yard.command('air.delete', { id });
    expect(Math.abs(byBoards(await stated()) - byBoards(measured))).toBeLessThan(0.15);
    await outlooksMade();
    expect(await stated()).toEqual(before);
  });

  test('names the place where it is ready sooner', async () => {
    const air = Array.from({ length: 12 }, () => ({ tempC: 12, rh: 0.8 }));
    const shed = await yard.command('places.add', { name: 'Shed', kind: 'open-shed', air });
    const [board] = await sawn('SAWN-01');
    await yard.command('boards.move', { boardIds: [board!.id], placeId: shed.id, since: yard.now() });
    await outlooksMade();
    // Green, it has to dry there first.
    const [green] = await list({ search: 'SAWN-01' });
    expect(green).toMatchObject({ bestPlaceName: null, judgement: { next: { due: 'first-round' } } });
    yard.later(400 * DAY_MS);
    await yard.command('boards.edit', {
      id: board!.id,
      basedOn: green!.version,
      changed: { sawnOn: '2026-05-30' },
    });
    await outlooksMade();
    const row = (await list({ search: 'SAWN-01' }))[0];
    expect(row).toMatchObject({
      bestPlaceName: 'Shop',
      judgement: { places: [{ ready: { kind: 'too-damp' } }, { ready: { kind: 'likely' } }] },
    });
    expect(row?.judgement.bestPlaceId).toBe(yard.place.id);
  });

  test('has one call for the list, the stack’s counts, the board’s page, its label and its round', {
    tags: 'core',
  }, async () => {
    const air = Array.from({ length: 12 }, () => ({ tempC: 12, rh: 0.8 }));
    const shed = await yard.command('places.add', { name: 'Shed', kind: 'open-shed', air });
    await yard.command('stacks.move', { id: yard.stack.id, placeId: shed.id, since: yard.now() });
    yard.later(30 * DAY_MS);
    await probe([17, 16]);
    await outlooksMade();
    const rows = await list();
    const { calls, lastRoundId } = await theStack();
    expect(rows.map(({ latest }) => latest!.call)).toEqual(['bring-in', 'bring-in']);
    expect(rows.map(({ judgement }) => judgement.call)).toEqual(['bring-in', 'bring-in']);
    expect(calls['bring-in']).toBe(2);
    const due = await yard.query('stacks.dueToMove', { id: yard.stack.id, kind: 'bring-in' });
    expect(due.boards.map(({ code }) => code)).toEqual(rows.map(({ code }) => code));
    expect(due.stay).toEqual([]);
    const round = await yard.query('rounds.get', { roundId: lastRoundId! });
    expect(round.boards.map(({ finding }) => finding!.call)).toEqual(['bring-in', 'bring-in']);
    expect(round.summary.calls['bring-in']).toBe(2);
    const { judgement } = await yard.query('boards.forecast', { id: rows[0]!.id });
    expect(judgement).toEqual(rows[0]!.judgement);
    const [label] = await yard.query('labels.contents', { boardIds: [rows[0]!.id] });
    expect(label!.latest!.call).toBe('bring-in');
  });

  test('names those due to be moved, and those that stay: one too wet for a heated room dries on first', async () => {
    const air = Array.from({ length: 12 }, () => ({ tempC: 12, rh: 0.8 }));
    const shed = await yard.command('places.add', { name: 'Shed', kind: 'open-shed', air });
    await yard.command('stacks.move', { id: yard.stack.id, placeId: shed.id, since: yard.now() });
    yard.later(30 * DAY_MS);
    await probe([17, 26]);
    await outlooksMade();
    const [dry, wet] = await list();
    const due = await yard.query('stacks.dueToMove', { id: yard.stack.id, kind: 'bring-in' });
    expect(due).toEqual({
      boards: [{ id: dry!.id, version: dry!.version, code: dry!.code }],
      stay: [wet!.code],
    });
  });

  test('outdates the round on screen only once a board of it was read', async () => {
    const { id: roundId, boards } = await yard.command('rounds.start', {
      stackId: yard.stack.id,
      woodTempC: 20,
    });
    const outdated = () => yard.heard('round.outdated').length;
    await sawn('SAWN-01');
    await outlooksMade();
    // By the board that came.
    await expect.poll(outdated).toBe(1);
    await sawn('SAWN-02');
    await outlooksMade();
    await expect.poll(outdated).toBe(2);
    for (const _ of planSpots(boards[0]!).plan) await type(roundId, 12);
    await outlooksMade();
    await expect.poll(outdated).toBeGreaterThan(2);
  });

  test('is dropped by a new reading, and made again with it', async () => {
    await sawn('SAWN-01');
    await outlooksMade();
    const before = (await list())[2]?.outlook;
    yard.later(60 * DAY_MS);
    await probe([null, null, 9]);
    expect((await list())[2]).toMatchObject({ latest: { call: 'keep-drying' }, outlook: null });
    await outlooksMade();
    const after = (await list())[2]?.outlook;
    expect(after).toMatchObject({ averagePct: expect.closeTo(9, 0) });
    expect(after).not.toEqual(before);
  });

  test('is made again when a fan moves the air at the boards, and drier then', async () => {
    await sawn('SAWN-01');
    yard.later(20 * DAY_MS);
    await outlooksMade();
    const still = (await list())[2]!.outlook!.averagePct;
    await yard.command('places.edit', {
      id: yard.place.id,
      basedOn: yard.place.version,
      changed: { airMovement: 'fan' },
    });
    await expect
      .poll(async () => (await list())[2]?.outlook?.averagePct, { timeout: 10_000 })
      .toBeLessThan(still - 1);
    const [place] = await yard.query('places.list', {});
    expect(place).toMatchObject({ airMovement: 'fan' });
  });

  test('is made again on another day', async () => {
    await sawn('SAWN-01');
    await outlooksMade();
    const before = (await list())[2]?.outlook;
    yard.later(30 * DAY_MS);
    await yard.command('settings.edit', { sound: false });
    await expect.poll(async () => (await list())[2]?.outlook, { timeout: 10_000 }).not.toEqual(before);
    expect((await list())[2]!.outlook!.averagePct).toBeLessThan(before!.averagePct);
  });
});

describe('the air of a place, as readings tell it', () => {
  const shop = async () => (await yard.query('places.list', {})).find(({ name }) => name === 'Shop')!;

  const damp = Array.from({ length: 12 }, () => ({ tempC: 12, rh: 0.75 }));
  const add = (name: string, kind: Place['kind']) => yard.command('places.add', { name, kind, air: damp });
  const offsetAt = async (placeId: number) =>
    (await yard.query('places.list', {})).find(({ id }) => id === placeId)!.airOffset;
  const forecastOf = async (id: number) => (await yard.query('boards.forecast', { id })).details!.forecast;

  test('is one number, wherever it is stated, though boards there tell different ones; and the same after a restart', async () => {
    const boards = await sawn('SAWN-01', 'SAWN-02');
    yard.later(400 * DAY_MS);
    await probe([null, null, 10.5, 8.5]);
    await outlooksMade();
    const stated = async () => {
      const { airOffset, air, id: placeId } = await shop();
      expect(airOffset).toMatchObject({ boards: 2 });
      const { driestEmcPct } = emcOfYear(air, airOffset!.offsetPct);
      const pages = await Promise.all(boards.map(({ id }) => yard.query('boards.forecast', { id })));
      const rows = await list({ search: 'SAWN' });
      const moved = await yard.query('stacks.ifMoved', { id: yard.stack.id });
      return {
        driestEmcPct,
        everywhere: [
          ...pages.flatMap(({ details, judgement }) => [
            details!.places[0]!.lowestEmcPct,
            // The air of this shop is the same all year.
            details!.emcNowPct,
            judgement.lowestEmc!.emcPct,
          ]),
          ...rows.map(({ judgement }) => judgement.lowestEmc!.emcPct),
          moved.places.find((place) => place.placeId === placeId)!.lowestEmcPct,
        ],
      };
    };
    const { driestEmcPct, everywhere } = await stated();
    expect(everywhere).toHaveLength(9);
    for (const emcPct of everywhere) expect(emcPct).toBeCloseTo(driestEmcPct, 9);
    // By the months alone it would be less.
    expect(driestEmcPct).toBeGreaterThan(emcOfYear(yard.place.air).driestEmcPct + 0.1);
    await yard.command('yard.openDemo', {});
    await yard.command('yard.openOwn', {});
    expect(await stated()).toEqual({ driestEmcPct, everywhere });
  });

  test('of two sheds: readings in one shift the other’s, and narrow its dates; a room’s they do not', async () => {
    const [read, other] = [await add('Pole shed', 'open-shed'), await add('Lean-to', 'open-shed')];
    const room = await add('Cellar', 'heated-room');
    const boards = await sawn('SAWN-01', 'SAWN-02');
    const since = yard.now();
    await yard.command('stacks.move', { id: yard.stack.id, placeId: read.id, since });
    await yard.command('boards.move', { boardIds: [boards[1]!.id], placeId: other.id, since });
    yard.later(400 * DAY_MS);
    const floors = async () => {
      const { places } = await forecastOf(boards[1]!.id);
      const floorAt = (placeId: number) => places.find((place) => place.placeId === placeId)!.floorPct;
      return [floorAt(other.id), floorAt(room.id)] as const;
    };
    const [before, roomBefore] = await floors();
    await probe([null, null, 18]);
    await outlooksMade();
    const [[after, roomAfter], there] = [await floors(), await offsetAt(read.id)];
    expect(after.median).toBeGreaterThan(before.median + 0.1);
    expect(after.high - after.low).toBeLessThan(before.high - before.low);
    expect(roomAfter).toEqual(roomBefore);
    const here = await offsetAt(other.id);
    expect(here).toMatchObject({ boards: 0 });
    expect(here!.offsetPct).toBeGreaterThan(0.1);
    expect(there!.offsetPct).toBeGreaterThan(here!.offsetPct);
    expect(await offsetAt(room.id)).toBeNull();
  });

  test('of two sheds: boards that dry slowly in one are expected to in the other; not so in a fan’s air', async () => {
    const [read, other] = [await add('Pole shed', 'open-shed'), await add('Lean-to', 'open-shed')];
    const withFan = await yard.command('places.add', {
      name: 'Fan shed',
      kind: 'open-shed',
      air: damp,
      airMovement: 'fan',
    });
    const since = yard.now();
    await yard.command('stacks.move', { id: yard.stack.id, placeId: read.id, since });
    const boards = await sawn('SAWN-01', 'SAWN-02');
    await yard.command('boards.move', { boardIds: [boards[1]!.id], placeId: other.id, since });
    yard.later(20 * DAY_MS);
    const monthOn = async () => {
      const { places } = await forecastOf(boards[1]!.id);
      const at = (placeId: number) => places.find((place) => place.placeId === placeId)!.band;
      const averageAt = (placeId: number) =>
        at(placeId).average[at(placeId).atMs.findIndex((ms) => ms >= Date.parse(yard.now()) + 30 * DAY_MS)]!;
      return [averageAt(other.id), averageAt(withFan.id)] as const;
    };
    const [before, fanBefore] = await monthOn();
    await probe([null, null, 60]);
    await outlooksMade();
    const [after, fanAfter] = await monthOn();
    expect(after.median).toBeGreaterThan(before.median + 1);
    // By its EMC alone, which sheds share whatever moves their air.
    expect(Math.abs(fanAfter.median - fanBefore.median)).toBeLessThan(0.3);
  });

  test('is not known without a reading there', async () => {
    await sawn('SAWN-01');
    await outlooksMade();
    expect((await shop()).airOffset).toBeNull();
  });

  // In a shop at 20 °C the wood is not at 45 °C.
  test('is not learned from readings that are all questionable', async () => {
    await probe([15, 16], 45);
    yard.later(100 * DAY_MS);
    await probe([15, 16], 45);
    await outlooksMade();
    expect((await list())[0]!.latest).toMatchObject({ isQuestionable: true });
    expect((await shop()).airOffset).toBeNull();
  });

  const page = (day: string, thereSince: string | null, depth: number | 'unknown' = 8, raw = 9) =>
    yard.command(
      'pastRounds.save',
      pastPage({
        startedAt: `${day}T12:00:00.000Z`,
        depths: [depth, depth],
        lines: yard.boards.map(({ id: boardId }) => ({ boardId, raws: [raw, raw] })),
        thereSince,
      }),
    );

  test('is not learned from readings of a time for which the place of a board is assumed', async () => {
    for (const day of ['2025-03-10', '2025-09-10', '2026-05-10']) await page(day, null);
    await outlooksMade();
    expect((await shop()).airOffset).toBeNull();
    await page('2026-05-20', '2025-03-01');
    await outlooksMade();
    expect((await shop()).airOffset).not.toBeNull();
  });

  test('is not learned from readings whose depth nobody knows', async () => {
    for (const day of ['2025-03-10', '2025-09-10', '2026-05-10', '2026-05-20'])
      await page(day, '2025-03-01', 'unknown');
    await outlooksMade();
    expect((await shop()).airOffset).toBeNull();
  });

  // The air of the shop makes it 7.7 %: 20 °C and 40 %, Wood Handbook (FPL-GTR-282), Table 4-2.
  test('is not learned from boards far from its EMC: those still dry, or something else is wrong', async () => {
    await page('2026-05-10', '2025-03-01', 8, 18);
    await outlooksMade();
    expect((await shop()).airOffset).toBeNull();
  });

  test('is forgotten of a board that is moved away, and where other months are given', async () => {
    const loft = await yard.command('places.add', { name: 'Loft', kind: 'shop', air: yard.place.air });
    const [board] = await sawn('SAWN-01');
    yard.later(400 * DAY_MS);
    await probe([null, null, 10.5]);
    await outlooksMade();
    expect((await shop()).airOffset).not.toBeNull();
    await yard.command('boards.move', { boardIds: [board!.id], placeId: loft.id, since: yard.now() });
    await outlooksMade();
    expect((await yard.query('places.list', {})).map(({ airOffset }) => airOffset)).toEqual([null, null]);
  });
});

test('a place lists the stacks of which boards are there', async () => {
  const loft = await yard.command('places.add', { name: 'Loft', kind: 'shop', air: yard.place.air });
  await yard.command('boards.move', {
    boardIds: [yard.boards[0]!.id],
    placeId: loft.id,
    since: yard.now(),
  });
  const here = { id: yard.stack.id, name: 'Walnut', boards: 1 };
  expect((await yard.query('places.list', {})).map(({ stacks }) => stacks)).toEqual([[here], [here]]);
});

describe('a board moved elsewhere', () => {
  test('leaves its stack’s counts, call and list, and comes back', async () => {
    const air = Array.from({ length: 12 }, () => ({ tempC: 20, rh: 0.35 }));
    const bench = await yard.command('places.add', { name: 'Bench room', kind: 'heated-room', air });
    await probe([14, 8.2]);
    const boardIds = [yard.boards[0]!.id];
    yard.later(DAY_MS);
    await yard.command('boards.move', { boardIds, placeId: bench.id, since: yard.now() });
    expect(await theStack()).toMatchObject({ boards: 1, probed: 1, elsewhere: { boards: 1, ready: 0 } });
    expect(await codes({ stackId: yard.stack.id })).toEqual(['WAL-02']);
    expect(await list({ stackId: yard.stack.id, filter: 'elsewhere' })).toMatchObject([
      { code: 'WAL-01', isElsewhere: true, placeName: 'Bench room' },
    ]);
    expect(await codes()).toEqual(['WAL-01', 'WAL-02']);
    yard.later(DAY_MS);
    await yard.command('boards.move', { boardIds, placeId: yard.place.id, since: yard.now() });
    expect(await theStack()).toMatchObject({ boards: 2, elsewhere: { boards: 0, ready: 0 } });
  });

  test('stays where it is when the stack is moved', async () => {
    const air = Array.from({ length: 12 }, () => ({ tempC: 20, rh: 0.35 }));
    const [bench, loft] = [
      await yard.command('places.add', { name: 'Bench room', kind: 'heated-room', air }),
      await yard.command('places.add', { name: 'Loft', kind: 'open-shed', air }),
    ];
    const since = yard.now();
    await yard.command('boards.move', { boardIds: [yard.boards[0]!.id], placeId: bench.id, since });
    await yard.command('stacks.move', { id: yard.stack.id, placeId: loft.id, since });
    expect((await list()).map(({ placeName }) => placeName)).toEqual(['Bench room', 'Loft']);
  });
});

describe('a stack in lists', () => {
  test('is due for its first round until it was probed', async () => {
    expect((await theStack()).due?.kind).toBe('first-round');
    await probe([12, 12]);
    const { due, averagePct, call } = await theStack();
    expect(due).toBeNull();
    expect(averagePct).toBeCloseTo((await list())[0]!.latest!.averagePct!, 5);
    expect(inEnglish(call!.reasons[0]!)).toBe('Both need drying.');
  });

  test('counts no average that rests on questionable readings, and no interval goes with it', async () => {
    await probe([12, null]);
    // In a shop at 20 °C the wood is not at 45 °C.
    await probe([null, 16], 45);
    const [sound, questionable] = await list();
    expect(questionable!.latest).toMatchObject({
      averagePct: expect.any(Number),
      isQuestionable: true,
      lowPct: null,
      highPct: null,
    });
    expect((await theStack()).averagePct).toBeCloseTo(sound!.latest!.averagePct!, 5);
    const plan = await yard.query('stacks.plan', { id: yard.stack.id, certainty: 0.9 });
    expect(plan!.allProbed!.facts).toMatchObject({ averagePct: sound!.latest!.averagePct });
  });

  test('says when its next board and its last are likely ready', async () => {
    await sawn('THIN-01');
    await yard.command('boards.add', [{ ...yard.board('THICK-01'), thicknessMm: 34, sawnOn: '2026-05-31' }]);
    expect(await theStack()).toMatchObject({ isForecasting: true, nextReady: null });
    await outlooksMade();
    const [, , thin, thick] = await list();
    expect(await theStack()).toMatchObject({
      isForecasting: false,
      nextReady: { when: readyOf(thin!.judgement)!.when, placeName: null },
      lastReady: { when: readyOf(thick!.judgement)!.when, placeName: null },
    });
  });

  test('names no date of a board that is to be probed again', async () => {
    await probe([12, null]);
    await probe([null, 16], 45);
    await outlooksMade();
    const [sound, questionable] = await list();
    expect(questionable!.latest!.call).toBe('probe-again');
    expect(questionable!.outlook).not.toBeNull();
    const when = readyOf(sound!.judgement)?.when;
    expect(await theStack()).toMatchObject({
      averaged: 1,
      nextReady: when ? { when } : null,
      lastReady: when ? { when } : null,
    });
  });
});

describe('a list of boards', () => {
  test('is sorted both ways, with boards that have nothing to sort by last', async () => {
    await sawn('C-3');
    // Sawn so long ago that it may well be at 11%.
    await yard.command('boards.add', [{ ...yard.board('A-1'), sawnOn: '2025-05-31' }]);
    await yard.command('boards.add', [{ ...yard.board('B-2'), speciesId: 'oak-northern-red' }]);
    await probe([14, 7.4, null, 11]);
    await outlooksMade();
    const by = (sort: BoardSort, descending = false) => codes({ sort, descending });
    expect(await by('added')).toEqual(['WAL-01', 'WAL-02', 'C-3', 'A-1', 'B-2']);
    expect(await by('code')).toEqual(['A-1', 'B-2', 'C-3', 'WAL-01', 'WAL-02']);
    expect(await by('code', true)).toEqual(['WAL-02', 'WAL-01', 'C-3', 'B-2', 'A-1']);
    expect(await by('average')).toEqual(['WAL-02', 'A-1', 'WAL-01', 'C-3', 'B-2']);
    expect(await by('average', true)).toEqual(['WAL-01', 'A-1', 'WAL-02', 'B-2', 'C-3']);
    expect((await by('read'))[0]).toBe('WAL-01');
    // Black walnut before Northern red oak.
    expect((await by('species')).at(-1)).toBe('B-2');
    expect((await by('species', true))[0]).toBe('B-2');
    const calls = (await list({ sort: 'call' })).map(({ latest }) => latest?.call ?? null);
    expect(calls.slice(3)).toEqual([null, null]);
    const ready = (await list({ sort: 'ready' })).map(
      ({ judgement }) => readyOf(judgement)?.when.likely ?? '9',
    );
    expect(ready).toEqual(ready.toSorted());
    // One stack has its own way to the same order.
    for (const sort of ['code', 'average', 'call', 'ready', 'read', 'species'] as const) {
      for (const descending of [false, true]) {
        expect(await codes({ stackId: yard.stack.id, sort, descending })).toEqual(
          await codes({ sort, descending }),
        );
      }
    }
  });

  test('is filtered by call, with the search, and paged', async () => {
    await probe([14, null]);
    expect(await codes({ filter: 'keep-drying' })).toEqual(['WAL-01']);
    expect(await codes({ filter: 'not-probed' })).toEqual(['WAL-02']);
    expect(await codes({ filter: 'ready' })).toEqual([]);
    expect(await codes({ filter: 'not-probed', search: 'wal-01' })).toEqual([]);
    const page = { stackId: null, search: '', sort: 'code', descending: true, offset: 1, limit: 1 } as const;
    const { total, rows } = await yard.query('boards.list', page);
    expect({ total, codes: rows.map(({ code }) => code) }).toEqual({ total: 2, codes: ['WAL-01'] });
  });
});
