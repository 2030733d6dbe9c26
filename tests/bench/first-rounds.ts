/**
 * First rounds of sound boards, up to three years after sawing, in sheds and heated rooms: how many are questioned. The truth
 * is drawn from what the app says that it does not know: pace, start, the air within its stated doubt, and half of the boards
 * lay in another shed before they were entered.
 */
import { judgeBoard } from '../../shared-core/probing/calls/call.ts';
import type { Reading } from '../../shared-core/probing/readings/reading.ts';
import { plannedDepthMm } from '../../shared-core/probing/readings/spots.ts';
import { driestMet, priorNow, type SinceSawn } from '../../shared-core/probing/suspicions/first-round.ts';
import { DAY_S } from '../../shared-core/time.ts';
import { airFromOutdoors } from '../../shared-core/wood/climate/air-from-outdoors.ts';
import { emcOfYear } from '../../shared-core/wood/climate/climate.ts';
import { airSdPct, type MonthlyAir } from '../../shared-core/wood/climate/monthly-air.ts';
import { priorDiffusivity, priorPace } from '../../shared-core/wood/drying/history-fit.ts';
import { averageOf, dryingGrid } from '../../shared-core/wood/drying/model/drying-grid.ts';
import { woodDryingLaw } from '../../shared-core/wood/drying/model/drying-law.ts';
import { simulateDrying } from '../../shared-core/wood/drying/model/drying-model.ts';
import { LawTables } from '../../shared-core/wood/drying/model/law-tables.ts';
import { GREEN, mostWaterPct } from '../../shared-core/wood/moisture/most-water.ts';
import { spotScatterPct } from '../../shared-core/wood/moisture/spot-scatter.ts';
import { builtInSpecies } from '../../shared-core/wood/species/built-in.ts';
import { dryingClassOf } from '../../shared-core/wood/species/drying-class.ts';
import { averages, evidence, readings } from '../unit/probing/a-board.ts';
import type { Random } from './rounds-with-faults.ts';

const THICKNESSES_MM = [25, 32, 40, 54, 80] as const;
/** Up to here the pins tell the average. */
const THIN_MM = 30;
const STEP_DAYS = 15;
const LONGEST_DAYS = 1095;
/** How far half a month strays from its usual air, % MC of EMC. */
const SPELL_SD_PCT = { 'open-shed': 1, 'heated-room': 0.5 } as const;
/** A hand-held meter in the field, % MC. */
const METER_SD_PCT = 0.85;
const MODEL_TOP_PCT = 58;
const CELLS = 10;
const woods = builtInSpecies.filter(({ basicSpecificGravity }) => basicSpecificGravity !== null);

type Kind = keyof typeof SPELL_SD_PCT;

/** The middle of the United States, about. */
const outdoors = (random: Random): MonthlyAir => {
  const [meanC, rh] = [12 + 4 * random.normal(), 0.68 + 0.04 * random.normal()];
  return Array.from({ length: 12 }, (_, month) => ({
    tempC: meanC - 12 * Math.cos((2 * Math.PI * month) / 12),
    rh: rh + 0.05 * Math.cos((2 * Math.PI * month) / 12),
  }));
};

/**
 * Whether a sound board is questioned by what it can be.
 *
 * @param read  what its spots read instead of the truth, % MC; null for the truth
 */
export function isQuestioned(random: Random, read: { pct: number; days: number } | null): boolean {
  const kind: Kind = read !== null || random.uniform() < 0.5 ? 'open-shed' : 'heated-room';
  const out = outdoors(random);
  const shed = airFromOutdoors('open-shed', out);
  const own = kind === 'open-shed' ? shed : airFromOutdoors('heated', out);
  const days = read?.days ?? Math.floor(random.uniform() * LONGEST_DAYS);
  const enteredOn = random.uniform() < 0.5 ? 0 : random.uniform() * days;
  const first = Math.floor(random.uniform() * 365);
  const wood = woods[Math.floor(random.uniform() * woods.length)]!;
  const thicknessMm = read === null ? pick(random, THICKNESSES_MM) : 54;

  const ownOffPct = random.normal() * airSdPct(own);
  const shedOffPct = random.normal() * airSdPct(shed);
  const assumed: SinceSawn['airs'][number][] = [];
  const met: { durationS: number; emcStartPct: number; emcEndPct: number; tempC: number }[] = [];
  for (let day = 0; day < Math.max(1, days); day += STEP_DAYS) {
    const stepDays = Math.min(STEP_DAYS, Math.max(1, days - day));
    const month = Math.floor(((first + day) % 365) / 30.5);
    const isKnown = day + STEP_DAYS > enteredOn;
    const at = (air: MonthlyAir) => ({
      emcPct: emcOfYear(air).monthlyEmcPct[month]!,
      tempC: air[month]!.tempC,
    });
    assumed.push({ days: stepDays, ...at(own), sdPct: airSdPct(own), isKnown });
    const { emcPct, tempC } = at(isKnown ? own : shed);
    const spell = random.normal() * SPELL_SD_PCT[isKnown ? kind : 'open-shed'];
    const trueEmc = Math.max(3, emcPct + (isKnown ? ownOffPct : shedOffPct) + spell);
    met.push({ durationS: stepDays * DAY_S, emcStartPct: trueEmc, emcEndPct: trueEmc, tempC });
  }

  const dryingClass = dryingClassOf(wood);
  const truth = truthOf(random, thicknessMm, wood.basicSpecificGravity!, priorDiffusivity(dryingClass), met);
  const meterOff = METER_SD_PCT * random.normal();
  const readAt = (pct: number): number => {
    const sound = read?.pct ?? pct;
    return Math.max(1, sound + meterOff + spotScatterPct(sound) * random.normal());
  };
  const twice = (pct: number) => [readAt(pct), readAt(pct)];
  const of: Reading[] =
    thicknessMm <= THIN_MM
      ? averages([...twice(truth.average), readAt(truth.average)])
      : readings(twice(truth.shell), random.uniform() < 0.5 ? twice(truth.core) : []);
  const { readings: judged } = judgeBoard(
    evidence(of, {
      board: { thicknessMm, lengthMm: 3000 },
      place: { name: 'the place', kind, emcPct: assumed.at(-1)!.emcPct, month: 5 },
      typedBasis: { ...evidence([]).typedBasis, meterSdPct: METER_SD_PCT },
      prior: priorNow(
        thicknessMm,
        { basicSpecificGravity: wood.basicSpecificGravity, dryingClass },
        { days, airs: assumed },
      ),
      driestAir: driestMet(thicknessMm, wood, assumed),
    }),
  );
  return judged.some(({ suspicions }) =>
    suspicions.some(({ rule }) => ['dry-too-soon', 'wet-too-long', 'drier-than-its-air'].includes(rule)),
  );
}

const pick = <T>(random: Random, from: readonly T[]): T => from[Math.floor(random.uniform() * from.length)]!;

function truthOf(
  random: Random,
  thicknessMm: number,
  gravity: number,
  diffusivity: { median: number; logSd: number },
  segments: Parameters<typeof simulateDrying>[0]['segments'],
): { shell: number; average: number; core: number } {
  const grid = dryingGrid(thicknessMm, true, CELLS);
  const { surface, exponent } = priorPace;
  const drawn = Math.min(1.2, Math.max(0, exponent.mean + exponent.sd * random.normal()));
  const face = surface.median * Math.exp(surface.logSd * random.normal());
  const startPct = Math.min(
    MODEL_TOP_PCT,
    GREEN.share * mostWaterPct(gravity) * Math.exp(GREEN.logSd * random.normal()),
  );
  const { finalPct, depthPct } = simulateDrying({
    grid,
    tables: new LawTables(woodDryingLaw(gravity, drawn)),
    startPct: new Float64Array(CELLS).fill(startPct),
    segments,
    diffusivityFactor: diffusivity.median * Math.exp(diffusivity.logSd * random.normal()),
    faceFactors: [face, face],
    tolerancePct: 0.2,
    observeS: [segments.reduce((sum, { durationS }) => sum + durationS, 0)],
    depthFractions: [plannedDepthMm('shell', thicknessMm) / thicknessMm, 0.5],
  });
  return { shell: depthPct[0]![0]!, average: averageOf(grid, finalPct), core: depthPct[1]![0]! };
}
