import { expect, test, vi } from 'vitest';
import { createWoodProbes } from '../../../electron/app/air/wood-probes.ts';
import type { Yard } from '../../../electron/store/yard.ts';
import { type } from './in-round.ts';
import { withYardOfTwo, yard } from './yard-of-two.ts';

withYardOfTwo();

const addProbe = () =>
  yard.command('sensors.add', { name: 'Spike', deviceId: 's1', kind: 'probe', placeId: null });
const begin = async () => (await yard.command('rounds.start', { stackId: yard.stack.id, woodTempC: 20 })).id;
const shown = () => yard.query('sensors.probe', {});
async function tempsOf(roundId: number) {
  const { probed } = await yard.query('rounds.get', { roundId });
  return (probed?.assessment?.readings ?? []).map(({ woodTempC, probeName = null }) => [
    woodTempC,
    probeName,
  ]);
}

test('readings take what a probe in reach says, but not on a board whose temperature a person gave', async () => {
  await addProbe();
  yard.sensors.says = { tempC: 18, rh: null };
  expect(await shown()).toBeNull();
  const roundId = await begin();
  await vi.waitFor(async () => expect(await shown()).toEqual({ name: 'Spike', tempC: 18 }));
  await type(roundId, 12);
  expect(await tempsOf(roundId)).toEqual([[18, 'Spike']]);
  // That of the round holds where nothing is measured.
  await yard.command('rounds.setTemperature', { roundId, boardId: null, woodTempC: 15 });
  expect(await tempsOf(roundId)).toEqual([[18, 'Spike']]);
  await yard.command('rounds.setTemperature', { roundId, boardId: yard.boards[0]!.id, woodTempC: 25 });
  expect(await tempsOf(roundId)).toEqual([[25, null]]);
  await type(roundId, 12);
  expect(await tempsOf(roundId)).toEqual([
    [25, null],
    [25, null],
  ]);
});

async function withMeterAndProbe() {
  await yard.command('meter.scan', {});
  await yard.command('meter.connect', { deviceId: 'hand' });
  await addProbe();
  return begin();
}
const spike = { deviceId: 's1', name: 'Spike', rssiDbm: -60, rh: null };

test('beside a meter, one that advertises is heard, and its value goes with the reading that settles', async () => {
  const roundId = await withMeterAndProbe();
  await vi.waitFor(() => expect(yard.meter.overhears).toBe(true));
  yard.meter.emit('overheard', { ...spike, tempC: 17 });
  expect(yard.meter.overhears).toBe(false);
  expect(await shown()).toEqual({ name: 'Spike', tempC: 17 });
  yard.meter.show(12, 4);
  await vi.waitFor(async () => expect((await tempsOf(roundId))[0]).toEqual([17, 'Spike']));
  expect(yard.meter.visited).toEqual([]);
});

test('beside a meter, one that does not advertise its value is visited', async () => {
  vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout'], shouldAdvanceTime: true });
  try {
    await withMeterAndProbe();
    yard.meter.says = { tempC: 16, rh: null };
    await vi.waitFor(() => expect(yard.meter.overhears).toBe(true));
    yard.meter.emit('overheard', { ...spike, tempC: null });
    vi.advanceTimersByTime(4000);
    await vi.waitFor(async () => expect(await shown()).toEqual({ name: 'Spike', tempC: 16 }));
    expect(yard.meter.visited).toEqual(['s1']);
  } finally {
    vi.useRealTimers();
  }
});

test('a value holds for five minutes, of the yard that it came in, and no longer once its probe is removed', () => {
  const probe = { id: 3, kind: 'probe', name: 'Spike' };
  const yardWith = (...list: (typeof probe)[]) => ({ airSensors: { list: () => list } }) as unknown as Yard;
  let nowMs = 0;
  let open = yardWith(probe);
  const changed = vi.fn();
  const probes = createWoodProbes({ yard: () => open, monotonicMs: () => nowMs, changed });
  probes.take(3, null);
  // No wood is as hot.
  probes.take(3, 250);
  expect(probes.newest()).toBeNull();
  probes.take(3, 18);
  nowMs = 5 * 60_000;
  expect(probes.newest()).toEqual({ name: 'Spike', tempC: 18 });
  nowMs++;
  expect(probes.newest()).toBeNull();
  probes.take(3, 18);
  const first = open;
  open = yardWith(probe);
  expect(probes.newest()).toBeNull();
  open = first;
  probes.take(3, 18);
  first.airSensors.list = () => [];
  expect(probes.newest()).toBeNull();
  expect(changed).toHaveBeenCalledWith(['sensors']);
});
