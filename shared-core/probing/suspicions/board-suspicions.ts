import { DAY_MS } from '../../time.ts';
import { mean } from '../../wood/maths/mean.ts';
import { median, robustSpread } from '../../wood/maths/robust.ts';
import { spotScatterPct } from '../../wood/moisture/spot-scatter.ts';
import { message, thicknessOf } from '../../words/message.ts';
import { depthRead } from '../readings/depth-read.ts';
import type { Estimate } from '../readings/estimate.ts';
import type { BoardEvidence } from '../readings/evidence.ts';
import { SPELL_SD_PCT } from '../readings/profile-posterior.ts';
import { type Depth, depthSchema, type Reading, type Suspicion } from '../readings/reading.ts';
import { isExtraSpot } from '../readings/spots.ts';
import { DIFFERENCE_SCORE } from './difference-score.ts';
import { BETWEEN_ROUNDS_PCT, type Expected, expectationNow } from './expectation.ts';
import { possibleRange } from './possible-change.ts';
import { shown } from './reading-suspicions.ts';

/** A reading that can be compared with the board's others; `index` is its place in the caller's list. */
export type ComparedReading = { index: number; reading: Reading; mcPct: number };

type Found = { index: number; suspicion: Suspicion };

/** Score above which one of three or more readings is an outlier (Iglewicz and Hoaglin 1993, from memory). */
export const OUTLIER_SCORE = 3.5;
/** So far beside an odd reading the wood is much the same but for a knot or a crack, mm. Common practice, no source. */
const BESIDE_MM = 100;
/** Standard deviations that a sound change since the last round does not pass. */
export const CHANGE_SCORE = 3.2;

/**
 * What a board's readings say against each other and against the last round, by the readings' index.
 */
export function boardSuspicions(
  readings: readonly ComparedReading[],
  evidence: BoardEvidence,
): Map<number, Suspicion[]> {
  const others = [...impossibleChanges(readings, evidence), ...wetFaces(readings, evidence)];
  const odd = depthSchema.options.flatMap((depth) => outliers(readings, depth, others));
  const found = [
    ...others,
    ...odd,
    ...sameSpots(readings, evidence.board.thicknessMm),
    ...equalValues(readings),
  ];
  const byIndex = new Map<number, Suspicion[]>();
  for (const { index, suspicion } of found) byIndex.set(index, [...(byIndex.get(index) ?? []), suspicion]);
  return byIndex;
}

const atDepth = (readings: readonly ComparedReading[], depth: Depth): ComparedReading[] =>
  readings.filter((each) => each.reading.spot.depth === depth);

const valuesOf = (readings: readonly ComparedReading[]): number[] => readings.map((each) => each.mcPct);

/** A reading at a spot that has one already: two of one spot tell little more than one. */
function sameSpots(readings: readonly ComparedReading[], thicknessMm: number): Found[] {
  const depthOf = ({ reading }: ComparedReading) => depthRead(reading, thicknessMm);
  return readings.flatMap((each, place): Found[] => {
    const { index, reading } = each;
    const { spotIndex } = reading;
    const isAgain =
      spotIndex !== null &&
      !isExtraSpot(spotIndex) &&
      readings
        .slice(0, place)
        .some((earlier) => earlier.reading.spotIndex === spotIndex && depthOf(earlier) === depthOf(each));
    if (!isAgain) return [];
    return [
      {
        index,
        suspicion: {
          rule: 'same-spot',
          severity: 'note',
          why: message('suspicion.same-spot'),
          whatToDo: message('suspicion.same-spot.do'),
        },
      },
    ];
  });
}

/** So many readings that are all the same to the last digit are less likely than a meter that holds its value. Common practice, no source. */
const FEWEST_EQUAL = 3;
/** Some meters show only steps of so many points: then it takes one reading more. */
const COARSE_STEP_PCT = 0.5;

function equalValues(readings: readonly ComparedReading[]): Found[] {
  const [first] = readings;
  if (first === undefined) return [];
  const { raw, unit } = first.reading;
  const isCoarse = unit === 'pct' && raw % COARSE_STEP_PCT === 0;
  if (readings.length < (isCoarse ? FEWEST_EQUAL + 1 : FEWEST_EQUAL)) return [];
  if (readings.some(({ reading }) => reading.raw !== raw || reading.unit !== unit)) return [];
  const suspicion: Suspicion = {
    rule: 'equal-values',
    severity: 'note',
    why: message('suspicion.equal-values', { readings: readings.length, reading: shown(first.reading) }),
    whatToDo: message('suspicion.equal-values.do'),
  };
  return readings.map(({ index }) => ({ index, suspicion }));
}

/**
 * Readings that disagree with the others of the same depth. Of two that disagree nobody can tell which is right, unless
 * something else speaks against one of them.
 */
function outliers(all: readonly ComparedReading[], depth: Depth, others: readonly Found[]): Found[] {
  const readings = atDepth(all, depth);
  if (readings.length < 2) return [];
  if (readings.length === 2) return disagreeingPair(readings, depth, others);
  const values = valuesOf(readings);
  const center = median(values);
  const spread = Math.max(robustSpread(values), spotScatterPct(center));
  return readings
    .filter((each) => Math.abs(each.mcPct - center) > OUTLIER_SCORE * spread)
    .map(({ index, mcPct }) => ({
      index,
      suspicion: {
        rule: 'outlier-on-board',
        severity: 'questionable',
        why: message('suspicion.outlier-on-board', { depth, mcPct, othersPct: center }),
        whatToDo: message(`suspicion.outlier-on-board.${mcPct < center ? 'low' : 'high'}.do`, {
          besideDistanceMm: BESIDE_MM,
        }),
      },
    }));
}

function disagreeingPair(readings: ComparedReading[], depth: Depth, others: readonly Found[]): Found[] {
  const values = valuesOf(readings);
  const apart = Math.abs(values[0]! - values[1]!);
  const allowed = DIFFERENCE_SCORE * Math.SQRT2 * spotScatterPct((values[0]! + values[1]!) / 2);
  if (apart <= allowed) return [];
  const accused = readings.filter(({ index }) => others.some((each) => each.index === index));
  return (accused.length === 1 ? accused : readings).map(({ index }) => ({
    index,
    suspicion: {
      rule: 'outlier-on-board',
      severity: 'questionable',
      why: message('suspicion.outlier-on-board.pair', {
        depth,
        onePct: values[0]!,
        otherPct: values[1]!,
        allowedPoints: allowed,
      }),
      whatToDo: message('suspicion.outlier-on-board.pair.do', { depth }),
    },
  }));
}

/** Rule of a whole shell that is wetter than its air makes it, over a core in balance with that air. */
export const RAINED_ON = 'rained-on';
/** Standard deviations that damp weeks do not pass. */
const DAMPEST_SDS = 3;

/** A wet face over drier wood. A board that takes up moisture from its air is allowed a damper shell. */
function wetFaces(readings: readonly ComparedReading[], { place }: BoardEvidence): Found[] {
  const shells = atDepth(readings, 'shell');
  const cores = atDepth(readings, 'core');
  if (shells.length === 0 || cores.length === 0) return [];
  const core = median(valuesOf(cores));
  const scatter = spotScatterPct(core);
  const above = (count: number) => DIFFERENCE_SCORE * scatter * Math.sqrt(1 / count + 1 / cores.length);
  const shell = median(valuesOf(shells));
  const drying = place.emcPct === null || core > place.emcPct + 2 * scatter;
  // No damp weeks make a shell as wet as rain does.
  const wet = place.emcPct !== null && shell > place.emcPct + DAMPEST_SDS * SPELL_SD_PCT[place.kind];
  if (!drying && !wet) return [];
  if (shell - core > above(shells.length))
    return shells
      .filter((each) => each.mcPct > core)
      .map(({ index }) => ({ index, suspicion: (drying ? shellAboveCore : rainedOn)(shell, core) }));
  return shells
    .filter((each) => each.mcPct - core > above(1))
    .map(({ index, mcPct }) => ({ index, suspicion: surfaceWet(mcPct, core) }));
}

function shellAboveCore(shellPct: number, corePct: number): Suspicion {
  return {
    rule: 'shell-above-core',
    severity: 'questionable',
    why: message('suspicion.shell-above-core', { shellPct, corePct }),
    whatToDo: message('suspicion.shell-above-core.do'),
  };
}

/** Its air has the core dry: what is on the faces is no moisture of the wood. */
function rainedOn(shellPct: number, corePct: number): Suspicion {
  return {
    rule: RAINED_ON,
    severity: 'questionable',
    why: message('suspicion.rained-on', { shellPct, corePct }),
    whatToDo: message('suspicion.rained-on.do'),
  };
}

function surfaceWet(shellPct: number, corePct: number): Suspicion {
  return {
    rule: 'surface-wet',
    severity: 'questionable',
    why: message('suspicion.surface-wet', { shellPct, corePct }),
    whatToDo: message('suspicion.surface-wet.do'),
  };
}

/**
 * Changes since the last round that moisture cannot have made in that time, in that air: past the bounds that hold
 * for any board, or, where it stayed in one known air, far from what the drying model expects of it.
 */
function impossibleChanges(readings: readonly ComparedReading[], evidence: BoardEvidence): Found[] {
  const { previous } = evidence;
  const last = readings.at(-1);
  if (previous === null || last === undefined) return [];
  const expectation = expectationNow(evidence, last.reading.takenAt);
  return depthSchema.options.flatMap((depth): Found[] => {
    const { pct: before, counted } = foundBefore(previous.estimate, depth);
    const now = atDepth(readings, depth);
    if (before === null || now.length === 0) return [];
    const change: Change = {
      depth,
      before,
      days: Math.max(0, (Date.parse(last.reading.takenAt) - Date.parse(previous.takenAt)) / DAY_MS),
      countedBefore: Math.max(1, counted),
      expected: expectation?.[depth] ?? null,
    };
    const ofMean = allowedNow(change, now.length, evidence);
    const center = mean(valuesOf(now));
    const isMeanOut = center < ofMean.lowPct || center > ofMean.highPct;
    const ofOne = allowedNow(change, 1, evidence);
    const out = now.filter(({ mcPct }) => {
      if (mcPct < ofOne.lowPct || mcPct > ofOne.highPct) return true;
      return isMeanOut && (center < ofMean.lowPct ? mcPct < ofMean.lowPct : mcPct > ofMean.highPct);
    });
    if (out.length === 0) return [];
    // All of a depth together, so that one suspicion is one sentence.
    const suspicion = jump(mean(valuesOf(out)), change, evidence);
    return out.map(({ index }) => ({ index, suspicion }));
  });
}

/** What the last round found at a depth, from so many readings; null for nothing. */
function foundBefore(
  { shellPct, corePct, averagePct, countedShell, countedAverage, countedCore }: Estimate,
  depth: Depth,
): { pct: number | null; counted: number } {
  if (depth === 'shell') return { pct: shellPct, counted: countedShell };
  if (depth === 'core') return { pct: corePct, counted: countedCore };
  // Shell and core tell the average as well, in pairs.
  const counted = countedAverage > 0 ? countedAverage : Math.min(countedShell, countedCore);
  return { pct: counted > 0 ? averagePct : null, counted };
}

type Change = {
  depth: Depth;
  before: number;
  days: number;
  countedBefore: number;
  expected: Expected | null;
};

/** Where the mean of so many sound readings may lie now, % MC. */
function allowedNow(
  { depth, before, days, countedBefore, expected }: Change,
  count: number,
  evidence: BoardEvidence,
): { lowPct: number; highPct: number } {
  const possible = possibleRange(depth, before, evidence.board.thicknessMm, days, evidence);
  const spots = spotScatterPct(before) * Math.sqrt(1 / count + 1 / countedBefore);
  const scatter = Math.hypot(spots, BETWEEN_ROUNDS_PCT);
  const lowest = possible.lowPct - CHANGE_SCORE * scatter;
  const highest = possible.highPct + CHANGE_SCORE * scatter;
  if (expected === null) return { lowPct: lowest, highPct: highest };
  return {
    lowPct: Math.max(lowest, expected.pct - CHANGE_SCORE * Math.hypot(expected.sdLowPct, scatter)),
    highPct: Math.min(highest, expected.pct + CHANGE_SCORE * Math.hypot(expected.sdHighPct, scatter)),
  };
}

function jump(
  mcPct: number,
  { depth, before, days, expected }: Change,
  { board, place }: BoardEvidence,
): Suspicion {
  const went = { depth, beforePct: before, mcPct, days: days < 1 ? 0 : Math.round(days) };
  return {
    rule: 'jump-since-last-round',
    severity: 'questionable',
    why:
      expected !== null
        ? message('suspicion.jump.expected', { ...went, placeName: place.name, expectedPct: expected.pct })
        : mcPct > before
          ? message('suspicion.jump.wetter', went)
          : message('suspicion.jump.drier', {
              ...went,
              boardThickness: thicknessOf(board),
            }),
    whatToDo: message('suspicion.jump.do'),
  };
}
