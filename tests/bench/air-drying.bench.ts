/**
 * Days to air-dry 1-inch lumber to 20 %, against the published ones of 18 species, by class of species. Run it with
 *
 *     npx node tests/bench/air-drying.bench.ts
 *
 * Published: fewest days where stacked in the best month, most where stacked in the worst (`data/air-drying-days.csv`, from
 * memory). Worked out with the middle of the prior in the months of stations of the region, 28 mm thick, from green
 * (the Wood Handbook's Table 4-1, read or from memory, heartwood and sapwood half and half). Goal: the geometric mean of
 * each class is 0.8 to 1.25 of the published days at both ends, and no species is off by more than a factor of 2.
 */
import { geometricMean } from './drying-days.ts';
import { airDays } from './published-days.ts';

const compared = airDays.map(({ what, dryingClass, published, worked }) => {
  const days = worked(1);
  return {
    what,
    dryingClass,
    fewest: days.fewest / published.fewest,
    most: days.most / published.most,
    text: `${days.fewest.toFixed(0)} of ${published.fewest}, ${days.most.toFixed(0)} of ${published.most}`,
  };
});

const shown = (ratio: number): string => ratio.toFixed(2).padStart(6);
console.log('Model over published days: fewest, most');
for (const { what, dryingClass, fewest, most, text } of compared) {
  console.log(`  ${what.padEnd(24)}${dryingClass.padEnd(20)}${shown(fewest)}${shown(most)}   ${text}`);
}
console.log('\nGeometric mean by class (goal 0.80 to 1.25)');
for (const dryingClass of new Set(compared.map((each) => each.dryingClass))) {
  const of = compared.filter((each) => each.dryingClass === dryingClass);
  console.log(
    `  ${dryingClass.padEnd(20)}${shown(geometricMean(of.map((each) => each.fewest)))}${shown(geometricMean(of.map((each) => each.most)))}   ${of.length} species`,
  );
}
const off = compared.flatMap(({ what, fewest, most }) =>
  [fewest, most].some((ratio) => Math.abs(Math.log(ratio)) > Math.log(2)) ? [what] : [],
);
console.log(`\nOff by more than a factor of 2 at an end (goal none): ${off.join(', ') || 'none'}`);
