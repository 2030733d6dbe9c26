/** Days of air-drying that were published, with boards that are worked out against them. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { type DryingBoard, dryingPrior } from '../../shared-core/wood/drying/history-fit.ts';
import { builtInSpecies } from '../../shared-core/wood/species/built-in.ts';
import { type DryingClass, dryingClassOf } from '../../shared-core/wood/species/drying-class.ts';
import {
  daysUntil,
  greenBoard,
  house,
  madison,
  miceli,
  months,
  peck,
  rietzPage,
  upperMichigan,
} from '../reference/published-drying-days.ts';
import { geometricMean } from './drying-days.ts';
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
  'northern California coast': ['725945', '725905'],
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

/** Fewest and most days of one species. */
export type PublishedDays = {
  what: string;
  dryingClass: DryingClass;
  published: { fewest: number; most: number };
  /** Worked out, the diffusivity multiplied by this. */
  worked: (factor: number) => { fewest: number; most: number };
};

function daysWith(factor: number, board: DryingBoard, untilPct: number): number {
  const theta = dryingPrior(board).mean;
  return daysUntil(board, untilPct, theta.with(0, theta[0]! + Math.log(factor)));
}

/** Over the months of stacking, in the geometric mean of some yards; from the middle of the prior. */
const inYards =
  (yards: readonly DryingBoard[][], untilPct: number) =>
  (factor: number): { fewest: number; most: number } => {
    const ends = yards.map((boards) => {
      const days = boards.map((board) => daysWith(factor, board, untilPct));
      return { fewest: Math.min(...days), most: Math.max(...days) };
    });
    return {
      fewest: geometricMean(ends.map(({ fewest }) => fewest)),
      most: geometricMean(ends.map(({ most }) => most)),
    };
  };

/** 18 species by region: `data/air-drying-days.csv`. */
export const airDays: PublishedDays[] = readFileSync(
  join(import.meta.dirname, 'data/air-drying-days.csv'),
  'utf8',
)
  .trim()
  .split('\n')
  .slice(1)
  .map((line): PublishedDays => {
    const [speciesId = '', region = '', fewest, most] = line.split(',');
    const species = builtInSpecies.find(({ id }) => id === speciesId)!;
    const dryingClass = dryingClassOf(species)!;
    const yards = STATIONS[region]!.map((wmo) =>
      months.map((month) =>
        greenBoard(stationYear(wmo).air, month, [
          dryingClass,
          species.basicSpecificGravity!,
          GREEN_PCT[speciesId]!,
        ]),
      ),
    );
    return {
      what: speciesId,
      dryingClass,
      published: { fewest: Number(fewest), most: Number(most) },
      worked: inYards(yards, 20),
    };
  });

/** Those of the reference tests. */
export const otherDays: PublishedDays[] = [
  ...rietzPage.map(([what, species, fewest, most]): PublishedDays => {
    const yard = months.map((month) => greenBoard(madison, month, species));
    return { what, dryingClass: species[0], published: { fewest, most }, worked: inYards([yard], 20) };
  }),
  {
    what: 'sugar maple in Michigan',
    dryingClass: 'maple',
    published: { fewest: peck.fastest, most: peck.slowest },
    worked: inYards([months.map((month) => greenBoard(upperMichigan, month, peck.species))], 20),
  },
  ...miceli.map(
    ([name, species, fewest, most]): PublishedDays => ({
      what: `${name} indoors`,
      dryingClass: species[0],
      published: { fewest, most },
      worked: inYards([[greenBoard(house, 0, species)]], 10),
    }),
  ),
];
