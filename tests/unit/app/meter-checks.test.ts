import { describe, expect, test } from 'vitest';
import { isOfOffMeter, type NewTestBlock } from '../../../shared-core/contract/meter-checks.ts';
import { unknownProfile } from '../../../shared-core/probing/readings/meter-profile.ts';
import { aTestBlock } from './a-test-block.ts';
import { aimAt, aimedSpot, type } from './in-round.ts';
import { doing, lines, redo, undo } from './seen-yard.ts';
import { withYardOfTwo, yard } from './yard-of-two.ts';

withYardOfTwo();

const setToWalnut = {
  ...unknownProfile,
  scale: { kind: 'species', speciesId: 'walnut-black', curveId: 'walnut-black', tempC: 21 },
  compensatesTemp: true,
} as const;

async function addMeter(profile: typeof unknownProfile = setToWalnut): Promise<number> {
  return (await yard.command('meters.add', { name: 'Old one', profile, roundId: null })).meterId;
}
const addBlock = async (more: Partial<NewTestBlock> = {}, meterId?: number) =>
  yard.command('testBlocks.add', { ...aTestBlock(meterId ?? (await addMeter())), ...more });
function check(blockId: number, shown: number) {
  yard.later(60_000);
  return yard.command('meterChecks.add', { blockId, shown, tempC: null });
}
const listed = async () => (await yard.query('meterChecks.list', {}))[0]!;
async function begin(): Promise<number> {
  yard.later(60_000);
  return (await yard.command('rounds.start', { stackId: yard.stack.id, woodTempC: 21 })).id;
}
const readings = async () => (await yard.query('boards.get', { id: yard.boards[0]!.id })).readings;
const ofRound = (roundId: number) => yard.query('meterChecks.ofRound', { roundId });

test('a check within the tolerance says that the meter is right, one beyond that it is off', async () => {
  const { id } = await addBlock();
  expect(await check(id, 12.5)).toMatchObject({ state: 'right', right: 12, tolerance: 0.5 });
  expect(await check(id, 11.4)).toMatchObject({ state: 'off' });
  expect(await check(id, 15.1)).toMatchObject({ state: 'too-far' });
  expect((await listed()).checks.map(({ shown }) => shown)).toEqual([15.1, 11.4, 12.5]);
});

test('a meter in % shows on a resistor what its species has at that resistance', async () => {
  // W. L. James, FPL-GTR-6 (1988), Table 1, black walnut: 155 megohms at 12 % and 26.7 °C; from memory.
  const scale = { ...setToWalnut.scale, tempC: 26.7 };
  const meterId = await addMeter({ ...setToWalnut, scale });
  const { id } = await addBlock({ expected: 155e6, unit: 'ohm' }, meterId);
  expect((await listed()).right).toBeCloseTo(12, 6);
  expect((await check(id, 12.1)).state).toBe('right');
});

test('a resistor is refused for a meter of unknown setting', async () => {
  const meterId = await addMeter(unknownProfile);
  await expect(addBlock({ expected: 51e6, unit: 'ohm' }, meterId)).rejects.toThrow(
    'What Old one should show on that is unknown.',
  );
  expect(await yard.query('meterChecks.list', {})).toEqual([]);
});

test.each([
  [{ expected: 200 }, 'Enter 1% to 100%.'],
  [{ expected: 1e-300 }, 'Enter 1% to 100%.'],
  [{ expected: 1e-300, unit: 'ohm' }, 'Enter 1 kilohm to 1,000 gigohms.'],
  [{ expected: 1e13, unit: 'ohm' }, 'Enter 1 kilohm to 1,000 gigohms.'],
  [{ tolerance: 1e-300 }, 'Enter 0.05 to 5 points.'],
  [{ tolerance: 9 }, 'Enter 0.05 to 5 points.'],
] as const)('a block that can be none, as %o, is refused', async (more, sentence) => {
  const meterId = await addMeter();
  await expect(addBlock(more, meterId)).rejects.toThrow(sentence);
  const { id, version } = await addBlock({}, meterId);
  await expect(yard.command('testBlocks.edit', { id, basedOn: version, changed: more })).rejects.toThrow(
    sentence,
  );
});

test('of a meter in ohms, a tolerance that is no share of them is refused', async () => {
  const meterId = await addMeter({ ...unknownProfile, scale: { kind: 'ohms' } });
  const ohms = { expected: 10e6, unit: 'ohm' } as const;
  await expect(addBlock({ ...ohms, tolerance: 1 }, meterId)).rejects.toThrow('Enter 0.1% to 50%.');
});

test('a block that the connected meter cannot show is refused', async () => {
  await yard.command('meter.scan', {});
  const { meterId } = await yard.command('meter.connect', { deviceId: 'hand' });
  const { range } = yard.meter.described!.description!;
  expect(range.max).toBeLessThan(100);
  await expect(addBlock({ expected: range.max + 1 }, meterId!)).rejects.toThrow('cannot show that value');
});

test('a check on a block that was removed is refused', async () => {
  const { id, version } = await addBlock();
  await yard.command('testBlocks.close', { id, basedOn: version });
  await expect(check(id, 12)).rejects.toThrow('not in this yard');
});

test('of a meter in ohms, the tolerance is a share of the ohms', async () => {
  const meterId = await addMeter({ ...unknownProfile, scale: { kind: 'ohms' } });
  const { id } = await addBlock({ expected: 10e6, unit: 'ohm', tolerance: 0.01 }, meterId);
  expect((await check(id, 10.05e6)).state).toBe('right');
  expect((await check(id, 10.2e6)).state).toBe('off');
});

describe('when a check is asked for', () => {
  const due = async () => (await listed()).isDue;
  test('before the first check of a block, and then by how often a person chose', async () => {
    const { id, version } = await addBlock();
    expect(await due()).toBe(true);
    await check(id, 12);
    expect(await due()).toBe(false);
    await yard.command('testBlocks.edit', { id, basedOn: version, changed: { checkEvery: 'round' } });
    expect(await due()).toBe(false);
    await begin();
    expect(await due()).toBe(true);
    await yard.command('testBlocks.edit', { id, basedOn: version + 1, changed: { checkEvery: 'never' } });
    expect(await due()).toBe(false);
  });
});

describe('a round after a check that found its meter off', () => {
  async function roundAfter(shown: number) {
    const { id } = await addBlock();
    const checked = await check(id, shown);
    const roundId = await begin();
    await type(roundId, 14.2);
    return { roundId, blockId: id, checkId: checked.id };
  }

  test('is questionable, and its readings stay as they are until a person corrects them', async () => {
    const { roundId, blockId, checkId } = await roundAfter(13);
    expect(await ofRound(roundId)).toMatchObject([
      { meterName: 'Old one', readings: 1, toCorrect: 1, check: { id: checkId, state: 'off' } },
    ]);
    const [reading] = await readings();
    const [found] = await ofRound(roundId);
    expect(isOfOffMeter(found!, reading!)).toBe(true);
    // Saved only now, and saved before the check.
    expect(isOfOffMeter(found!, { ...reading!, takenAt: '2026-06-01T09:30:00.000Z' })).toBe(true);
    expect(isOfOffMeter(found!, { ...reading!, takenAt: '2026-05-01T09:30:00.000Z' })).toBe(false);
    yard.later(60_000);
    await check(blockId, 12);
    const [since] = await ofRound(roundId);
    expect(isOfOffMeter(since!, reading!)).toBe(true);
    expect(isOfOffMeter(since!, { ...reading!, takenAt: yard.now() })).toBe(false);
    expect((await readings())[0]).toMatchObject({ raw: 14.2, corrected: { mcPct: 14.2 } });
  });

  test('is no longer once they are: what the meter showed stays, and the effect of the check is a step', async () => {
    const { roundId, checkId } = await roundAfter(13);
    const { readings: corrected } = await yard.command('meterChecks.correct', { checkId });
    expect(corrected).toBe(1);
    const [reading] = await readings();
    expect(reading!.raw).toBe(14.2);
    expect(reading!.corrected.mcPct).toBeCloseTo(13.2, 9);
    expect(reading!.corrected.steps[0]).toMatchObject({ step: 'meter-check' });
    expect(await ofRound(roundId)).toEqual([]);
    expect((await listed()).toCorrect).toBeNull();
  });

  test('readings that follow are corrected, too, and a check by then says whether that is right', async () => {
    const { roundId, checkId, blockId } = await roundAfter(13);
    await yard.command('meterChecks.correct', { checkId });
    await aimAt(roundId, 0, 1);
    await type(roundId, 14);
    expect((await readings()).map(({ corrected }) => corrected.mcPct)).toEqual([
      expect.closeTo(13.2, 9),
      expect.closeTo(13, 9),
    ]);
    expect(await check(blockId, 13.2)).toMatchObject({ state: 'right', correctedBy: 1 });
    // It was adjusted meanwhile: now the correction is what is wrong.
    const again = await check(blockId, 12);
    expect(again.state).toBe('off');
    await yard.command('meterChecks.correct', { checkId: again.id });
    expect(await check(blockId, 12)).toMatchObject({ state: 'right', correctedBy: 0 });
  });

  test('a later check that is right says nothing of it, and only its own readings are corrected', async () => {
    const { roundId, checkId, blockId } = await roundAfter(13);
    await check(blockId, 12);
    yard.later(60_000);
    await aimAt(roundId, 0, 1);
    await type(roundId, 14);
    expect((await ofRound(roundId)).map((each) => each.readings)).toEqual([1]);
    await yard.command('meterChecks.correct', { checkId });
    const all = (await readings()).map(({ corrected }) => corrected.mcPct!);
    expect(all.toSorted()).toEqual([expect.closeTo(13.2, 9), expect.closeTo(14, 9)]);
    expect(await check(blockId, 12)).toMatchObject({ state: 'right', correctedBy: 0 });
  });

  test('where its profile is changed later, what a check corrects is not lost', async () => {
    const { checkId } = await roundAfter(13);
    await yard.command('meterChecks.correct', { checkId });
    const meter = (await yard.query('meters.list', {}))[0]!;
    const profile = { ...setToWalnut, sdPct: 0.5 };
    await yard.command('meters.edit', { id: meter.id, basedOn: meter.version, changed: { profile } });
    expect(await yard.query('meters.use', { meterId: meter.id })).toMatchObject({ earlierReadings: 1 });
    await yard.command('meters.updateEarlier', { meterId: meter.id });
    expect((await readings())[0]!.corrected.mcPct).toBeCloseTo(13.2, 9);
  });

  test('readings from before the check keep what they were, also where the profile is brought to them', async () => {
    const meterId = await addMeter();
    const roundId = await begin();
    await type(roundId, 14.2);
    const { id } = await addBlock({}, meterId);
    const { id: checkId } = await check(id, 13);
    expect((await yard.command('meterChecks.correct', { checkId })).readings).toBe(0);
    expect(await yard.query('meters.use', { meterId })).toMatchObject({ earlierReadings: 0 });
    const [meter] = await yard.query('meters.list', {});
    const profile = { ...setToWalnut, sdPct: 0.5 };
    await yard.command('meters.edit', { id: meterId, basedOn: meter!.version, changed: { profile } });
    await yard.command('meters.updateEarlier', { meterId });
    expect((await readings())[0]!.corrected.mcPct).toBeCloseTo(14.2, 9);
  });

  test('one that is too far off is not corrected', async () => {
    const { roundId, checkId } = await roundAfter(16);
    expect(await ofRound(roundId)).toMatchObject([{ toCorrect: null, check: { state: 'too-far' } }]);
    await expect(yard.command('meterChecks.correct', { checkId })).rejects.toThrow(
      'Old one is too far off to be corrected.',
    );
  });

  test('undoing the correction takes it back, redoing makes it again', async () => {
    const { checkId } = await roundAfter(13);
    const { act } = await yard.command('meterChecks.correct', { checkId });
    await yard.command('acts.undo', { act });
    expect((await readings())[0]!.corrected.mcPct).toBeCloseTo(14.2, 9);
    expect((await listed()).toCorrect).toEqual({ checkId, readings: 1 });
    await yard.command('acts.redo', { act });
    expect((await readings())[0]!.corrected.mcPct).toBeCloseTo(13.2, 9);
  });
});

describe('undoing a check', () => {
  async function corrected() {
    const { id: blockId } = await addBlock();
    const { act, output } = await doing('meterChecks.add', { blockId, shown: 13, tempC: null });
    const correction = await yard.command('meterChecks.correct', { checkId: output.id });
    return { act, correction };
  }

  test('is refused while its correction stands, which is named', async () => {
    const { act, correction } = await corrected();
    await expect(undo(act)).rejects.toThrow(
      /^A check of Old one is used by a later change.* Meter Old one corrected/,
    );
    expect((await listed()).checks).toHaveLength(1);
    await undo(correction.act);
    await undo(act);
    expect((await listed()).checks).toEqual([]);
  });

  test('is refused again once the correction was redone', async () => {
    const { act, correction } = await corrected();
    await undo(correction.act);
    await redo(correction.act);
    await expect(undo(act)).rejects.toThrow('is used by a later change');
  });
});

describe('a check that is excluded', () => {
  const exclude = (checkId: number) =>
    yard.command('meterChecks.exclude', { checkId, why: { code: 'not-on-block' } });

  async function offAndRead(isCorrected: boolean) {
    const { id: blockId } = await addBlock();
    const { id: checkId } = await check(blockId, 13);
    const roundId = await begin();
    await type(roundId, 14.2);
    if (isCorrected) await yard.command('meterChecks.correct', { checkId });
    return { blockId, checkId, roundId };
  }
  async function readNext(roundId: number, raw: number): Promise<number> {
    await aimAt(roundId, 0, (await readings()).length);
    await type(roundId, raw);
    return (await readings()).at(-1)!.corrected.mcPct!;
  }

  test('stays in the list, and neither readings nor those that follow are questionable by it', async () => {
    const { checkId, roundId } = await offAndRead(false);
    expect(await exclude(checkId)).toMatchObject({ readings: 0 });
    expect(await ofRound(roundId)).toEqual([]);
    expect(await listed()).toMatchObject({
      checks: [{ id: checkId, excluded: { code: 'not-on-block' } }],
      last: null,
      toCorrect: null,
      isDue: true,
    });
    await expect(yard.command('meterChecks.correct', { checkId })).rejects.toThrow('Include it first');
  });

  test('ends its correction, of readings and of those that follow; undone, it is there again', async () => {
    const { checkId, roundId } = await offAndRead(true);
    expect((await readings())[0]!.corrected.mcPct).toBeCloseTo(13.2, 9);
    const { act, readings: changed } = await exclude(checkId);
    expect(changed).toBe(1);
    expect((await lines())[0]).toBe('Check of Old one excluded. 1 reading is no longer corrected by it.');
    expect((await readings())[0]!.corrected.mcPct).toBeCloseTo(14.2, 9);
    await undo(act);
    expect((await readings())[0]!.corrected.mcPct).toBeCloseTo(13.2, 9);
    await redo(act);
    expect(await readNext(roundId, 14)).toBeCloseTo(14, 9);
  });

  test('included again, it counts, and corrects nothing until a person says so', async () => {
    const { checkId, roundId } = await offAndRead(true);
    await exclude(checkId);
    await yard.command('meterChecks.include', { checkId });
    expect((await lines())[0]).toBe('Check of Old one included again.');
    expect((await readings())[0]!.corrected.mcPct).toBeCloseTo(14.2, 9);
    expect(await ofRound(roundId)).toMatchObject([{ readings: 1, check: { id: checkId } }]);
    expect((await listed()).toCorrect).toEqual({ checkId, readings: 1 });
  });

  test('before a later one leaves what that found and corrected', async () => {
    const { checkId, blockId, roundId } = await offAndRead(true);
    const later = await check(blockId, 13.8);
    expect(later).toMatchObject({ state: 'off', correctedBy: 1 });
    await yard.command('meterChecks.correct', { checkId: later.id });
    expect(await readNext(roundId, 14)).toBeCloseTo(12.2, 9);
    expect(await exclude(checkId)).toMatchObject({ readings: 1 });
    expect((await readings()).map(({ corrected }) => corrected.mcPct)).toEqual([
      expect.closeTo(14.2, 9),
      expect.closeTo(12.2, 9),
    ]);
    expect(await readNext(roundId, 15)).toBeCloseTo(13.2, 9);
  });

  test('leaves doubt to the check before it', async () => {
    const { checkId, blockId, roundId } = await offAndRead(false);
    const right = await check(blockId, 12);
    await readNext(roundId, 15);
    expect(await ofRound(roundId)).toMatchObject([{ readings: 1, check: { id: checkId } }]);
    await exclude(right.id);
    expect(await ofRound(roundId)).toMatchObject([{ readings: 2, check: { id: checkId } }]);
  });
});

test('a correction leaves each reading all else that its meter was set to', async () => {
  const { id: blockId, meterId } = await addBlock();
  const { id: checkId } = await check(blockId, 13);
  await type(await begin(), 14.2);
  const [meter] = await yard.query('meters.list', {});
  const profile = { ...setToWalnut, pins: { lengthMm: 19, insulated: true } };
  await yard.command('meters.edit', { id: meterId, basedOn: meter!.version, changed: { profile } });
  await yard.command('meterChecks.correct', { checkId });
  expect((await readings())[0]!.corrected.mcPct).toBeCloseTo(13.2, 9);
  expect(await yard.query('meters.use', { meterId })).toMatchObject({ earlierReadings: 1 });
});

describe('in History a check says what it found', () => {
  test.each([
    [12.2, 'Old one checked: right.'],
    [13, 'Old one checked: off by 1.0 points.'],
    [11, 'Old one checked: off by 1.0 points.'],
  ])('of %d on a block of 12', async (shown, line) => {
    const { id } = await addBlock();
    await check(id, shown);
    expect((await lines())[0]).toBe(line);
  });

  test('of a meter in ohms', async () => {
    const meterId = await addMeter({ ...unknownProfile, scale: { kind: 'ohms' } });
    const { id } = await addBlock({ expected: 10e6, unit: 'ohm', tolerance: 0.01 }, meterId);
    await check(id, 15e6);
    expect((await lines())[0]).toBe('Old one checked: off by 50%.');
  });
});

describe('a check that was made while the clock was a year ahead', () => {
  const YEAR_MS = 365 * 86_400_000;
  async function aheadOnce() {
    const { id: blockId } = await addBlock();
    yard.later(YEAR_MS);
    await check(blockId, 12);
    yard.later(-YEAR_MS);
    return blockId;
  }

  test('does not hide that the meter is off now, and readings that follow are corrected', async () => {
    const blockId = await aheadOnce();
    const { id: checkId } = await check(blockId, 13);
    expect((await listed()).toCorrect).toEqual({ checkId, readings: 0 });
    await yard.command('meterChecks.correct', { checkId });
    const roundId = await begin();
    await type(roundId, 14);
    expect((await readings())[0]!.corrected.mcPct).toBeCloseTo(13, 9);
  });

  test('is no check of today', async () => {
    await aheadOnce();
    expect((await listed()).isDue).toBe(true);
  });
});

test('a round that began while the clock was ahead does not ask for a check at each round', async () => {
  const { id } = await addBlock({ checkEvery: 'round' });
  yard.later(86_400_000);
  await begin();
  yard.later(-86_400_000);
  await check(id, 12);
  expect((await listed()).isDue).toBe(false);
});

test('ohms are corrected by the same factor at any value', async () => {
  // 20 megohms shown of 10: half of what is shown is right, at any value.
  const meterId = await addMeter({ ...unknownProfile, scale: { kind: 'ohms' } });
  const { id } = await addBlock({ expected: 10e6, unit: 'ohm', tolerance: 0.01 }, meterId);
  const { id: checkId } = await check(id, 20e6);
  const roundId = await begin();
  const typed = await aimedSpot(roundId);
  await yard.command('rounds.saveTyped', { ...typed, raw: 100e6, unit: 'ohm' });
  const before = (await readings())[0]!.corrected;
  await yard.command('meterChecks.correct', { checkId });
  const after = (await readings())[0]!.corrected;
  expect(after.steps.map(({ step }) => step)).toEqual(['species-curve', 'meter-check', 'temperature']);
  expect(after.mcPct!).toBeGreaterThan(before.mcPct!);
});
