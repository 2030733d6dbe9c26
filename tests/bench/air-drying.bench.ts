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
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { DryingBoard } from '../../shared-core/wood/drying/history-fit.ts';
import { builtInSpecies } from '../../shared-core/wood/species/built-in.ts';
import { geometricMean, middleDays } from './drying-days.ts';
import { stationYear } from './typical-years.ts';

/** Stations near the middle of a region of the table: ours. */
const STATIONS: Record<string, string[]> = {
  'Pacific Northwest': ['726980', '727920'],
  'Lake states': ['726410', '726450'],
  Piedmont: ['723170', '723110'],
  Gulf: ['722230', '722310'],
  Northeast: ['725180', '726170'],
  'Inland Northwest': ['727850', '727730'],
  Georgia: ['722170', '722180'],
  'eastern Oregon': ['726835', '726830'],
  'northern California coast': ['725945'],
};

/** Green moisture, half of heartwood's and half of sapwood's; those not on a page that was read are from memory. */
const GREEN_PCT: Record<string, number> = {
  'alder-red': 97,
  'basswood-american': 107,
  'birch-yellow': 73,
  // From memory.
  'cottonwood-eastern': 152,
  // From memory.
  'hickory-shagbark': 61,
  // From memory.
  'magnolia-southern': 92,
  // From memory, of red maple's sapwood.
  'maple-red': 80,
  // From memory.
  'oak-southern-red': 79,
  // From memory.
  sweetgum: 108,
  baldcypress: 146,
  'douglas-fir-coast': 76,
  'hemlock-eastern': 108,
  'larch-western': 87,
  // From memory.
  'pine-jack': 80,
  'pine-loblolly': 72,
  // From memory.
  'pine-ponderosa': 94,
  // From memory.
  'redwood-young-growth': 120,
  'spruce-engelmann': 112,
};

const CLASS_OF: Record<string, string> = {
  'alder-red': 'light hardwood',
  'basswood-american': 'light hardwood',
  'birch-yellow': 'dense hardwood',
  'cottonwood-eastern': 'light hardwood',
  'hickory-shagbark': 'dense hardwood',
  'magnolia-southern': 'southern hardwood',
  'maple-red': 'dense hardwood',
  'oak-southern-red': 'lowland oak',
  sweetgum: 'southern hardwood',
  baldcypress: 'baldcypress',
  'douglas-fir-coast': 'softwood',
  'hemlock-eastern': 'softwood',
  'larch-western': 'softwood',
  'pine-jack': 'pine',
  'pine-loblolly': 'pine',
  'pine-ponderosa': 'pine',
  'redwood-young-growth': 'softwood',
  'spruce-engelmann': 'softwood',
};

const rows = readFileSync(join(import.meta.dirname, 'data/air-drying-days.csv'), 'utf8')
  .trim()
  .split('\n')
  .slice(1)
  .map((line) => line.split(','))
  .map(([speciesId = '', region = '', fewest, most]) => ({
    speciesId,
    region,
    fewest: Number(fewest),
    most: Number(most),
  }));

const compared = rows.map(({ speciesId, region, fewest, most }) => {
  const species = builtInSpecies.find(({ id }) => id === speciesId)!;
  const ends = STATIONS[region]!.map((wmo) => {
    const { air } = stationYear(wmo);
    const days = Array.from({ length: 12 }, (_, month) => {
      const atMs = Date.UTC(2021, month, 1);
      const board: DryingBoard = {
        thicknessMm: 28,
        basicSpecificGravity: species.basicSpecificGravity,
        start: { atMs, mcPct: GREEN_PCT[speciesId]!, logSd: 0.15, shellRatio: 1 },
        stays: [{ fromMs: atMs, air }],
      };
      return middleDays(board, 20);
    });
    return { fewest: Math.min(...days), most: Math.max(...days) };
  });
  return {
    speciesId,
    kind: CLASS_OF[speciesId]!,
    text: `${geometricMean(ends.map((end) => end.fewest)).toFixed(0)} of ${fewest}, ${geometricMean(ends.map((end) => end.most)).toFixed(0)} of ${most}`,
    fewest: geometricMean(ends.map((end) => end.fewest)) / fewest,
    most: geometricMean(ends.map((end) => end.most)) / most,
  };
});

const shown = (ratio: number): string => ratio.toFixed(2).padStart(6);
console.log('Model over published days: fewest, most');
for (const { speciesId, kind, fewest, most, text } of compared) {
  console.log(`  ${speciesId.padEnd(24)}${kind.padEnd(20)}${shown(fewest)}${shown(most)}   ${text}`);
}
console.log('\nGeometric mean by class (goal 0.80 to 1.25)');
for (const kind of new Set(compared.map((each) => each.kind))) {
  const of = compared.filter((each) => each.kind === kind);
  console.log(
    `  ${kind.padEnd(20)}${shown(geometricMean(of.map((each) => each.fewest)))}${shown(geometricMean(of.map((each) => each.most)))}   ${of.length} species`,
  );
}
const off = compared.flatMap(({ speciesId, fewest, most }) =>
  [fewest, most].some((ratio) => Math.abs(Math.log(ratio)) > Math.log(2)) ? [speciesId] : [],
);
console.log(`\nOff by more than a factor of 2 at an end (goal none): ${off.join(', ') || 'none'}`);
