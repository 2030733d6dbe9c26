import { describe, expect, test } from 'vitest';
import { type Heard, HeardDevices, MOST_DEVICES } from '../../../electron/meter/heard-devices.ts';
import { type NobleMemory, trimNoble } from '../../../electron/meter/radio/noble-memory.ts';

// 66,000 made-up addresses took 297 MB: issue 10, measured.
const FLOOD = 66_000;
const idOf = (number: number): string => number.toString(16).padStart(12, '0');

describe('devices heard on the air', () => {
  const flood = (
    devices: HeardDevices<Heard>,
    { fromMs = 0, rssiDbm = -80 }: Partial<Heard & { fromMs: number }> = {},
  ) => {
    for (let number = 0; number < FLOOD; number++) {
      devices.hear(idOf(number), { rssiDbm, atMs: fromMs + number / 10 });
    }
  };

  test('66,000 made-up ones leave no more than the most that are remembered', () => {
    const devices = new HeardDevices();
    flood(devices);
    expect(devices.size).toBe(MOST_DEVICES);
    expect(devices.all()).toHaveLength(MOST_DEVICES);
  });

  test('the least recently heard are forgotten first', () => {
    const devices = new HeardDevices();
    devices.hear('old', { rssiDbm: -20, atMs: 0 });
    flood(devices, { fromMs: 60_000 });
    expect(devices.has('old')).toBe(false);
    expect(devices.has(idOf(FLOOD - 1))).toBe(true);
  });

  test('among those heard at the same time, the weakest are forgotten first', () => {
    const devices = new HeardDevices();
    flood(devices);
    const atMs = FLOOD / 10;
    devices.hear('near', { rssiDbm: -40, atMs });
    devices.hear('untold', { rssiDbm: null, atMs });
    for (let number = 0; number < 1000; number++) devices.hear(`far-${number}`, { rssiDbm: -90, atMs });
    expect(devices.has('near')).toBe(true);
    expect(devices.has('untold')).toBe(false);
  });

  test('a meter that the person uses is never forgotten', () => {
    const devices = new HeardDevices((id) => id === 'mine');
    devices.hear('mine', { rssiDbm: -100, atMs: 0 });
    flood(devices, { fromMs: 60_000 });
    expect(devices.has('mine')).toBe(true);
    expect(devices.size).toBe(MOST_DEVICES);
  });
});

test('noble forgets with us, also what it heard once and never told', () => {
  const fill = (separator = '') =>
    Object.fromEntries(
      Array.from({ length: 2000 }, (_, number) => [
        idOf(number).replaceAll(/(..)(?=.)/g, `$1${separator}`),
        {},
      ]),
    );
  const noble = {
    _peripherals: fill(),
    _services: fill(),
    _characteristics: fill(),
    _descriptors: fill(),
    _discoveredPeripheralUUids: fill(),
    _bindings: {
      _addresses: fill(),
      _addresseTypes: fill(),
      _connectable: fill(),
      scannable: fill(),
      _gap: { _discoveries: fill(':') },
    },
  } satisfies NobleMemory;
  trimNoble(noble, (id) => id === idOf(7));
  const { _bindings, ...own } = noble;
  const { _gap, ...bindings } = _bindings;
  for (const memory of [...Object.values(own), ...Object.values(bindings)]) {
    expect(Object.keys(memory)).toEqual([idOf(7)]);
  }
  expect(Object.keys(_gap._discoveries)).toEqual(['00:00:00:00:00:07']);
});

test('bindings without such memories, as on Windows and macOS, are left alone', () => {
  expect(() => trimNoble({}, () => false)).not.toThrow();
});
