/**
 * Chooses the medians of the drying model's prior by class of species. Run it with
 *
 *     npx node tests/bench/drying-prior.bench.ts
 *
 * For each class: the factor on its median at which the days worked out are the published ones on average, over its species
 * and over fewest and most days (`published-days.ts`). 1 means that the median is the best one.
 */
import { priorPace } from '../../shared-core/wood/drying/history-fit.ts';
import { dryingClassSchema } from '../../shared-core/wood/species/drying-class.ts';
import { geometricMean } from './drying-days.ts';
import { airDays, otherDays } from './published-days.ts';

const FACTORS = Array.from({ length: 25 }, (_, k) => 2 ** ((k - 12) / 12));
const shown = (value: number): string => value.toFixed(2).padStart(6);

console.log('class                median  factor  days over published then: fewest, most');
for (const dryingClass of dryingClassSchema.options) {
  const of = [...airDays, ...otherDays].filter((each) => each.dryingClass === dryingClass);
  const median = priorPace.diffusivity.medians[dryingClass];
  if (of.length === 0) {
    console.log(`  ${dryingClass.padEnd(18)}${shown(median)}  no days published`);
    continue;
  }
  const tried = FACTORS.map((factor) => {
    const days = of.map(({ published, worked }) => ({ published, days: worked(factor) }));
    const fewest = geometricMean(days.map((each) => each.days.fewest / each.published.fewest));
    const most = geometricMean(days.map((each) => each.days.most / each.published.most));
    return { factor, fewest, most, off: Math.abs(Math.log(fewest * most)) };
  });
  const best = tried.reduce((least, each) => (each.off < least.off ? each : least));
  console.log(
    `  ${dryingClass.padEnd(18)}${shown(median)}  ${shown(best.factor)}${shown(best.fewest)}${shown(best.most)}   ${of.map(({ what }) => what).join(', ')}`,
  );
}
