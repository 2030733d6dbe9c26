/**
 * How often the first proposal for an unknown meter is right, after two and after three numbers typed off its display,
 * how often a wrong one is said to be found, and how long proposing takes. Meters: `odd-meters.ts`. Run it with
 *
 *     node tests/bench/describing.bench.ts [meters of each kind, 100] [seed, 101]
 *
 * Costs and thresholds of `propose.ts` were set on seeds 11, 12 and 21. A scale with an offset takes two numbers to be
 * known, and is not known after those two.
 */
import { propose } from '../../shared-core/gatt/propose.ts';
import { randomFrom } from '../faults/random.ts';
import { isRight, KINDS, makeOddMeter, until } from '../unit/gatt/odd-meters.ts';
import { figure } from './figure.ts';

const GOAL_SHARE = { 2: 0.95, 3: 0.98 } as const;
const GOAL_WRONG_FOUND = 0.005;
const [count = 100, seed = 101] = process.argv.slice(2).map(Number);

const percent = (share: number): string => `${(100 * share).toFixed(1)}%`.padStart(7);
const random = randomFrom(seed);
const all = { 2: { first: 0, shown: 0, found: 0, wrong: 0 }, 3: { first: 0, shown: 0, found: 0, wrong: 0 } };

console.log(
  'after 2 or 3 numbers: the first is right, one of those shown is, found, found but wrong, ms at p50 and at most\n',
);
for (const kind of KINDS) {
  const meters = Array.from({ length: count }, () => makeOddMeter(kind, random));
  for (const typed of [2, 3] as const) {
    const own = { first: 0, shown: 0, found: 0, wrong: 0 };
    const ms = meters
      .map((meter) => {
        const numbers = meter.numbers.slice(0, typed);
        const begun = performance.now();
        const proposals = propose(until(meter.places, numbers), numbers, 'pct');
        const tookMs = performance.now() - begun;
        const isFirstRight = isRight(proposals[0], meter);
        if (isFirstRight) own.first++;
        if (proposals.some((proposal) => isRight(proposal, meter))) own.shown++;
        if (proposals[0]?.isSure) own.found++;
        if (proposals[0]?.isSure && !isFirstRight) own.wrong++;
        return tookMs;
      })
      .toSorted((a, b) => a - b);
    for (const part of ['first', 'shown', 'found', 'wrong'] as const) all[typed][part] += own[part];
    const shares = [own.first, own.shown, own.found, own.wrong]
      .map((part) => percent(part / count))
      .join(' ');
    const times = [ms[ms.length >> 1]!, ms.at(-1)!].map((each) => each.toFixed(0).padStart(5)).join('');
    console.log(`${kind.padEnd(16)} ${typed} ${shares} ${times}`);
  }
}
const meters = count * KINDS.length;
for (const typed of [2, 3] as const) {
  const { first, wrong } = all[typed];
  figure({
    what: `unknown meter, first proposal right after ${typed} numbers`,
    value: (100 * first) / meters,
    unit: '%',
    goal: { least: 100 * GOAL_SHARE[typed] },
  });
  figure({
    what: `unknown meter, found but wrong after ${typed} numbers`,
    value: (100 * wrong) / meters,
    unit: '%',
    goal: { most: 100 * GOAL_WRONG_FOUND },
  });
}
