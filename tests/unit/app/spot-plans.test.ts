import { describe, expect, test } from 'vitest';
import type { RequestInput } from '../../../shared-core/contract/requests.ts';
import { unknownProfile } from '../../../shared-core/probing/readings/meter-profile.ts';
import type { Reading } from '../../../shared-core/probing/readings/reading.ts';
import { EXTRA_SPOTS, planSpots } from '../../../shared-core/probing/readings/spots.ts';
import { aimAt, aimOf, type } from './in-round.ts';
import { withYardOfTwo, yard } from './yard-of-two.ts';

withYardOfTwo();

/** A round on two walnut boards, 54 mm thick. */
async function begin(thicknessMm = 54): Promise<number> {
  for (const { id, version } of yard.boards) {
    await yard.command('boards.edit', {
      id,
      basedOn: version,
      changed: { thicknessMm, thicknessQuarters: null },
    });
  }
  return startRound();
}

async function startRound(): Promise<number> {
  const { id } = await yard.command('rounds.start', {
    stackId: yard.stack.id,
    woodTempC: 20,
    startedOn: null,
  });
  return id;
}

const roundNow = (roundId: number) => yard.query('rounds.get', { roundId });
const depthsOf = async (roundId: number): Promise<string[]> =>
  (await roundNow(roundId)).boards.map((board) =>
    planSpots(board)
      .plan.map(({ spot }) => spot.depth)
      .join(' '),
  );
const readingsOf = async (roundId: number) => (await roundNow(roundId)).probed?.assessment?.readings ?? [];
const shownOf = ({ spot: { depthMm }, depthFrom }: Reading) => ({ depthMm, depthFrom });
/** Gives the depth of a reading as a window does that shows it as it is. */
async function setDepth(
  readingId: number,
  depthMm: number,
  more: Partial<RequestInput<'readings.setDepth'>> = {},
) {
  const { boards } = yard;
  const pages = await Promise.all(boards.map(({ id }) => yard.query('boards.get', { id })));
  const reading = pages.flatMap(({ readings }) => readings).find(({ id }) => id === readingId)!;
  return yard.command('readings.setDepth', {
    readingId,
    depthMm,
    shown: shownOf(reading),
    wholeRound: false,
    ...more,
  });
}
const typeWith = (lengthMm: number) =>
  yard.command('meters.add', {
    name: `${lengthMm} mm`,
    profile: { ...unknownProfile, pins: { lengthMm, insulated: true } },
  });
const planCore = (roundId: number, more: Partial<RequestInput<'rounds.planCore'>> = {}) =>
  yard.command('rounds.planCore', {
    roundId,
    boardId: yard.boards[0]!.id,
    core: 'fresh-cut',
    forRound: false,
    ...more,
  });

describe('a board whose core the pins do not reach', () => {
  test('is done with the shell, and offers the core: a fresh cut adds its spots, and is aimed at', async () => {
    const roundId = await begin();
    expect(await depthsOf(roundId)).toEqual(['shell shell', 'shell shell']);
    for (const raw of [12, 12.2]) await type(roundId, raw);
    expect(await aimOf(roundId)).toEqual({ board: 0, spotIndex: null });
    await planCore(roundId);
    expect(await depthsOf(roundId)).toEqual(['shell shell core core', 'shell shell']);
    expect(await aimOf(roundId)).toEqual({ board: 0, spotIndex: 2 });
    for (const raw of [18, 18.4]) await type(roundId, raw);
    expect((await readingsOf(roundId)).slice(2)).toMatchObject([
      { spotIndex: 2, spot: { depth: 'core', depthMm: 27, face: 'fresh-cut' }, depthFrom: 'person' },
      { spotIndex: 3, spot: { depth: 'core', depthMm: 27, face: 'fresh-cut' }, depthFrom: 'person' },
    ]);
    expect((await roundNow(roundId)).boards[0]?.finding).toMatchObject({ filledSpots: 4, openSpot: null });
  });

  test('skipped again, its core is no open spot, and what was read of it stays on the board', async () => {
    const roundId = await begin();
    for (const raw of [12, 12.2]) await type(roundId, raw);
    await planCore(roundId);
    await type(roundId, 18);
    await planCore(roundId, { core: null });
    expect(await aimOf(roundId)).toEqual({ board: 0, spotIndex: null });
    expect((await roundNow(roundId)).boards[0]?.finding).toMatchObject({ filledSpots: 2, openSpot: null });
    expect(await readingsOf(roundId)).toHaveLength(3);
  });

  test('a way chosen for the whole round holds for boards without readings, and others keep their plan', async () => {
    const roundId = await begin();
    for (const raw of [12, 12.2]) await type(roundId, raw);
    await aimAt(roundId, 1);
    await planCore(roundId, { boardId: yard.boards[1]!.id, core: 'long-pins', forRound: true });
    expect(await depthsOf(roundId)).toEqual(['shell shell', 'shell shell core core']);
    const [third] = await yard.command('boards.add', [
      { ...yard.board('WAL-03'), thicknessMm: 80 },
      { ...yard.board('WAL-04'), thicknessMm: 27 },
    ]);
    expect(third).toBeDefined();
    expect((await depthsOf(roundId)).slice(2)).toEqual(['shell shell core core', 'average average average']);
    for (const raw of [12, 12.2, 17]) await type(roundId, raw);
    expect((await readingsOf(roundId))[2]).toMatchObject({
      spot: { depthMm: 27, face: 'face' },
      depthFrom: 'person',
    });
  });
});

describe('thick firewood', () => {
  /** The use of the stack, edited as a window does. */
  const changeUse = (endUseId: string, basedOn: number) =>
    yard.command('stacks.edit', { id: yard.stack.id, basedOn, changed: { endUseId } });

  test('is split first and read on the fresh face, unless a person skips it for a piece or for the round', async () => {
    await changeUse('firewood', 1);
    const roundId = await begin();
    expect(await depthsOf(roundId)).toEqual(['shell shell core core', 'shell shell core core']);
    expect((await roundNow(roundId)).usualCoreWay).toBe('fresh-split');
    expect(await aimOf(roundId)).toEqual({ board: 0, spotIndex: 2 });
    for (const raw of [18, 18.4]) await type(roundId, raw);
    expect((await readingsOf(roundId))[1]).toMatchObject({
      spot: { face: 'fresh-split' },
      depthFrom: 'person',
    });
    for (const raw of [15, 15.2]) await type(roundId, raw);
    expect(await readingsOf(roundId)).toHaveLength(4);
    expect((await roundNow(roundId)).boards[0]?.finding?.call).toBe('ready');
    await aimAt(roundId, 1);
    await planCore(roundId, { boardId: yard.boards[1]!.id, core: null, forRound: true });
    expect((await depthsOf(roundId))[1]).toBe('shell shell');
  });

  test('becomes so in the middle of a round where its stack is for another use from then on', async () => {
    const roundId = await begin();
    expect(await depthsOf(roundId)).toEqual(['shell shell', 'shell shell']);
    await changeUse('firewood', 1);
    expect(await depthsOf(roundId)).toEqual(['shell shell core core', 'shell shell core core']);
    expect(await aimOf(roundId)).toEqual({ board: 0, spotIndex: 0 });
    for (const raw of [15, 15.2, 18]) await type(roundId, raw);
    expect((await readingsOf(roundId))[2]).toMatchObject({ spot: { face: 'fresh-split' } });
  });
});

describe('another meter in the middle of a round', () => {
  test('leaves a board that is begun by its plan; the next ones follow its pins', async () => {
    const roundId = await begin();
    await type(roundId, 12);
    await typeWith(30);
    expect(await depthsOf(roundId)).toEqual(['shell shell', 'shell core shell core']);
    await type(roundId, 12.2);
    expect(await aimOf(roundId)).toEqual({ board: 0, spotIndex: null });
    await aimAt(roundId, 1);
    for (const raw of [12, 17]) await type(roundId, raw);
    expect(await readingsOf(roundId)).toMatchObject([
      { spot: { depth: 'shell', depthMm: 5.5 }, depthFrom: 'pins' },
      { spot: { depth: 'core', depthMm: 27 }, depthFrom: 'pins' },
    ]);
  });

  test('does not change the board in hand before anything was read, as the pins are on their way into it', async () => {
    const roundId = await begin();
    await typeWith(30);
    expect(await depthsOf(roundId)).toEqual(['shell shell', 'shell core shell core']);
    await aimAt(roundId, 1);
    expect(await depthsOf(roundId)).toEqual(['shell core shell core', 'shell core shell core']);
  });

  test('with pins shorter than planned, a reading is as deep as they are long', async () => {
    const roundId = await begin();
    await type(roundId, 12);
    const [reading] = await readingsOf(roundId);
    expect(reading).toMatchObject({ spot: { depthMm: 5.5 }, depthFrom: 'plan' });
    await typeWith(4);
    const { id: meterId } = (await yard.query('meters.list', {}))[0]!;
    await yard.command('readings.setMeter', { readingId: reading!.id, scope: 'reading', meterId });
    expect((await readingsOf(roundId))[0]).toMatchObject({ spot: { depthMm: 4 }, depthFrom: 'pins' });
  });
});

test('the round before shows at the spots of the plan now, and never at another', async () => {
  const roundId = await begin(27);
  for (const raw of [12, 13, 14]) await type(roundId, raw);
  await yard.command('rounds.finish', { roundId });
  yard.later(86_400_000);
  await typeWith(30);
  const pairs = await startRound();
  expect((await roundNow(pairs)).probed?.lastRound?.spotPcts).toEqual([null, null, null, null]);
  await yard.command('rounds.finish', { roundId: pairs });
  await typeWith(8);
  const again = await startRound();
  expect((await roundNow(again)).probed?.lastRound?.spotPcts).toEqual([
    expect.any(Number),
    expect.any(Number),
    expect.any(Number),
  ]);
});

test('with every spot read, more readings are taken at a depth of choice, as many as a person likes', async () => {
  const roundId = await begin(16);
  for (const raw of [12, 13, 12.2, 13.1]) await type(roundId, raw);
  for (const raw of [13.2, 13.3]) {
    await aimAt(roundId, 0, EXTRA_SPOTS.core);
    await type(roundId, raw);
  }
  expect((await readingsOf(roundId)).slice(4)).toMatchObject([
    { spotIndex: EXTRA_SPOTS.core, counts: true, raw: 13.2, spot: { depth: 'core', fromEndMm: null } },
    { spotIndex: EXTRA_SPOTS.core, counts: true, raw: 13.3, spot: { depth: 'core', fromEndMm: null } },
  ]);
  expect(await aimOf(roundId)).toEqual({ board: 0, spotIndex: null });
  expect((await roundNow(roundId)).boards[0]?.finding).toMatchObject({ filledSpots: 4, openSpot: null });
  const average = { roundId, boardId: yard.boards[0]!.id, spotIndex: EXTRA_SPOTS.average };
  expect(await yard.answer('rounds.aim', average)).toMatchObject({ ok: false });
});

describe('the true depth of a reading', () => {
  test('holds in place of the planned one, is the person’s, and is undone', async () => {
    const roundId = await begin(16);
    await type(roundId, 12);
    const [{ id: readingId } = { id: 0 }] = await readingsOf(roundId);
    const { act } = await setDepth(readingId, 6);
    expect(await readingsOf(roundId)).toMatchObject([{ spot: { depthMm: 6 }, depthFrom: 'person' }]);
    await yard.command('acts.undo', { act });
    expect(await readingsOf(roundId)).toMatchObject([{ spot: { depthMm: 2 }, depthFrom: 'plan' }]);
    expect(await yard.answer('acts.undo', { act })).toMatchObject({ ok: false });
  });

  test('is given to all readings of the round at that depth, and back to each what it had', async () => {
    const roundId = await begin(16);
    for (const raw of [12, 13, 12.2, 13.1]) await type(roundId, raw);
    const [shell, core] = await readingsOf(roundId);
    await setDepth(core!.id, 7);
    await aimAt(roundId, 1);
    for (const raw of [12, 13]) await type(roundId, raw);
    const given = await setDepth(core!.id, 5, { wholeRound: true });
    expect(given.readings).toBe(3);
    expect(await readingsOf(roundId)).toMatchObject([
      { spot: { depthMm: 2 }, depthFrom: 'plan' },
      { spot: { depthMm: 5 }, depthFrom: 'person' },
    ]);
    await yard.command('rounds.finish', { roundId });
    await yard.command('acts.undo', { act: given.act });
    await yard.command('rounds.reopen', { roundId });
    await aimAt(roundId, 0);
    expect((await readingsOf(roundId)).map(({ spot }) => spot.depthMm)).toEqual([2, 7, 2, 8]);
    expect(shell?.spot.depthMm).toBe(2);
  });

  test('is not beyond the board', async () => {
    const roundId = await begin(16);
    await type(roundId, 12);
    const [reading] = await readingsOf(roundId);
    const deep = { readingId: reading!.id, depthMm: 17, wholeRound: false, shown: shownOf(reading!) };
    expect(await yard.refusal('readings.setDepth', deep)).toMatch(/only 16 mm thick/);
    const nearFar = { ...deep, depthMm: 15 };
    expect(await yard.refusal('readings.setDepth', nearFar)).toMatch(/only 16 mm thick.*other face/);
    const none = { ...deep, depthMm: 0.0025 };
    expect(await yard.answer('readings.setDepth', none)).toMatchObject({ ok: false });
  });

  test('given to single readings stays when a whole round gets another, unless those are to change too', async () => {
    const roundId = await begin(16);
    for (const raw of [12, 13, 12.2, 13.1]) await type(roundId, raw);
    const [first, , third] = await readingsOf(roundId);
    await setDepth(third!.id, 4);
    const others = () => yard.query('readings.givenDepths', { readingId: first!.id });
    expect(await others()).toEqual({ readings: 1 });
    expect(await setDepth(first!.id, 3, { wholeRound: true })).toMatchObject({ readings: 1 });
    const shellDepths = async () =>
      (await readingsOf(roundId))
        .filter(({ spot }) => spot.depth === 'shell')
        .map(({ spot }) => spot.depthMm);
    expect(await shellDepths()).toEqual([3, 4]);
    await setDepth(first!.id, 2.5, { wholeRound: true, givenToo: true });
    expect(await shellDepths()).toEqual([2.5, 2.5]);
    // Given for all at once, one more such change is for all again.
    expect(await others()).toEqual({ readings: 0 });
    expect(await setDepth(first!.id, 3, { wholeRound: true })).toMatchObject({ readings: 2 });
  });

  test('that another window gave meanwhile is a conflict, and stays', async () => {
    const roundId = await begin(16);
    await type(roundId, 12);
    const [reading] = await readingsOf(roundId);
    await setDepth(reading!.id, 4);
    const late = { readingId: reading!.id, depthMm: 3, wholeRound: false, shown: shownOf(reading!) };
    expect(await yard.answer('readings.setDepth', late)).toMatchObject({
      ok: false,
      current: { depthMm: 4, depthFrom: 'person' },
    });
    expect(await readingsOf(roundId)).toMatchObject([{ spot: { depthMm: 4 } }]);
  });

  test('is undone in reverse order, and not over a later one that holds', async () => {
    const roundId = await begin(16);
    await type(roundId, 12);
    const [{ id } = { id: 0 }] = await readingsOf(roundId);
    const one = await setDepth(id, 3);
    const other = await setDepth(id, 4);
    expect(await yard.answer('acts.undo', { act: one.act })).toMatchObject({ ok: false });
    await yard.command('acts.undo', { act: other.act });
    expect(await readingsOf(roundId)).toMatchObject([{ spot: { depthMm: 3 } }]);
    await yard.command('acts.undo', { act: one.act });
    expect(await readingsOf(roundId)).toMatchObject([{ spot: { depthMm: 2 }, depthFrom: 'plan' }]);
  });
});
