/**
 * Days to air-dry 1-inch lumber to 20 %, against the published ones of 18 species, by class of species. Run it with
 *
 *     npx node tests/bench/air-drying.bench.ts
 *
 * Published: fewest days where stacked in the best month, most where stacked in the worst (`data/air-drying-days.csv`, from
 * memory). Worked out with the middle of the prior in the months of stations of the region, 28 mm thick, from green
 * (the Wood Handbook's Table 4-1, read or from memory, heartwood and sapwood half and half). Goal: the geometric mean of
 * each class is 0.8 to 1.25 of the published days at both ends, and no species is off by more than a factor of 2.
 *
 * Not met by lowland oaks and baldcypress, whose slow end is too fast. Published periods "are based on climatic conditions for the
 * region in which the particular species is cut", apply to hand-stacked piles 6 to 16 feet wide, and are longest where lumber is
 * "piled too late in the period of good drying weather" (Technical Note 233, Forest Products Laboratory, 1960; its text was
 * read, not its table). So their two ends are a region's, and ours are of two stations on its coast: the oak 1.18 and 0.73.
 * Over the 44 stations of Louisiana, Mississippi and Alabama, in the geometric mean: the oak 1.21 and 0.78, baldcypress 1.28 and
 * 0.80; over the fastest and slowest tenth of them 1.09 and 0.83, 1.17 and 0.85. Single stations a few miles from each other
 * differ by a tenth. In mixed country the tenths would not do: over stations within 400 km, dense hardwoods and softwoods come to
 * 0.59 and 0.57 of the fewest days, for deserts and mountains are among them. So the two stations are left as they are.
 */
import { geometricMean } from './drying-days.ts';
import { figure } from './figure.ts';
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
const classes = [...new Set(compared.map(({ dryingClass }) => dryingClass))].map((dryingClass) => {
  const of = compared.filter((each) => each.dryingClass === dryingClass);
  const fewest = geometricMean(of.map((each) => each.fewest));
  return { dryingClass, fewest, most: geometricMean(of.map((each) => each.most)), species: of.length };
});
console.log('\nGeometric mean by class, over published days');
for (const { dryingClass, species, ...ends } of classes)
  for (const end of ['fewest', 'most'] as const)
    figure({
      what: `air-drying days, ${dryingClass} (${species} species), ${end}`,
      value: Number(shown(ends[end])),
      unit: '',
      goal: { least: 0.8, most: 1.25 },
      missesBecause: 'published ends are those of a region, these of two stations in it (head of the bench)',
    });
const off = compared.flatMap(({ what, fewest, most }) =>
  [fewest, most].some((ratio) => Math.abs(Math.log(ratio)) > Math.log(2)) ? [what] : [],
);
console.log(`\nOff by more than a factor of 2 at an end: ${off.join(', ') || 'none'}`);
figure({
  what: 'species whose days are off by a factor of 2',
  value: off.length,
  unit: '',
  goal: { most: 0 },
});
