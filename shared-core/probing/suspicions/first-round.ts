import { DAY_S } from '../../time.ts';
import { responseDays } from '../../wood/drying/coming-weather.ts';
import { averageGravity, priorDiffusivity, priorPace, usualTables } from '../../wood/drying/history-fit.ts';
import { averageOf, dryingGrid } from '../../wood/drying/model/drying-grid.ts';
import { simulateDrying } from '../../wood/drying/model/drying-model.ts';
import type { AirSegment } from '../../wood/drying/model/drying-run.ts';
import { Z_90 } from '../../wood/maths/gaussian.ts';
import { mean } from '../../wood/maths/mean.ts';
import { GREEN, mostWaterPct } from '../../wood/moisture/most-water.ts';
import { spotScatterPct } from '../../wood/moisture/spot-scatter.ts';
import type { DryingClass } from '../../wood/species/drying-class.ts';
import { message } from '../../words/message.ts';
import type { BoardEvidence } from '../readings/evidence.ts';
import { DOUBT_SDS, type DriestAir, type ExpectedAboveAir, type PriorNow } from '../readings/prior-now.ts';
import { type Depth, depthSchema, type Suspicion } from '../readings/reading.ts';
import { plannedDepthMm } from '../readings/spots.ts';
import type { ComparedReading } from './board-suspicions.ts';

/** Where a board was since it was sawn. */
export interface SinceSawn {
  /** Days from the sawing to the first round, 0 or more. */
  days: number;
  /** The air that it met, in order, of as many days together. */
  airs: readonly AirMet[];
}
interface AirMet {
  days: number;
  emcPct: number;
  tempC: number;
  /** How far the true EMC may be off, one standard deviation, % MC. */
  sdPct: number;
  /** Whether the board is known to have been there then: before its first place was entered, it may have been elsewhere. */
  isKnown: boolean;
}

/** The model's tables end here, % MC. */
const MODEL_TOP_PCT = 58;
/** The air of a place strays so far from its months, % MC of EMC. Common practice, no source. */
const AIR_SD_PCT = 1;
/** Where nobody knows where it was, its air may have been so much drier, % MC of EMC, or warm as a room, °C. Common practice, no source. */
const ELSEWHERE = { sdPct: 3, tempC: 20 } as const;
/** Or as damp and cool as outdoors in winter, % MC of EMC and °C. Common practice, no source. */
const OUT = { emcPct: 20, tempC: 5 } as const;
/** No air that wood is kept in is drier, % MC of EMC. Common practice, no source. */
const DRIEST_PCT = 3;
/** At the boards of a place it may be damper than by its months: over wet ground, in a closed stack, % MC of EMC, one standard deviation. Common practice, no source. */
const DAMPER_SD_PCT = 3;
const CELLS = 10;
/** Of a board that was sawn longer ago, the model runs through the last so many days: it is no wetter than that leaves it. */
const LONGEST_DAYS = 1100;

/**
 * What a board should have now by the drying model, from when it was sawn and the air since, before any reading of it: at
 * the middle pace of its class, at one that is two standard deviations faster in diffusion and surface together, from a
 * drier start, and in drier or damper air. Runs the model up to six times; not for the path on which a reading is saved.
 *
 * @returns null where nothing can be said: no air, or no specific gravity
 */
export function priorNow(
  thicknessMm: number,
  { basicSpecificGravity, dryingClass }: Wood,
  { days, airs: sinceSawing }: SinceSawn,
): PriorNow | null {
  if (basicSpecificGravity === null || sinceSawing.length === 0) return null;
  const airs = lastOf(sinceSawing, LONGEST_DAYS);
  const grid = dryingGrid(thicknessMm, true, CELLS);
  const tables = usualTables(basicSpecificGravity);
  const greenPct = GREEN.share * mostWaterPct(basicSpecificGravity);
  const diffusivity = priorDiffusivity(dryingClass);
  const shellShare = plannedDepthMm('shell', thicknessMm) / thicknessMm;
  const run = (sds: number, startPct: number, met: readonly AirMet[]): Record<Depth, number> => {
    const { surface } = priorPace;
    const face = surface.median * Math.exp(sds * surface.logSd);
    const segments = met.map(segmentOf);
    const { finalPct, depthPct } = simulateDrying({
      grid,
      tables,
      startPct: new Float64Array(CELLS).fill(Math.min(MODEL_TOP_PCT, startPct)),
      segments,
      diffusivityFactor: diffusivity.median * Math.exp(sds * diffusivity.logSd),
      faceFactors: [face, face],
      tolerancePct: 0.2,
      observeS: [segments.reduce((sum, { durationS }) => sum + durationS, 0)],
      depthFractions: [shellShare, 0.5],
    });
    const [shell, core] = depthPct.map((ofDepth) => ofDepth[0]!) as [number, number];
    return { shell, average: averageOf(grid, finalPct), core };
  };
  const middle = run(0, greenPct, airs);
  const fast = run(2, greenPct, airs);
  const drier = run(0, greenPct * Math.exp(-2 * GREEN.logSd), airs);
  const inDrierAir = run(
    0,
    greenPct,
    airs.map((air) => (air.isKnown ? drierBy(air.sdPct, air) : air)),
  );
  const before = (as: (air: AirMet) => AirMet) =>
    airs.every(({ isKnown }) => isKnown)
      ? middle
      : run(
          0,
          greenPct,
          airs.map((air) => (air.isKnown ? air : as(air))),
        );
  const [elsewhere, outdoors] = [before(inRoom), before(outInWinter)];
  const emcPct = airs.at(-1)!.emcPct;
  const expected = (depth: Depth): ExpectedAboveAir => {
    const [log, fastLog, drierLog] = [middle, fast, drier].map((at) => logAbove(at[depth], emcPct)) as Three;
    const byAirPct = middle[depth] - inDrierAir[depth];
    const sdPct = (other: Record<Depth, number>) => Math.hypot(byAirPct, (middle[depth] - other[depth]) / 2);
    return {
      pct: middle[depth],
      logSd: Math.hypot((log - fastLog) / 2, (log - drierLog) / 2),
      airSdPct: sdPct(elsewhere),
      damperSdPct: Math.hypot(DAMPER_SD_PCT, sdPct(outdoors)),
    };
  };
  const startPct = Math.min(MODEL_TOP_PCT, greenPct);
  return {
    shell: expected('shell'),
    average: expected('average'),
    core: expected('core'),
    emcPct,
    isAtMost: days > LONGEST_DAYS,
    unmodeledLog: logAbove(greenPct * Math.exp(GREEN.logSd), emcPct) - logAbove(startPct, emcPct),
  };
}
type Wood = { basicSpecificGravity: number | null; dryingClass: DryingClass | null };

/** The driest air that a board met, and what it has made of a board so thick by now. Null without any. */
export function driestMet(
  thicknessMm: number,
  { basicSpecificGravity }: Pick<Wood, 'basicSpecificGravity'>,
  airs: SinceSawn['airs'],
): DriestAir | null {
  const [lowest] = airs.toSorted((a, b) => a.emcPct - b.emcPct);
  if (lowest === undefined) return null;
  const boardDays = responseDays(thicknessMm, basicSpecificGravity ?? averageGravity, 1);
  const followedPct = airs.reduce(
    (pct, { days, emcPct }) => emcPct + (pct - emcPct) * Math.exp(-days / boardDays),
    airs[0]!.emcPct,
  );
  return { emcPct: lowest.emcPct, sdPct: lowest.sdPct, followedPct };
}

/** The newest of them, of so many days together. */
function lastOf(airs: readonly AirMet[], days: number): readonly AirMet[] {
  let left = days;
  return airs
    .toReversed()
    .flatMap((air) => {
      const most = Math.min(air.days, left);
      left -= most;
      return most > 0 || airs.length === 1 ? [{ ...air, days: most }] : [];
    })
    .toReversed();
}

const segmentOf = ({ days, emcPct, tempC }: AirMet): AirSegment => ({
  durationS: Math.max(1, days * DAY_S),
  emcStartPct: emcPct,
  emcEndPct: emcPct,
  tempC,
});

const drierBy = (points: number, air: AirMet): AirMet => ({
  ...air,
  emcPct: Math.max(DRIEST_PCT, air.emcPct - points),
});

/** Two standard deviations drier, as in a heated room. */
const inRoom = (air: AirMet): AirMet => ({
  ...drierBy(2 * ELSEWHERE.sdPct, air),
  tempC: Math.max(ELSEWHERE.tempC, air.tempC),
});

/** Two standard deviations damper. */
const outInWinter = (air: AirMet): AirMet => ({
  ...air,
  emcPct: Math.max(OUT.emcPct, air.emcPct),
  tempC: Math.min(OUT.tempC, air.tempC),
});

type Three = [number, number, number];

/** Nearer to its air than this a board is at its EMC, % MC. */
const NEAREST_PCT = 0.5;
/** Below this no layer has free water, % MC. Common practice, no source. */
const FREE_WATER_PCT = 28;
/** So far above its air a board is still drying, % MC. Common practice, no source. */
const STILL_DRYING_PCT = 2;
const PACE_STEPS = 46;
const logAbove = (pct: number, emcPct: number): number => Math.log(Math.max(NEAREST_PCT, pct - emcPct));

type Compared = ComparedReading & { standardUncertaintyPct: number };

/**
 * What speaks against a round as a whole before any other was believed: drier than the board can have become since it was
 * sawn, or wetter than it can still be, or drier than any air that it met. Null where nothing does.
 */
export function firstRoundSuspicion(
  readings: readonly Compared[],
  { prior = null, driestAir = null, place }: Pick<BoardEvidence, 'prior' | 'driestAir' | 'place'>,
): Suspicion | null {
  if (readings.length === 0) return null;
  const readPct = meanOf(readings);
  if (driestAir !== null && isBelowAir(readings, driestAir))
    return {
      rule: 'drier-than-its-air',
      severity: 'questionable',
      why: message('suspicion.drier-than-its-air', { readPct, lowestEmcPct: driestAir.emcPct }),
      whatToDo: message('suspicion.drier-than-its-air.do'),
    };
  return prior === null ? null : (dryTooSoon(readings, prior) ?? wetTooLong(readings, prior, place));
}

/** Below all air that it met, and beyond doubt below what that air has made of it by now. */
function isBelowAir(
  readings: readonly Compared[],
  { emcPct, sdPct, followedPct = emcPct }: DriestAir,
): boolean {
  const readPct = meanOf(readings);
  return readPct < emcPct && followedPct - readPct > DOUBT_SDS * Math.hypot(doubtOf(readings), sdPct);
}

const meanOf = (readings: readonly Compared[]): number => mean(readings.map(({ mcPct }) => mcPct));

/** How far the mean of sound readings strays by the meter, the spots, and the air of some weeks, % MC. */
const doubtOf = (readings: readonly Compared[]): number =>
  Math.hypot(
    mean(readings.map(({ standardUncertaintyPct }) => standardUncertaintyPct)),
    spotScatterPct(meanOf(readings)) / Math.sqrt(readings.length),
    AIR_SD_PCT,
  );

/** The depth whose readings are furthest on one side of what it should be, and by how many standard deviations. */
function furthest(readings: readonly Compared[], prior: PriorNow, side: Side) {
  const [most] = depthSchema.options
    .map((depth) => ({ depth, of: readings.filter(({ reading }) => reading.spot.depth === depth) }))
    .filter(({ of }) => of.length > 0)
    .map(({ depth, of }) => {
      const expected = side === 'drier' ? prior[depth] : wetSideOf(prior[depth]);
      return { depth, of, sds: sdsOff(of, expected, prior, side) };
    })
    .toSorted((a, b) => b.sds - a.sds);
  return most !== undefined && most.sds > DOUBT_SDS ? most : null;
}

function dryTooSoon(readings: readonly Compared[], prior: PriorNow): Suspicion | null {
  const most = prior.isAtMost ? null : furthest(readings, prior, 'drier');
  if (most === null) return null;
  const { depth, of } = most;
  const isSoon = prior.average.pct - prior.emcPct > STILL_DRYING_PCT;
  const facts = { depth, readPct: meanOf(of), expectedInterval: likelyRange(prior[depth], prior.emcPct) };
  return {
    rule: 'dry-too-soon',
    severity: 'questionable',
    why: isSoon ? message('suspicion.dry-too-soon', facts) : message('suspicion.dry-too-soon.later', facts),
    whatToDo: message(
      depth === 'shell'
        ? 'suspicion.dry-too-soon.shell.do'
        : isSoon && !readings.some(isCoreRead)
          ? 'suspicion.dry-too-soon.pins.do'
          : 'suspicion.dry-too-soon.do',
    ),
  };
}

function wetTooLong(
  readings: readonly Compared[],
  prior: PriorNow,
  { kind }: BoardEvidence['place'],
): Suspicion | null {
  if (prior.mayBeWetter) return null;
  // While free water is left, how much there was at first matters, which nobody knows.
  const isTold = ({ reading: { spot } }: Compared): boolean => prior[spot.depth].pct < FREE_WATER_PCT;
  const most = furthest(readings.filter(isTold), prior, 'wetter');
  if (most === null) return null;
  const { depth, of } = most;
  const { maxPct } = likelyRange(wetSideOf(prior[depth]), prior.emcPct, prior.unmodeledLog);
  return {
    rule: 'wet-too-long',
    severity: 'questionable',
    why: message('suspicion.wet-too-long', { depth, readPct: meanOf(of), mostPct: maxPct }),
    whatToDo:
      kind === 'outdoors' || kind === 'open-shed'
        ? message('suspicion.wet-too-long.rain.do')
        : message('suspicion.wet-too-long.do'),
  };
}

/** On a cut, or with pins that are known to have been deep enough. */
const isCoreRead = ({ reading: { spot, depthFrom } }: ComparedReading): boolean =>
  spot.depth === 'core' && (depthFrom !== 'plan' || spot.face !== 'face');

type Side = 'drier' | 'wetter';

const wetSideOf = (expected: ExpectedAboveAir): ExpectedAboveAir => ({
  ...expected,
  airSdPct: expected.damperSdPct ?? expected.airSdPct,
});

/**
 * How unlikely readings so far to one side are, in standard deviations: the least of pace and start on the one hand, meter and
 * air on the other, that explain them together (the nearest point of first-order reliability: A. M. Hasofer and N. C. Lind,
 * Journal of the Engineering Mechanics Division 100, 1974; from memory).
 */
function sdsOff(
  readings: readonly Compared[],
  expected: ExpectedAboveAir,
  { emcPct, unmodeledLog = 0 }: PriorNow,
  side: Side,
): number {
  const offPct = Math.abs(expected.pct - meanOf(readings));
  if (meanOf(readings) < expected.pct !== (side === 'drier')) return 0;
  const doubtPct = Math.hypot(doubtOf(readings), expected.airSdPct);
  const explainedBy = (sds: number): number =>
    side === 'drier' ? fallAt(sds, expected, emcPct) : -fallAt(-sds, expected, emcPct, unmodeledLog);
  const ofPace = Array.from({ length: PACE_STEPS + 1 }, (_, step) => (step * 2 * DOUBT_SDS) / PACE_STEPS);
  return Math.min(...ofPace.map((sds) => Math.hypot(sds, Math.max(0, offPct - explainedBy(sds)) / doubtPct)));
}

/** How much drier it is where pace and start are so many standard deviations on that side, % MC. */
const fallAt = (sds: number, { pct, logSd }: ExpectedAboveAir, emcPct: number, unmodeledLog = 0): number =>
  Math.max(NEAREST_PCT, pct - emcPct) * (1 - Math.exp(-sds * logSd + unmodeledLog));

/** Nine in ten sound boards are in it. */
function likelyRange(
  expected: ExpectedAboveAir,
  emcPct: number,
  unmodeledLog = 0,
): { minPct: number; maxPct: number } {
  const byAirPct = Z_90 * Math.hypot(AIR_SD_PCT, expected.airSdPct);
  return {
    minPct: Math.max(0, expected.pct - Math.hypot(fallAt(Z_90, expected, emcPct), byAirPct)),
    maxPct: expected.pct + Math.hypot(fallAt(-Z_90, expected, emcPct, unmodeledLog), byAirPct),
  };
}
