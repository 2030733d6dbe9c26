import { describe, expect, test } from 'vitest';
import type { MeterNotification } from '../../../electron/meter/meter-link.ts';
import { NoLink } from '../../../electron/meter/no-link.ts';
import { type Clock, SimulatedLink } from '../../../electron/meter/simulated-link.ts';
import { meterDescriptionSchema } from '../../../shared-core/gatt/meter-description.ts';

/** A clock that a test moves on. */
class HandClock implements Clock {
  #nowMs = 0;
  readonly #ticks = new Set<{ everyMs: number; nextMs: number; tick: () => void }>();

  nowMs(): number {
    return this.#nowMs;
  }
  every(everyMs: number, tick: () => void): () => void {
    const entry = { everyMs, nextMs: this.#nowMs + everyMs, tick };
    this.#ticks.add(entry);
    return () => this.#ticks.delete(entry);
  }
  passMs(ms: number): void {
    const until = this.#nowMs + ms;
    while (this.#nowMs < until) {
      this.#nowMs += 10;
      for (const entry of this.#ticks) {
        if (this.#nowMs < entry.nextMs) continue;
        entry.nextMs += entry.everyMs;
        entry.tick();
      }
    }
  }
}

function simulated(seed = 1) {
  const clock = new HandClock();
  const link = new SimulatedLink({ seed, clock });
  const received: MeterNotification[] = [];
  link.on('notification', (notification) => received.push(notification));
  return { clock, link, received };
}

describe('the simulated meter', () => {
  test('is found, connected, described and live at once', () => {
    const { link, clock, received } = simulated();
    const names: string[] = [];
    link.on('found', ({ name }) => names.push(name));
    link.startScan();
    link.connect();
    expect(names).toEqual(['Simulated']);
    expect(link.state).toMatchObject({ phase: 'live', deviceId: 'simulated' });
    expect(meterDescriptionSchema.parse(link.described?.description)).toMatchObject({ unit: 'pct' });
    expect(link.batteryPct).toBe(84);
    clock.passMs(3000);
    expect(received).toHaveLength(30);
  });

  test('with the pins in the air it sends "no reading", which does not count as refused', () => {
    const { link, clock, received } = simulated();
    link.connect();
    clock.passMs(500);
    expect(
      received.every((n) => n.value === null && n.problem!.code === 'meter.value.not-at-resolution'),
    ).toBe(true);
    expect(link.counts).toMatchObject({
      received: 5,
      decoded: 0,
      noReading: 5,
      other: 0,
      refused: 0,
      lastRefusal: null,
    });
  });

  test.each([1, 2, 3, 4, 5])(
    'seed %i: pins in after about a second, a drift, and rest at the truth within two',
    (seed) => {
      const { link, clock, received } = simulated(seed);
      link.connect();
      link.setTruth(12.6);
      clock.passMs(600);
      expect(received.every((n) => n.value === null)).toBe(true);
      clock.passMs(4400);
      const shown = received.filter((n) => n.value !== null);
      const inAtMs = shown[0]!.receivedAtMs;
      expect(inAtMs).toBeGreaterThanOrEqual(700);
      expect(inAtMs).toBeLessThanOrEqual(1400);
      expect(Math.abs(shown[0]!.value! - 12.6)).toBeGreaterThan(0.3);
      for (const { value, receivedAtMs } of shown) {
        if (receivedAtMs > inAtMs + 2000) expect(Math.abs(value! - 12.6)).toBeLessThanOrEqual(0.21);
      }
    },
  );

  test('aiming again lifts the pins first, even for the same value; null leaves them in the air', () => {
    const { link, clock, received } = simulated();
    link.connect();
    link.setTruth(9);
    clock.passMs(3000);
    expect(received.at(-1)!.value).toBeCloseTo(9, 0);
    link.setTruth(9);
    clock.passMs(200);
    expect(received.at(-1)!.value).toBeNull();
    clock.passMs(3000);
    expect(received.at(-1)!.value).toBeCloseTo(9, 0);
    link.setTruth(null);
    clock.passMs(5000);
    expect(received.slice(-45).every((n) => n.value === null)).toBe(true);
  });

  test.each([
    [3, 'meter.value.not-at-resolution'],
    [75, 'meter.value.above-scale'],
  ])('wood at %i %% is outside its scale: no value, and the reason', (truth, code) => {
    const { link, clock, received } = simulated();
    link.connect();
    link.setTruth(truth);
    clock.passMs(4000);
    expect(received.at(-1)).toMatchObject({ value: null, problem: { code } });
  });

  test('the same seed and the same orders give the same bytes; another seed gives others', () => {
    const bytesOf = (seed: number) => {
      const { link, clock, received } = simulated(seed);
      link.connect();
      link.setTruth(14.2);
      clock.passMs(4000);
      return received.map((n) => Buffer.from(n.bytes).toString('hex')).join('');
    };
    expect(bytesOf(7)).toBe(bytesOf(7));
    expect(bytesOf(7)).not.toBe(bytesOf(8));
  });

  test('a disconnected one sends nothing more', async () => {
    const { link, clock, received } = simulated();
    link.connect();
    clock.passMs(1000);
    await link.disconnect();
    clock.passMs(1000);
    expect(received).toHaveLength(10);
    expect(link.state).toMatchObject({ phase: 'idle', deviceId: null });
  });
});

test('no meter at all: every order is answered with the advice to type', async () => {
  const link = new NoLink();
  link.startScan();
  expect(link.state).toMatchObject({
    phase: 'idle',
    message: { code: 'meter.state.typed-only' },
  });
  await link.close();
});
