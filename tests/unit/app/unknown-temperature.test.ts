/** Rounds started without a wood temperature, where the air of the place says how cold it may be. */
import { describe, expect, test } from 'vitest';
import { say } from './a-window.ts';
import { aimAt, type } from './in-round.ts';
import { withYardOfTwo, yard } from './yard-of-two.ts';

withYardOfTwo();

async function inAirOf(tempC: number) {
  const air = Array.from({ length: 12 }, () => ({ tempC, rh: 0.75 }));
  const { id: placeId } = await yard.command('places.add', { name: 'Shed', kind: 'open-shed', air });
  const { id: stackId } = await yard.command('stacks.add', {
    name: 'Oak',
    placeId,
    endUseId: 'air-dried-stock',
    topCover: 'covered',
    note: '',
  });
  await yard.command('boards.add', [{ ...yard.board('OAK-1'), stackId, speciesId: 'oak-white' }]);
  return { stackId, placeId };
}

async function walk(stackId: number, woodTempC: number | null) {
  const { id: roundId } = await yard.command('rounds.start', { stackId, woodTempC });
  for (const [spotIndex, raw] of [13, 13.3, 13.1, 13.2].entries()) {
    await aimAt(roundId, 0, spotIndex);
    await type(roundId, raw);
  }
  const { call, readings, estimate } = (await yard.query('rounds.get', { roundId })).probed!.assessment!;
  await yard.command('rounds.finish', { roundId });
  return { call, estimate: estimate!, rules: readings[0]!.suspicions.map(({ rule }) => rule) };
}

test('in a shed at −20 °C, 13% of unknown temperature is not Ready: the air is taken for the wood, and that is said', async () => {
  const { stackId } = await inAirOf(-20);
  const unknown = await walk(stackId, null);
  expect(unknown.call).not.toBe('ready');
  expect(unknown.rules).toEqual(expect.arrayContaining(['temperature-of-air', 'below-freezing']));
  const known = await walk(stackId, -20);
  expect(unknown.estimate.averagePct).toBeCloseTo(known.estimate.averagePct, 1);
  // Nobody measured it, so it is less sure.
  expect(unknown.estimate.standardUncertaintyPct).toBeGreaterThan(known.estimate.standardUncertaintyPct);
});

test('at room temperature it makes little difference', async () => {
  const { call, rules } = await walk((await inAirOf(20)).stackId, null);
  expect(call).toBe('ready');
  expect(rules).toEqual(['temperature-of-air']);
});

describe('air that was measured at the place', () => {
  async function readAt15() {
    const at = await inAirOf(5);
    const typed = { placeId: at.placeId, measuredOn: '2026-06-01', tempC: 15, rh: 0.75 };
    const { act } = await yard.command('air.type', typed);
    const { id: roundId } = await yard.command('rounds.start', { stackId: at.stackId, woodTempC: null });
    await aimAt(roundId, 0, 0);
    await type(roundId, 13);
    const reading = async () =>
      (await yard.query('rounds.get', { roundId })).probed!.assessment!.readings[0]!;
    return { ...at, act, reading };
  }

  test('is taken for the wood, not that of the month, and that is said', async () => {
    const { reading } = await readAt15();
    const { suspicions } = await reading();
    expect(suspicions.map(({ why }) => say(why))).toEqual([
      expect.stringContaining('corrected for the air measured in Shed, 15°C.'),
    ]);
  });

  test('and deleted is not, until that is undone: a reading follows', async () => {
    const { act, placeId, reading } = await readAt15();
    const measured = await reading();
    const [typed] = (await yard.query('air.ofPlace', { placeId })).typed;
    const deletion = await yard.command('air.delete', { id: typed!.id });
    const usual = await reading();
    expect(say(usual.suspicions[0]!.why)).toContain('corrected for the air of Shed, about 5°C.');
    expect(usual.corrected.mcPct!).toBeGreaterThan(measured.corrected.mcPct! + 0.3);
    await yard.command('acts.undo', { act: deletion.act });
    expect(await reading()).toEqual(measured);
    await yard.command('acts.undo', { act });
    expect(await reading()).toEqual(usual);
  });
});
