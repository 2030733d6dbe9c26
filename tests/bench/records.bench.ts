/**
 * Dated records of drying boards against what the model forecasts before any reading. Run it with
 *
 *     npx node tests/bench/records.bench.ts
 *
 * The records are in `data/drying-records.csv`, each with where it was read. Few have their own air: each row says what
 * is assumed. The air of a place that is not known is that of the region, and an assumed room's is a guess: both with their
 * spread, as in the app. Days from the first value to the last are compared with the forecast's 10, 50 and 90 %. Goal: 70 to 90 of 100
 * records within. Left out, for they cannot be run: those without thickness or days (a09, a16, a18, b08, d02, d03, d05, d08,
 * e02), closed packages (d04), boards near equilibrium for days not given (b05, d01, d06, d07), and a round stick whose air
 * is another site's (g02). The other stick (g01) got wet in the rain, so its daily swing is compared (`daily-swing.ts`).
 */
import type { MonthlyAir } from '../../shared-core/wood/climate/monthly-air.ts';
import type { AirMovement } from '../../shared-core/wood/drying/air-movement.ts';
import { type DryingBoard, priorPace } from '../../shared-core/wood/drying/history-fit.ts';
import { builtInSpecies } from '../../shared-core/wood/species/built-in.ts';
import { dryingClassOf } from '../../shared-core/wood/species/drying-class.ts';
import { dailySwing } from './daily-swing.ts';
import { forecastDays, geometricMean, MOST_DAYS } from './drying-days.ts';
import { figure } from './figure.ts';
import { middleWest, stationYear, steadyAir, unsure } from './typical-years.ts';

type DryingRecord = {
  id: string;
  /** Of the built-in list; or a basic specific gravity, ours. */
  species: string | number;
  thicknessMm: number;
  /** Month (1 to 12) in which it begins. */
  month: number;
  air: MonthlyAir;
  /** As in the wind where left out. */
  movement?: AirMovement;
  /** Null: green, not measured. */
  startPct: number | null;
  untilPct: number;
  /** Least and most days of the record; infinite where it says only "more than". */
  days: readonly [number, number];
  assumed: string;
};

const outdoors = (wmo: string): MonthlyAir => stationYear(wmo).air;
const unsureSteady = (tempC: number, rh: number): MonthlyAir => unsure(steadyAir(tempC, rh));

/** Rows whose month is not known begin in April, in whose air a yard mostly stacks. */
const RECORDS: readonly DryingRecord[] = [
  {
    id: 'a03-coconut-25',
    species: 0.5,
    thicknessMm: 25,
    month: 4,
    air: unsureSteady(27, 0.78),
    startPct: null,
    untilPct: 18.5,
    days: [42, 49],
    assumed: 'gravity 0.5; 27 °C, 78 % all year',
  },
  {
    id: 'a03-coconut-50',
    species: 0.5,
    thicknessMm: 50,
    month: 4,
    air: unsureSteady(27, 0.78),
    startPct: null,
    untilPct: 18.5,
    days: [70, 77],
    assumed: 'gravity 0.5; 27 °C, 78 % all year',
  },
  {
    id: 'a05-maple-michigan, best',
    species: 'maple-sugar',
    thicknessMm: 28,
    month: 6,
    air: outdoors('726480'),
    startPct: null,
    untilPct: 20,
    days: [40, 40],
    assumed: 'Escanaba, stacked in June',
  },
  {
    id: 'a05-maple-michigan, worst',
    species: 'maple-sugar',
    thicknessMm: 28,
    month: 10,
    air: outdoors('726480'),
    startPct: null,
    untilPct: 20,
    days: [205, 205],
    assumed: 'Escanaba, stacked in October',
  },
  {
    id: 'a06-woak-green-yard',
    species: 'oak-white',
    thicknessMm: 28,
    month: 4,
    air: unsureSteady(20, 0.62),
    movement: 'open-shed',
    startPct: 90,
    untilPct: 12.5,
    days: [90, 90],
    assumed: 'April; EMC 11.3: "12" of its air is a round figure; read as 12.5 or less',
  },
  {
    id: 'a07-walnut-clovis',
    species: 'walnut-black',
    thicknessMm: 51,
    month: 4,
    air: outdoors('723890'),
    movement: 'open-shed',
    startPct: 30,
    untilPct: 18.5,
    days: [30, 30],
    assumed: 'Fresno; 30 % at first; average two points above the shell read',
  },
  {
    id: 'a08-walnut-ny-loft',
    species: 'walnut-black',
    thicknessMm: 51,
    month: 10,
    air: outdoors('725190'),
    movement: 'still-room',
    startPct: null,
    untilPct: 35,
    days: [75, Number.POSITIVE_INFINITY],
    assumed: 'Syracuse',
  },
  {
    id: 'a11-maple-slab',
    species: 'maple-red',
    thicknessMm: 57,
    month: 4,
    air: middleWest,
    startPct: null,
    untilPct: 13,
    days: [150, 200],
    assumed: 'the middle states; average a point above the 19 mm read',
  },
  {
    id: 'a12-walnut-slab',
    species: 'walnut-black',
    thicknessMm: 57,
    month: 4,
    air: middleWest,
    startPct: null,
    untilPct: 15,
    days: [150, 200],
    assumed: 'the middle states; the average is what the meter read',
  },
  {
    id: 'a13-cedar-foresthill',
    species: 'cedar-incense',
    thicknessMm: 25,
    month: 11,
    air: outdoors('725845'),
    startPct: null,
    untilPct: 19,
    days: [0, 90],
    assumed: 'Blue Canyon, 600 m higher',
  },
  {
    id: 'a14-redoak-winter',
    species: 'oak-northern-red',
    thicknessMm: 28,
    month: 11,
    air: middleWest,
    movement: 'open-shed',
    startPct: null,
    untilPct: 15,
    days: [150, 150],
    assumed: 'the middle states, from November',
  },
  {
    id: 'a15-door-mill',
    species: 0.55,
    thicknessMm: 38,
    month: 4,
    air: unsureSteady(27, 0.8),
    movement: 'open-shed',
    startPct: 55,
    untilPct: 30,
    days: [60, 90],
    assumed: 'gravity 0.55; 27 °C, 80 % all year; 38 mm',
  },
  {
    id: 'a19-oak, January',
    species: 'oak-northern-red',
    thicknessMm: 28,
    month: 1,
    air: outdoors('726410'),
    startPct: null,
    untilPct: 20,
    days: [150, 150],
    assumed: 'Madison, where the tests of the bulletin were made',
  },
  {
    id: 'a19-oak, June',
    species: 'oak-northern-red',
    thicknessMm: 28,
    month: 6,
    air: outdoors('726410'),
    startPct: null,
    untilPct: 20,
    days: [60, 60],
    assumed: 'as before',
  },
  {
    id: 'x01-redoak-equation',
    species: 'oak-northern-red',
    thicknessMm: 25.4,
    month: 1,
    air: steadyAir(20, 0.35),
    movement: 'fan',
    startPct: 15,
    untilPct: 8,
    days: [24, 24],
    assumed: '20 °C, 35 %; tau 12.1 days',
  },
  {
    id: 'b03-oak-garage',
    species: 'oak-northern-red',
    thicknessMm: 28,
    month: 4,
    air: unsureSteady(24, 0.4),
    movement: 'fan',
    startPct: 15,
    untilPct: 10,
    days: [14, 14],
    assumed: '24 °C, 40 %',
  },
  {
    id: 'b04-oak-polyroom',
    species: 'oak-northern-red',
    thicknessMm: 32,
    month: 4,
    air: unsureSteady(27, 0.3),
    movement: 'dehumidified',
    startPct: 15,
    untilPct: 7.5,
    days: [30, 35],
    assumed: '27 °C, 30 %; 15 % at first, of 12 to 20',
  },
  {
    id: 'b06-miceli, silver maple',
    species: 'maple-silver',
    thicknessMm: 28,
    month: 4,
    air: steadyAir(21, 0.4),
    movement: 'still-room',
    startPct: null,
    untilPct: 10,
    days: [90, 90],
    assumed: '21 °C, 40 %; 28 mm',
  },
  {
    id: 'b06-miceli, black cherry',
    species: 'cherry-black',
    thicknessMm: 28,
    month: 4,
    air: steadyAir(21, 0.4),
    movement: 'still-room',
    startPct: null,
    untilPct: 10,
    days: [90, 90],
    assumed: 'as before',
  },
  {
    id: 'b06-miceli, white oak',
    species: 'oak-white',
    thicknessMm: 28,
    month: 4,
    air: steadyAir(21, 0.4),
    movement: 'still-room',
    startPct: null,
    untilPct: 10,
    days: [90, 150],
    assumed: 'as before',
  },
  {
    id: 'c01-solar-oak, to 26',
    species: 'oak-northern-red',
    thicknessMm: 28,
    month: 5,
    air: unsureSteady(30, 0.5),
    movement: 'solar-kiln',
    startPct: 50,
    untilPct: 26,
    days: [20, 20],
    assumed: '30 °C, 50 % day and night at first',
  },
  {
    id: 'c01-solar-oak, 26 to 7',
    species: 'oak-northern-red',
    thicknessMm: 28,
    month: 5,
    air: unsureSteady(33, 0.3),
    movement: 'solar-kiln',
    startPct: 26,
    untilPct: 7,
    days: [39, 39],
    assumed: '33 °C, 30 % day and night later',
  },
  {
    id: 'c06-pine-samsel',
    species: 'pine-eastern-white',
    thicknessMm: 28,
    month: 4,
    air: unsureSteady(45, 0.3),
    movement: 'solar-kiln',
    startPct: 22.5,
    untilPct: 7,
    days: [7, 10],
    assumed: 'white pine; 45 °C, 30 %',
  },
  {
    id: 'c07-hardwood-samsel',
    species: 'maple-red',
    thicknessMm: 28,
    month: 4,
    air: unsureSteady(45, 0.3),
    movement: 'solar-kiln',
    startPct: 22.5,
    untilPct: 7,
    days: [7, 20],
    assumed: 'red maple; 45 °C, 30 %',
  },
  {
    id: 'e01-oak-84',
    species: 'oak-white',
    thicknessMm: 54,
    month: 7,
    air: unsureSteady(32, 0.5),
    movement: 'dehumidified',
    startPct: null,
    untilPct: 20,
    days: [90, 120],
    assumed: '32 °C, 50 %; average between the shell and the core read',
  },
];

const boardOf = ({ species, thicknessMm, month, air, movement, startPct }: DryingRecord): DryingBoard => {
  const atMs = Date.UTC(2021, month - 1, 1);
  const known = builtInSpecies.find(({ id }) => id === species);
  return {
    thicknessMm,
    dryingClass: known ? dryingClassOf(known) : null,
    basicSpecificGravity: typeof species === 'number' ? species : known!.basicSpecificGravity,
    start: { atMs, mcPct: startPct, logSd: startPct === null ? 0.3 : 0.1, shellRatio: 1 },
    stays: [{ fromMs: atMs, air, movement }],
  };
};

const day = (days: number): string => (Number.isFinite(days) ? days.toFixed(0) : '-').padStart(5);
console.log(`${'record'.padEnd(28)}  days    10 %   50 %   90 %  over  in`);
const results = RECORDS.map((record) => {
  const [early, likely, late] = forecastDays(boardOf(record), record.untilPct);
  const [least, most] = record.days;
  const isInside = early <= most && late >= least;
  const observed = Number.isFinite(most) ? Math.sqrt(Math.max(1, least) * most) : least;
  const isBound = least === 0 || !Number.isFinite(most);
  console.log(
    `${record.id.padEnd(28)}${day(least)}-${day(most).trimStart().padEnd(5)}${day(early)}  ${day(likely)}  ${day(late)} ` +
      `${isBound ? '     ' : (likely / observed).toFixed(2).padStart(5)}  ${isInside ? 'yes' : 'NO '}  ${record.assumed}`,
  );
  return { isInside, ratio: isBound ? null : Math.min(likely, MOST_DAYS) / observed };
});
const inside = results.filter(({ isInside }) => isInside).length;
// What does not come within the days looked at counts with all of them.
const ratios = results.flatMap(({ ratio }) => ratio ?? []);
console.log(
  `\n${inside} of ${results.length} records within 10 to 90 %. ` +
    `Predicted over observed: ${geometricMean(ratios).toFixed(2)} on average.`,
);
figure({
  what: 'dated records within the forecast 10 to 90 %',
  value: (100 * inside) / results.length,
  unit: '%',
  goal: { least: 70, most: 90 },
  missesBecause: 'the air of most records is assumed, and how unsure that is widens the band',
});

// The model has no sun, which heats a stick by day.
const [stacked, free] = [priorPace.surface.median, 1].map((surface) => dailySwing(6.5, surface));
console.log(
  `\nDaily swing of a thin stick on ${stacked!.days} dry days, model over observed (1 is right): ` +
    `${stacked!.ratio.toFixed(2)} with faces as in a stack, ${free!.ratio.toFixed(2)} with free ones.`,
);
