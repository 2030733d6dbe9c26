import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Sample, startSettling, step } from '../../../shared-core/probing/readings/settle.ts';
import { isWrong, makeInsertions } from './insertions.ts';

/*
 * The streams here are synthetic: an exponential drift `end + (start - end) e^(-t/τ)` with normal noise, made by the
 * seeded generator below. They stand for no particular meter.
 */

function noiseFrom(seed: number): () => number {
  let state = seed >>> 0;
  const uniform = () => {
    // mulberry32, a public-domain generator.
    state = (state + 0x6d2b79f5) >>> 0;
    let t = state;
    t = Math.imul(t ^ (t >>> 15), t | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
  return () => Math.sqrt(-2 * Math.log(1 - uniform())) * Math.cos(2 * Math.PI * uniform());
}

type Insertion = { start: number; end: number; tauMs: number; seconds: number };

function stream(
  insertions: Insertion[],
  {
    hz,
    noise = 0,
    seed = 1,
    outSeconds = 2,
  }: { hz: number; noise?: number; seed?: number; outSeconds?: number },
): Sample[] {
  const normal = noiseFrom(seed);
  const samples: Sample[] = [];
  let atMs = 0;
  const gap = 1000 / hz;
  for (const { start, end, tauMs, seconds } of insertions) {
    for (let t = 0; t < outSeconds * 1000; t += gap, atMs += gap) samples.push({ atMs, value: null });
    for (let t = 0; t < seconds * 1000; t += gap, atMs += gap)
      samples.push({ atMs, value: end + (start - end) * Math.exp(-t / tauMs) + noise * normal() });
  }
  return samples;
}

function save(samples: Sample[], unit: 'pct' | 'ohm' = 'pct'): { atMs: number; value: number }[] {
  let state = startSettling(unit);
  const saved: { atMs: number; value: number }[] = [];
  for (const sample of samples) {
    const result = step(state, sample);
    state = result.state;
    if (result.settledNow) saved.push({ atMs: sample.atMs, value: result.value! });
  }
  return saved;
}

describe('one insertion yields one reading', () => {
  test.each([1, 2, 5, 10, 25, 50, 100])('at %d values a second', (hz) => {
    const saved = save(
      stream([{ start: 9, end: 12.6, tauMs: 400, seconds: 12 }], { hz, noise: 0.05, outSeconds: 1 }),
    );
    expect(saved).toHaveLength(1);
    expect(Math.abs(saved[0]!.value - 12.6)).toBeLessThan(0.3);
  });

  test('whose value is one that the meter sent, not between two of them', () => {
    const tenths = stream([{ start: 9, end: 12.65, tauMs: 400, seconds: 6 }], { hz: 10, noise: 0.1 }).map(
      ({ atMs, value }) => ({ atMs, value: value === null ? null : Math.round(value * 10) / 10 }),
    );
    const saved = save(tenths);
    expect(saved).toHaveLength(1);
    expect(tenths.map(({ value }) => value)).toContain(saved[0]!.value);
    const ohms = save(
      Array.from({ length: 60 }, (_, i) => ({ atMs: i * 100, value: i < 10 ? null : 470_000 + (i % 2) })),
      'ohm',
    );
    expect([470_000, 470_001]).toContain(ohms[0]!.value);
  });

  test('and three insertions with the pins out between them yield three, also where all read the same', () => {
    const same = { start: 9, end: 12.6, tauMs: 400, seconds: 6 };
    expect(save(stream([same, same, same], { hz: 10, noise: 0.05 }))).toHaveLength(3);
  });

  test('pins moved between two values of a slow meter are found by the jump', () => {
    const values = [12.5, ...Array(8).fill(12.6), 16.1, ...Array(9).fill(16.2)];
    const saved = save(values.map((value, index) => ({ atMs: index * 1000, value })));
    expect(saved.map((each) => each.value)).toEqual([12.6, 16.2]);
  });

  test('a lone spike in a settled stream is not a new insertion', () => {
    const samples = Array.from({ length: 200 }, (_, index) => ({
      atMs: index * 100,
      value: index % 40 === 30 ? 25 : 12.6,
    }));
    expect(save(samples)).toHaveLength(1);
  });

  test('a bounce of the contacts shorter than a quarter of a second is not a new insertion', () => {
    const samples = Array.from({ length: 400 }, (_, index) => ({
      atMs: index * 20,
      value: index % 100 > 92 ? null : 12.6,
    }));
    expect(save(samples)).toHaveLength(1);
  });

  test('creeping on after it has settled, as pins in damp wood do, is not a new insertion', () => {
    const samples = Array.from({ length: 600 }, (_, index) => ({
      atMs: index * 100,
      // At rest for five seconds first.
      value: 12.1 + Math.max(0, index - 50) * 0.01,
    }));
    expect(save(samples)).toHaveLength(1);
  });
});

describe('drifting is not settled', () => {
  test('nothing is saved while the value still moves by a point a second', () => {
    const samples = Array.from({ length: 100 }, (_, index) => ({
      atMs: index * 100,
      value: 8 + index * 0.1,
    }));
    expect(save(samples)).toEqual([]);
  });

  test('nothing is saved of a value that jumps about by more than noise explains', () => {
    const samples = Array.from({ length: 100 }, (_, index) => ({
      atMs: index * 100,
      value: 12 + (index % 3),
    }));
    expect(save(samples)).toEqual([]);
  });

  test('the slower the drift, the later the reading', () => {
    const at = (tauMs: number) =>
      save(stream([{ start: 8, end: 13, tauMs, seconds: 30 }], { hz: 20 }))[0]!.atMs;
    expect(at(300)).toBeLessThan(at(1000));
    expect(at(1000)).toBeLessThan(at(3000));
  });
});

describe('what the screen shows', () => {
  test('pins out, then drifting, then settled, then pins out again', () => {
    let state = startSettling('pct');
    const phases: string[] = [];
    const samples = [
      ...stream([{ start: 9, end: 12.6, tauMs: 400, seconds: 6 }], { hz: 10 }),
      ...[0, 1, 2, 3, 4].map((index) => ({ atMs: 8000 + index * 100, value: null })),
    ];
    for (const sample of samples) {
      const result = step(state, sample);
      state = result.state;
      if (phases.at(-1) !== result.phase) phases.push(result.phase);
      if (result.phase === 'pins-out') expect(result.value).toBeNull();
      else expect(result.spread).toBeGreaterThanOrEqual(0);
    }
    expect(phases).toEqual(['pins-out', 'drifting', 'settled', 'pins-out']);
  });
});

test('a meter in ohms settles too: 125 MΩ reached from 900 MΩ, within a tenth of a decade', () => {
  const saved = save(
    stream([{ start: 900e6, end: 125e6, tauMs: 400, seconds: 8 }], { hz: 10, noise: 2e6 }),
    'ohm',
  );
  expect(saved).toHaveLength(1);
  expect(Math.abs(Math.log10(saved[0]!.value / 125e6))).toBeLessThan(0.1);
});

test('values that cannot come from wood are an open circuit: out of the meter’s range, not a number, negative', () => {
  let state = startSettling('pct', { min: 5, max: 40 });
  for (const [index, value] of [4, 41, Number.NaN, -3, 0, Number.POSITIVE_INFINITY].entries()) {
    const result = step(state, { atMs: index * 1000, value });
    state = result.state;
    expect(result.phase).toBe('pins-out');
  }
});

test('samples that come late or out of order are passed over', () => {
  let state = startSettling('pct');
  state = step(state, { atMs: 1000, value: 12 }).state;
  expect(step(state, { atMs: 500, value: 30 }).state).toBe(state);
  expect(step(state, { atMs: Number.NaN, value: 30 }).state).toBe(state);
});

const insertion = fc.record({
  start: fc.double({ min: 7, max: 26, noNaN: true }),
  end: fc.double({ min: 7, max: 26, noNaN: true }),
  tauMs: fc.integer({ min: 100, max: 1500 }),
  seconds: fc.constant(15),
});

test('for any drift, rate and modest noise: exactly one reading per insertion, close to where the drift ends', () => {
  fc.assert(
    fc.property(
      fc.array(insertion, { minLength: 1, maxLength: 3 }),
      fc.constantFrom(2, 5, 10, 50),
      fc.double({ min: 0, max: 0.08, noNaN: true }),
      fc.integer(),
      (insertions, hz, noise, seed) => {
        const saved = save(stream(insertions, { hz, noise, seed }));
        expect(saved).toHaveLength(insertions.length);
        for (const [index, { end, tauMs }] of insertions.entries()) {
          // Steady is 0.2 points or 1.5 % a second over half a window: the rest of the drift is that rate times τ.
          const rest = Math.max(0.2, 0.015 * end) * (0.75 + tauMs / 1000);
          expect(Math.abs(saved[index]!.value - end)).toBeLessThan(rest + 4 * noise + 0.05);
        }
      },
    ),
    { numRuns: 60 },
  );
});

/** Those that arrive out of their order: each at most `by` places from its own. */
const shuffled = (samples: readonly Sample[], by: number, seed: number): Sample[] => {
  const normal = noiseFrom(seed);
  return samples
    .map((sample, index) => ({ sample, place: index + Math.max(-by / 2, Math.min(by / 2, normal() * by)) }))
    .toSorted((a, b) => a.place - b.place)
    .map(({ sample }) => sample);
};

describe.each([
  ['with their own times', false],
  ['with the times at which they arrive', true],
] as const)('values out of their order, %s', (_, isTimedAtArrival) => {
  test('save nothing wrong, nothing twice, and never at an earlier time', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 4 }), fc.integer(), fc.integer(), (by, seed, order) => {
        const insertions = [13.2, 24.5].map((end) => ({ start: end + 4, end, tauMs: 500, seconds: 8 }));
        const sent = stream(insertions, { hz: 10, noise: 0.02, seed });
        const came = shuffled(sent, by, order);
        const samples = isTimedAtArrival
          ? came.map(({ value }, index) => ({ atMs: sent[index]!.atMs, value }))
          : came;
        const saved = save(samples);
        expect(saved).toHaveLength(insertions.length);
        for (const [index, { end }] of insertions.entries())
          expect(Math.abs(saved[index]!.value - end)).toBeLessThan(0.6);
        expect(saved[0]!.atMs).toBeLessThan(saved[1]!.atMs);
        expect(saved[1]!.atMs).toBeGreaterThan(sent.length * 50);
      }),
      { numRuns: 60 },
    );
  });
});

/** A small sample of `tests/bench/settling.bench.ts`, whose goal is one of 1,000. */
test('of 300 insertions of all kinds, nothing wrong is saved', () => {
  const wrong = makeInsertions(300, 20).filter((insertion) =>
    isWrong(insertion, save(insertion.samples, insertion.unit)),
  );
  expect(wrong.map(({ kind, hz }) => `${kind} at ${hz}`)).toEqual([]);
});

test('the reducer never changes the state it was given', () => {
  const before = startSettling('pct');
  const copy = structuredClone(before);
  step(before, { atMs: 1, value: 12 });
  expect(before).toEqual(copy);
});
