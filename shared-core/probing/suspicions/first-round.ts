import { DAY_S } from '../../time.ts';
import {
  type AirSegment,
  averageOf,
  dryingGrid,
  LawTables,
  simulateDrying,
  woodDryingLaw,
} from '../../wood/drying/drying-model.ts';
import { priorDiffusivity, priorPace } from '../../wood/drying/history-fit.ts';
import { Z_90 } from '../../wood/maths/gaussian.ts';
import { mean } from '../../wood/maths/mean.ts';
import { GREEN, mostWaterPct } from '../../wood/moisture/most-water.ts';
import { message } from '../../words/message.ts';
import type { BoardEvidence } from '../readings/evidence.ts';
import { DOUBT_SDS, type ExpectedAboveAir, type PriorNow } from '../readings/prior-now.ts';
import type { Suspicion } from '../readings/reading.ts';
import type { ComparedReading } from './board-suspicions.ts';

/** Where a board was since it was sawn. */
export interface SinceSawn {
  /** Days from the sawing to the first round, 0 or more. */
  days: number;
  /** The air that it met, in order, of as many days together. */
  airs: readonly { days: number; emcPct: number; tempC: number }[];
}

/** The model's tables end here, % MC. */
const MODEL_TOP_PCT = 58;
/** The air of a place strays so far from its months, % MC of EMC. Common practice, no source. */
const AIR_SD_PCT = 1;
const CELLS = 10;
/** A board that was sawn longer ago has been in balance with its air, days. */
const LONGEST_DAYS = 1100;

/**
 * What a board should have now by the drying model, from when it was sawn and the air since, before any reading of it: at
 * the middle pace of all wood, at one that is two standard deviations faster in diffusion and surface together, and from a
 * drier start. Runs the model three times; not for the path on which a reading is saved.
 *
 * @returns null where nothing can be said: no air, no specific gravity, or sawn over three years ago
 */
export function priorNow(
  thicknessMm: number,
  basicSpecificGravity: number | null,
  { days, airs }: SinceSawn,
): PriorNow | null {
  if (basicSpecificGravity === null || airs.length === 0 || days > LONGEST_DAYS) return null;
  const grid = dryingGrid(thicknessMm, true, CELLS);
  const tables = new LawTables(woodDryingLaw(basicSpecificGravity));
  const greenPct = GREEN.share * mostWaterPct(basicSpecificGravity);
  const segments = airs.map(
    (air): AirSegment => ({
      durationS: Math.max(1, air.days * DAY_S),
      emcStartPct: air.emcPct,
      emcEndPct: air.emcPct,
      tempC: air.tempC,
    }),
  );
  const endS = segments.reduce((sum, { durationS }) => sum + durationS, 0);
  const run = (sds: number, startPct: number) => {
    const { surface } = priorPace;
    const diffusivity = priorDiffusivity(null);
    const face = surface.median * Math.exp(sds * surface.logSd);
    const { finalPct, depthPct } = simulateDrying({
      grid,
      tables,
      startPct: new Float64Array(CELLS).fill(Math.min(MODEL_TOP_PCT, startPct)),
      segments,
      diffusivityFactor: diffusivity.median * Math.exp(sds * diffusivity.logSd),
      faceFactors: [face, face],
      tolerancePct: 0.2,
      observeS: [endS],
      depthFractions: [0.5],
    });
    return { averagePct: averageOf(grid, finalPct), corePct: depthPct[0]![0]! };
  };
  const middle = run(0, greenPct);
  const fast = run(2, greenPct);
  const drier = run(0, greenPct * Math.exp(-2 * GREEN.logSd));
  const emcPct = airs.at(-1)!.emcPct;
  const expected = (of: (at: typeof middle) => number): ExpectedAboveAir => {
    const [log, fastLog, drierLog] = [middle, fast, drier].map((at) => logAbove(of(at), emcPct)) as Three;
    return { pct: of(middle), logSd: Math.hypot((log - fastLog) / 2, (log - drierLog) / 2) };
  };
  return {
    average: expected(({ averagePct }) => averagePct),
    core: expected(({ corePct }) => corePct),
    emcPct,
  };
}
type Three = [number, number, number];

/** Nearer to its air than this a board is at its EMC, % MC. */
const NEAREST_PCT = 0.5;
const logAbove = (pct: number, emcPct: number): number => Math.log(Math.max(NEAREST_PCT, pct - emcPct));

/**
 * What speaks against a round as a whole before any other was believed: drier than the board can have become since it was
 * sawn, or drier than any air that it met. Null where nothing does.
 */
export function firstRoundSuspicion(
  readings: readonly (ComparedReading & { standardUncertaintyPct: number })[],
  { prior = null, driestAir = null }: Pick<BoardEvidence, 'prior' | 'driestAir'>,
): Suspicion | null {
  if (readings.length === 0) return null;
  const meterSdPct = mean(readings.map(({ standardUncertaintyPct }) => standardUncertaintyPct));
  const readPct = mean(readings.map(({ mcPct }) => mcPct));
  // The meter and the air give the reading the benefit of their doubt.
  const doubtPct = Math.hypot(meterSdPct, AIR_SD_PCT);
  if (driestAir !== null && driestAir.emcPct - readPct > DOUBT_SDS * Math.hypot(doubtPct, driestAir.sdPct))
    return {
      rule: 'drier-than-its-air',
      severity: 'questionable',
      why: message('suspicion.drier-than-its-air', { readPct, lowestEmcPct: driestAir.emcPct }),
      whatToDo: message('suspicion.drier-than-its-air.do'),
    };
  return prior === null ? null : dryTooSoon(readings, readPct, doubtPct, prior);
}

function dryTooSoon(
  readings: readonly ComparedReading[],
  readPct: number,
  doubtPct: number,
  prior: PriorNow,
): Suspicion | null {
  const { emcPct } = prior;
  const core = readings.filter(({ reading }) => reading.spot.depth === 'core').map(({ mcPct }) => mcPct);
  const isTooDry = ({ pct, logSd }: ExpectedAboveAir, read: number): boolean =>
    logAbove(pct, emcPct) - logAbove(read + doubtPct, emcPct) > DOUBT_SDS * logSd;
  if (!isTooDry(prior.average, readPct) && !(core.length > 0 && isTooDry(prior.core, mean(core))))
    return null;
  const { pct, logSd } = prior.average;
  const likelyAt = (sds: number): number =>
    emcPct + Math.max(NEAREST_PCT, pct - emcPct) * Math.exp(sds * logSd);
  return {
    rule: 'dry-too-soon',
    severity: 'questionable',
    why: message('suspicion.dry-too-soon', {
      readPct,
      expectedInterval: { minPct: likelyAt(-Z_90), maxPct: likelyAt(Z_90) },
    }),
    whatToDo: message('suspicion.dry-too-soon.do'),
  };
}
