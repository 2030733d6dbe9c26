import { describe, expect, test } from 'vitest';
import type { ForecastDetails } from '../../../shared-core/contract/forecast.ts';
import { boardForecastSchema } from '../../../shared-core/contract/forecast.ts';
import type { NewBoard } from '../../../shared-core/contract/yard.ts';
import { planSpots } from '../../../shared-core/probing/readings/spots.ts';
import { DAY_MS } from '../../../shared-core/time.ts';
import { message } from '../../../shared-core/words/message.ts';
import { expectWhole } from '../words/in-english.ts';
import { aimAt, type } from './in-round.ts';
import { outlooksMade, withYardOfTwo, yard } from './yard-of-two.ts';

/** The test's clock starts at 1 June 2026. */
const startMs = Date.parse('2026-06-01T08:00:00.000Z');
const dayAfter = (days: number) => new Date(startMs + days * DAY_MS).toISOString().slice(0, 10);
/** Wood comes to about 15 % in it, all year. */
const dampAir = Array.from({ length: 12 }, () => ({ tempC: 15, rh: 0.78 }));

withYardOfTwo({ thicknessMm: 27 });

/** The Shop comes to 7.7 %, and boards there are to come to 8 % or less: its air may not be dry enough. */
const airInDoubt = expect.objectContaining({ code: 'forecast.assumed.air-in-doubt' });

async function addBoard(changes: Partial<NewBoard>, code = 'NEW-01'): Promise<number> {
  const [board] = await yard.command('boards.add', [{ ...yard.board(code), ...changes }]);
  return board!.id;
}

/** One round over a board of the stack, its shell and core as the meter shows them; null: the core is not read. */
async function probe(boardId: number, shell: number, core: number | null, woodTempC = 20): Promise<void> {
  const { id: roundId, boards } = await yard.command('rounds.start', { stackId: yard.stack.id, woodTempC });
  const boardIndex = boards.findIndex((board) => board.boardId === boardId);
  for (const [spotIndex, { spot }] of planSpots(boards[boardIndex]!).plan.entries()) {
    const pct = spot.depth === 'shell' ? shell : core;
    if (pct === null) continue;
    await aimAt(roundId, boardIndex, spotIndex);
    await type(roundId, pct);
  }
  await yard.command('rounds.finish', { roundId });
}

async function details(id: number): Promise<ForecastDetails> {
  const answer = await yard.query('boards.forecast', { id });
  expect(boardForecastSchema.parse(JSON.parse(JSON.stringify(answer)))).toBeTruthy();
  if (answer.details === null) throw new Error(answer.whyNot?.code);
  const { assumptions, whyNoWarp } = answer.details;
  expectWhole([...assumptions, ...answer.judgement.reasons, ...(whyNoWarp ? [whyNoWarp] : [])]);
  return answer.details;
}
const spread = ({ forecast }: ForecastDetails) => forecast.now.average.high - forecast.now.average.low;

describe('there is no forecast for', () => {
  test('a board never probed, without its sawing date: it says what to do', async () => {
    const answer = await yard.query('boards.forecast', { id: yard.boards[0]!.id });
    expect(answer).toMatchObject({
      details: null,
      whyNot: message('forecast.none-to-begin-with'),
      judgement: { call: null, average: null, places: [], next: { step: 'probe', due: 'first-round' } },
    });
  });

  test('a board that does not exist', async () => {
    expect(await yard.refusal('boards.forecast', { id: 999 })).toMatch(/board is not in this yard/);
  });
});

// 54 mm white oak, sawn 60 days before, shell 22 and 23 %: its core was said to be at 25 to 28 %, and such a core may be near
// green (common practice, no source).
test('a thick wet board of which only the shell was read leaves its core wide open, by its sawing date', async () => {
  const oak = { speciesId: 'oak-white', thicknessMm: 54, thicknessQuarters: null };
  const id = await addBoard({ ...oak, sawnOn: dayAfter(-60) });
  await probe(id, 22.5, null);
  const { forecast, assumptions } = await details(id);
  const { low, high } = forecast.now.core;
  expect(low).toBeGreaterThan(28);
  expect(high - low).toBeGreaterThan(12);
  expect(assumptions.map(({ code }) => code)).toContain('forecast.assumed.there-since-sawn');
});

describe('a board of which only the sawing date is known', () => {
  test('is forecast as such boards dry, green on that day', { tags: 'core' }, async () => {
    const id = await addBoard({ sawnOn: dayAfter(0) });
    yard.later(60 * DAY_MS);
    const { forecast, readings, assumptions, stays } = await details(id);
    expect(readings).toEqual([]);
    expect(assumptions).toEqual([airInDoubt]);
    expect(stays).toMatchObject([{ placeName: 'Shop' }]);
    expect(forecast.past.average[0]!.median).toBeGreaterThan(45);
    expect(forecast.now.average.median).toBeLessThan(forecast.past.average[0]!.median - 10);
  });

  test('entered long after: it is assumed to have been where it is now, and that is said', async () => {
    const id = await addBoard({ sawnOn: dayAfter(-200) });
    const { stays, assumptions } = await details(id);
    expect(stays[0]!.fromMs).toBeLessThanOrEqual(new Date(2025, 10, 14).getTime());
    expect(assumptions).toEqual([
      message('forecast.assumed.there-since-sawn', {
        enteredOn: expect.stringMatching(/^2026-06-01T/),
        placeName: 'Shop',
      }),
      airInDoubt,
    ]);
  });
});

describe('a board that was probed', () => {
  test('one round narrows what is known of it, and its readings are at their depths with their uncertainty', async () => {
    const id = await addBoard({ sawnOn: dayAfter(0) });
    yard.later(60 * DAY_MS);
    const before = await details(id);
    await probe(id, 12, 16);
    const after = await details(id);
    expect(spread(after)).toBeLessThan(spread(before) / 2);
    expect(after.readings).toHaveLength(4);
    for (const { depth, depthFraction, standardUncertaintyPct } of after.readings) {
      expect(standardUncertaintyPct).toBeGreaterThan(0);
      if (depth === 'core') expect(depthFraction).toBeCloseTo(0.5, 1);
      else expect(depthFraction).toBeLessThan(0.25);
    }
    const shell = after.forecast.now.shell.median;
    expect(shell).toBeLessThan(after.forecast.now.core.median);
  });

  test('a round of which all readings are questionable does not change it, and it says so', async () => {
    const id = await addBoard({ sawnOn: dayAfter(0) });
    yard.later(60 * DAY_MS);
    await probe(id, 12, 16);
    yard.later(DAY_MS);
    // In a shop at 20 °C the wood is not at 45 °C.
    await probe(id, 12, 16, 45);
    const { readings, assumptions } = await details(id);
    expect(new Set(readings.map(({ atMs }) => atMs))).toEqual(new Set([startMs + 60 * DAY_MS]));
    expect(assumptions).toEqual([
      message('forecast.assumed.readings-unused', {
        readOn: expect.stringMatching(/^2026-08-01T/),
      }),
      airInDoubt,
    ]);
  });

  test('of which all readings are questionable is forecast from its sawing date, as before them', async () => {
    const id = await addBoard({ sawnOn: dayAfter(0) });
    yard.later(60 * DAY_MS);
    const before = await details(id);
    await probe(id, 12, 16, 45);
    const after = await details(id);
    expect(after).toMatchObject({ readings: [], isByQuestionable: false });
    expect(after.forecast.now.average).toEqual(before.forecast.now.average);
    expect(after.assumptions).toEqual([
      message('forecast.assumed.readings-unused', { readOn: expect.stringMatching(/^2026-07-31T/) }),
      airInDoubt,
    ]);
    await outlooksMade();
    const every = {
      stackId: null,
      search: '',
      sort: 'code',
      descending: false,
      offset: 0,
      limit: 50,
    } as const;
    const { rows } = await yard.query('boards.list', every);
    const listed = rows.find((row) => row.id === id)!;
    expect(listed.judgement).toMatchObject({
      call: 'probe-again',
      average: { averagePct: expect.closeTo(before.forecast.now.average.median, 1), readOn: null },
    });
  });

  test('of which all readings are questionable, without a sawing date, has a forecast by them, which it says', async () => {
    const id = yard.boards[0]!.id;
    await probe(id, 12, 16, 45);
    const { readings, assumptions, isByQuestionable } = await details(id);
    expect(readings).toHaveLength(4);
    expect(isByQuestionable).toBe(true);
    expect(assumptions).toContainEqual(message('forecast.assumed.readings-questionable'));
  });

  test('a first round of which all readings are questionable is no beginning where a later one is sound', async () => {
    const id = yard.boards[0]!.id;
    await probe(id, 12, 16, 45);
    yard.later(10 * DAY_MS);
    // As the first round reads at 45 °C, so that it is no jump.
    await probe(id, 8.5, 11.5);
    const { forecast, isByQuestionable } = await details(id);
    expect(isByQuestionable).toBe(false);
    expect(forecast.past.atMs[0]).toBeGreaterThanOrEqual(startMs + 10 * DAY_MS);
  });

  test('without a sawing date, its history starts with its first round', async () => {
    const id = yard.boards[0]!.id;
    await probe(id, 14, 18);
    yard.later(30 * DAY_MS);
    const { forecast, assumptions } = await details(id);
    expect(assumptions[0]).toEqual(message('forecast.assumed.from-first-round'));
    expect(forecast.past.average[0]!.median).toBeGreaterThan(14);
    expect(forecast.past.average[0]!.median).toBeLessThan(21);
    expect(forecast.now.average.median).toBeLessThan(forecast.past.average[0]!.median);
  });

  test('on the day of its first round, its average and core are as they were read', async () => {
    const id = yard.boards[0]!.id;
    await probe(id, 18, 30);
    const { forecast } = await details(id);
    const { averagePct, corePct } = (await yard.query('boards.get', { id })).board.latest!;
    expect(Math.abs(forecast.now.average.median - averagePct!)).toBeLessThan(1);
    expect(Math.abs(forecast.now.core.median - corePct!)).toBeLessThan(2);
  });

  test('an excluded reading teaches nothing', async () => {
    const id = await addBoard({ sawnOn: dayAfter(0) });
    yard.later(60 * DAY_MS);
    await probe(id, 12, 16);
    const [first] = (await yard.query('boards.get', { id })).readings;
    await yard.command('readings.exclude', { readingId: first!.id, why: { text: 'In a knot.' } });
    expect((await details(id)).readings).toHaveLength(3);
  });

  test('boards of its stack and log learn from it; boards of another log do not', async () => {
    const sawnOn = dayAfter(0);
    const probed = await addBoard({ code: 'A-01', log: 'Lane', sawnOn });
    const sibling = await addBoard({ code: 'A-02', log: 'lane', sawnOn });
    const stranger = await addBoard({ code: 'B-01', log: 'Ridge', sawnOn });
    // 16 mm walnut is about there then: much later such readings would tell of an odd log, and widen instead.
    yard.later(20 * DAY_MS);
    await probe(probed, 12, 16);
    const learned = await details(sibling);
    const alone = await details(stranger);
    expect(learned.learnedFrom).toBe(1);
    expect(alone.learnedFrom).toBe(0);
    expect(spread(learned)).toBeLessThan(0.8 * spread(alone));
    // Boards are prepared once until something is written.
    for (const { id: readingId } of (await yard.query('boards.get', { id: probed })).readings)
      await yard.command('readings.exclude', { readingId, why: { text: 'The wrong board.' } });
    expect((await details(sibling)).learnedFrom).toBe(0);
  });

  test('the first board of 1,200 learns from the only one that was probed, the 1,100th', async () => {
    const sawnOn = dayAfter(0);
    const named = (from: number, to: number) =>
      Array.from({ length: to - from }, (_, n) => ({
        ...yard.board(`L-${from + n}`),
        log: 'Lane',
        sawnOn,
      }));
    const boards = [
      ...(await yard.command('boards.add', named(1, 401))),
      ...(await yard.command('boards.add', named(401, 801))),
      ...(await yard.command('boards.add', named(801, 1201))),
    ];
    const first = boards[0]!.id;
    yard.later(20 * DAY_MS);
    const alone = await details(first);
    await probe(boards[1099]!.id, 12, 16);
    const learned = await details(first);
    expect([alone.learnedFrom, learned.learnedFrom]).toEqual([0, 1]);
    expect(spread(learned)).toBeLessThan(0.8 * spread(alone));
  });
});

describe('where it is, and elsewhere', () => {
  test('a damp place is said to gain nothing, with its floor, and the drier place with its date', async () => {
    const damp = await yard.command('places.add', { name: 'Fence row', kind: 'outdoors', air: dampAir });
    const id = await addBoard({ sawnOn: dayAfter(0) });
    await yard.command('stacks.move', {
      id: yard.stack.id,
      placeId: damp.id,
      since: new Date(startMs).toISOString(),
    });
    yard.later(400 * DAY_MS);
    await probe(id, 14.5, 15.5);
    const { forecast, places, stays } = await details(id);
    expect(places.map(({ name }) => name)).toEqual(['Fence row', 'Shop']);
    expect(stays.at(-1)).toMatchObject({ fromMs: startMs, placeName: 'Fence row' });
    expect(forecast.places[0]!.never).toBe(true);
    expect(forecast.places[0]!.floorPct.median).toBeGreaterThan(13);
    expect(places.map(({ ready }) => ready?.kind)).toEqual(['too-damp', 'likely']);
    const { judgement } = await yard.query('boards.forecast', { id });
    expect(judgement).toMatchObject({
      call: 'bring-in',
      bestPlaceId: yard.place.id,
      next: { step: 'move', placeId: yard.place.id },
    });
    expect(judgement.reasons[1]!.code).toBe('call.place-too-damp-all-year');
  });

  test('a board that stays damper than its place should make it: the place’s months are to be checked', async () => {
    const id = await addBoard({ sawnOn: dayAfter(0) });
    yard.later(400 * DAY_MS);
    await probe(id, 10.9, 11.2);
    await outlooksMade();
    const { assumptions, forecast } = await details(id);
    // It is the only board there, so the place is shown with what it says.
    expect(assumptions).toEqual([message('forecast.assumed.check-air', { placeName: 'Shop' })]);
    // 20 °C and 40 % give 7.7 % (Wood Handbook, Table 4-2, between its rows): the floor is above that by more than
    // such air is usually off, 0.55.
    expect(forecast.places[0]!.floorPct.median).toBeGreaterThan(8.25);
  });

  test('where its air may keep it above the target, the latest date is open, and a hygrometer is to tell', async () => {
    const air = Array.from({ length: 12 }, () => ({ tempC: 21, rh: 0.25 }));
    const dry = await yard.command('places.add', { name: 'Dry room', kind: 'heated-room', air });
    const id = await addBoard({ sawnOn: dayAfter(0) });
    yard.later(60 * DAY_MS);
    // 20 °C and 40 % give 7.7 %, 21 °C and 25 % give 5.4 % (Wood Handbook, Table 4-2, between its rows). Target 6 to 8 %.
    const here = await details(id);
    const { reach, floorPct } = here.forecast.places[0]!;
    expect(reach.likelyMs).not.toBeNull();
    expect(reach.lateMs).toBeNull();
    expect(here.assumptions).toContainEqual(
      message('forecast.assumed.air-in-doubt', { placeName: 'Shop', emcPct: floorPct.high }),
    );
    await yard.command('stacks.move', { id: yard.stack.id, placeId: dry.id, since: yard.now() });
    const moved = await details(id);
    expect(moved.forecast.places[0]!.reach.lateMs).not.toBeNull();
    expect(moved.assumptions.map(({ code }) => code)).not.toContain('forecast.assumed.air-in-doubt');
  });

  test('in the lowest layer outside the underside dries slower', async () => {
    const damp = await yard.command('places.add', { name: 'Fence row', kind: 'outdoors', air: dampAir });
    const id = await addBoard({ sawnOn: dayAfter(0), layer: 1, column: 1, thicknessMm: 54 });
    await yard.command('boards.move', {
      boardIds: [id],
      placeId: damp.id,
      since: new Date(startMs).toISOString(),
    });
    yard.later(60 * DAY_MS);
    const { forecast, assumptions } = await details(id);
    expect(forecast.now.faceBPct).toBeGreaterThan(forecast.now.faceAPct + 1);
    // Half the rate of an open face: common practice, no source.
    expect(assumptions).toContainEqual(
      message('forecast.assumed.lowest', { placeNames: ['Fence row'], rateSharePct: 50 }),
    );
  });

  test('brought in from there, it is open on both sides again, and where it was not is still said', async () => {
    const damp = await yard.command('places.add', { name: 'Fence row', kind: 'outdoors', air: dampAir });
    const id = await addBoard({ sawnOn: dayAfter(0), layer: 1, column: 1, thicknessMm: 54 });
    const move = (placeId: number, day: number) =>
      yard.command('boards.move', {
        boardIds: [id],
        placeId,
        since: new Date(startMs + day * DAY_MS).toISOString(),
      });
    await move(damp.id, 0);
    yard.later(200 * DAY_MS);
    await move(yard.place.id, 60);
    const { forecast, assumptions } = await details(id);
    expect(Math.abs(forecast.now.faceBPct - forecast.now.faceAPct)).toBeLessThan(0.2);
    expect(assumptions).toContainEqual(
      message('forecast.assumed.lowest', { placeNames: ['Fence row'], rateSharePct: 50 }),
    );
  });

  test('outdoors with nothing over the stack, only its top layer dries faster on its upper face', async () => {
    const damp = await yard.command('places.add', { name: 'Fence row', kind: 'outdoors', air: dampAir });
    const laid = { sawnOn: dayAfter(0), column: 1, thicknessMm: 54 };
    const top = await addBoard({ ...laid, layer: 3 });
    const under = await addBoard({ ...laid, layer: 2 }, 'NEW-02');
    const cover = (basedOn: number, topCover: 'covered' | 'sun') =>
      yard.command('stacks.edit', { id: yard.stack.id, basedOn, changed: { topCover } });
    await cover(1, 'sun');
    // Under the roof of the shop there is no sun.
    expect((await details(top)).assumptions).toEqual([]);
    await cover(2, 'covered');
    await yard.command('stacks.move', {
      id: yard.stack.id,
      placeId: damp.id,
      since: new Date(startMs).toISOString(),
    });
    yard.later(60 * DAY_MS);
    const covered = await details(top);
    expect(covered.assumptions).toEqual([]);
    await cover(4, 'sun');
    const { forecast, assumptions } = await details(top);
    expect(forecast.now.faceAPct).toBeLessThan(covered.forecast.now.faceAPct - 0.5);
    expect(forecast.now.average.median).toBeLessThan(covered.forecast.now.average.median);
    // Common practice, no source.
    expect(assumptions).toEqual([
      message('forecast.assumed.sun', { placeNames: ['Fence row'], rateSharePct: 160 }),
    ]);
    expect((await details(under)).assumptions).toEqual([]);
  });

  test('in the lowest layer under a roof with walls, or in a higher layer, nothing of the kind is assumed', async () => {
    const inside = await addBoard({ sawnOn: dayAfter(0), layer: 1, column: 1 });
    yard.later(60 * DAY_MS);
    expect((await details(inside)).assumptions).toEqual([airInDoubt]);
  });

  test('bark left on the upper face keeps that face wet, and the pins then went into the lower one', async () => {
    const id = await addBoard({ sawnOn: dayAfter(0), barkSide: 'up-bark-on', thicknessMm: 54 });
    yard.later(60 * DAY_MS);
    await probe(id, 12, 18);
    const { forecast, readings, assumptions, warp } = await details(id);
    expect(forecast.now.faceAPct).toBeGreaterThan(forecast.now.faceBPct + 1);
    for (const { depth, depthFraction } of readings) {
      if (depth === 'shell') expect(depthFraction).toBeGreaterThan(0.75);
    }
    expect(assumptions).toContainEqual(
      message('forecast.assumed.bark-on', { face: 'upper', rateSharePct: expect.closeTo(3, 9) }),
    );
    expect(warp!.advice.map(({ about }) => about)).toContain('bark');
  });

  test('bark taken off lets that face dry from then on, and before it the pins went into the other', async () => {
    const id = await addBoard({ sawnOn: dayAfter(0), barkSide: 'up-bark-on', thicknessMm: 54 });
    yard.later(60 * DAY_MS);
    await probe(id, 12, 18);
    yard.later(40 * DAY_MS);
    const still = (await details(id)).forecast.now;
    await yard.command('boards.edit', {
      id,
      basedOn: (await yard.query('boards.get', { id })).board.version,
      changed: { barkSide: 'up', barkOffOn: dayAfter(70) },
    });
    const { forecast, readings, stays, assumptions, warp } = await details(id);
    expect(forecast.now.faceAPct).toBeLessThan(still.faceAPct - 1);
    for (const { depth, depthFraction } of readings) {
      if (depth === 'shell') expect(depthFraction).toBeGreaterThan(0.75);
    }
    expect(stays).toHaveLength(1);
    expect(assumptions).toContainEqual(
      message('forecast.assumed.bark-until', {
        face: 'upper',
        barkOffOn: dayAfter(70),
        rateSharePct: expect.closeTo(3, 9),
      }),
    );
    expect(warp!.advice.map(({ about }) => about)).not.toContain('bark');
  });
});

test('a place colder than EMC is published for has a forecast', async () => {
  const air = dampAir.map(({ rh }) => ({ tempC: -45, rh }));
  const cold = await yard.command('places.add', { name: 'Far north', kind: 'outdoors', air });
  const id = await addBoard({ sawnOn: dayAfter(0) });
  await yard.command('boards.move', {
    boardIds: [id],
    placeId: cold.id,
    since: new Date(startMs).toISOString(),
  });
  expect((await details(id)).emcNowPct).toBeGreaterThan(10);
});

describe('warp', () => {
  test('is forecast for a board whose width and sawing are known', async () => {
    const id = await addBoard({ sawnOn: dayAfter(0) });
    yard.later(60 * DAY_MS);
    const { warp } = await details(id);
    expect(Math.abs(warp!.atTarget.totalMm)).toBeGreaterThan(0.5);
  });

  test('follows from where the pith and the bark were: nearer the pith more, hollow on the bark side', async () => {
    const near = await addBoard({ sawnOn: dayAfter(0), ringRadiusMm: 60, barkSide: 'down', code: 'A-1' });
    const far = await addBoard({ sawnOn: dayAfter(0), ringRadiusMm: 300, barkSide: 'up', code: 'A-2' });
    yard.later(60 * DAY_MS);
    const [lower, upper] = [(await details(near)).warp!, (await details(far)).warp!];
    expect(lower.atTarget.totalMm).toBeLessThan(0);
    expect(upper.atTarget.totalMm).toBeGreaterThan(0);
    expect(-lower.atTarget.totalMm).toBeGreaterThan(3 * upper.atTarget.totalMm);
  });

  test('and for any other it says what is missing', async () => {
    const id = await addBoard({ sawnOn: dayAfter(0), widthMm: null, sawing: 'unknown' });
    expect(await details(id)).toMatchObject({
      warp: null,
      whyNoWarp: message('cup.missing', {
        missing: [message('cup.missing.width'), message('cup.missing.sawing')],
      }),
    });
  });
});

test('the demo yard has a stack that was moved, and its boards say where they were', async () => {
  await yard.command('yard.openDemo', {});
  const { rows } = await yard.query('boards.list', { stackId: null, search: 'PIN', offset: 0, limit: 1 });
  const { stays, places } = await details(rows[0]!.id);
  expect(stays.map(({ placeName }) => placeName)).toEqual(['Pole shed', 'Shop']);
  expect(places[0]!.name).toBe('Shop');
});

test('the window need not wait while a forecast is made', async () => {
  const id = await addBoard({ sawnOn: dayAfter(0) });
  yard.later(300 * DAY_MS);
  const order: string[] = [];
  await Promise.all([
    yard.query('boards.forecast', { id }).then(() => order.push('forecast')),
    yard.query('stacks.list', {}).then(() => order.push('stacks')),
  ]);
  expect(order).toEqual(['stacks', 'forecast']);
});
