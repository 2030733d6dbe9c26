import type { BoardEvidence } from './evidence.ts';
import { possibleRange } from './possible-change.ts';
import type { Depth, Reading, Suspicion } from './reading.ts';
import { median, robustSpread } from './robust.ts';
import { spotScatterPct } from './spot-scatter.ts';
import { counted, pct } from './wording.ts';

/** A reading that can be held against the board's others; `index` is its place in the caller's list. */
export type ComparedReading = { index: number; reading: Reading; mcPct: number };

type Found = { index: number; suspicion: Suspicion };

/** Score above which one of three or more readings is an outlier (Iglewicz and Hoaglin 1993, from memory). */
const OUTLIER_SCORE = 3.5;
/** Standard deviations of a difference that sound readings do not pass: 3 in 1000 would. */
const DIFFERENCE_SCORE = 3;

/**
 * What a board's readings say against each other and against the last round, by the readings' index.
 */
export function boardSuspicions(
  readings: readonly ComparedReading[],
  evidence: BoardEvidence,
): Map<number, Suspicion[]> {
  const found = [
    ...impossibleChanges(readings, evidence),
    ...wetFaces(readings, evidence),
    ...outliers(readings, 'shell'),
    ...outliers(readings, 'core'),
  ];
  const byIndex = new Map<number, Suspicion[]>();
  for (const { index, suspicion } of found) byIndex.set(index, [...(byIndex.get(index) ?? []), suspicion]);
  return byIndex;
}

const atDepth = (readings: readonly ComparedReading[], depth: Depth): ComparedReading[] =>
  readings.filter((each) => each.reading.spot.depth === depth);

const valuesOf = (readings: readonly ComparedReading[]): number[] => readings.map((each) => each.mcPct);

/** Readings that disagree with the others of the same depth; of two that disagree, nobody can tell which is right. */
function outliers(all: readonly ComparedReading[], depth: Depth): Found[] {
  const readings = atDepth(all, depth);
  if (readings.length < 2) return [];
  if (readings.length === 2) return disagreeingPair(readings, depth);
  const values = valuesOf(readings);
  const centre = median(values);
  const spread = Math.max(robustSpread(values), spotScatterPct(centre));
  return readings
    .filter((each) => Math.abs(each.mcPct - centre) > OUTLIER_SCORE * spread)
    .map(({ index, mcPct }) => ({
      index,
      suspicion: {
        rule: 'outlier-on-board',
        weight: 'doubt',
        why: `${pct(mcPct)} stands apart from the board's other ${depth} readings, which lie about ${pct(centre)}.`,
        whatToDo:
          mcPct < centre
            ? 'Were the pins fully in, and clear of a knot or a crack? Probe a hand’s breadth beside it.'
            : 'Look for a knot, pitch, bark or a wet patch at the pins, and probe a hand’s breadth beside it.',
      },
    }));
}

function disagreeingPair(readings: ComparedReading[], depth: Depth): Found[] {
  const values = valuesOf(readings);
  const apart = Math.abs(values[0]! - values[1]!);
  const allowed = DIFFERENCE_SCORE * Math.SQRT2 * spotScatterPct((values[0]! + values[1]!) / 2);
  if (apart <= allowed) return [];
  return readings.map(({ index }) => ({
    index,
    suspicion: {
      rule: 'outlier-on-board',
      weight: 'doubt',
      why: `The board's two ${depth} readings, ${pct(values[0]!)} and ${pct(values[1]!)}, are further apart than the ${pct(allowed)} that spots of one board differ by.`,
      whatToDo: `Take one or two more ${depth} readings elsewhere on the board: they will show which of the two is out.`,
    },
  }));
}

/** A wet face over drier wood. A board that takes up moisture from its air is allowed a damper shell. */
function wetFaces(readings: readonly ComparedReading[], { place }: BoardEvidence): Found[] {
  const shells = atDepth(readings, 'shell');
  const cores = atDepth(readings, 'core');
  if (shells.length === 0 || cores.length === 0) return [];
  const core = median(valuesOf(cores));
  const scatter = spotScatterPct(core);
  const drying = place.emcPct === null || core > place.emcPct + 2 * scatter;
  if (!drying) return [];
  const above = (count: number) => DIFFERENCE_SCORE * scatter * Math.sqrt(1 / count + 1 / cores.length);
  const shell = median(valuesOf(shells));
  if (shell - core > above(shells.length))
    return shells
      .filter((each) => each.mcPct > core)
      .map(({ index }) => ({ index, suspicion: shellAboveCore(shell, core) }));
  return shells
    .filter((each) => each.mcPct - core > above(1))
    .map(({ index, mcPct }) => ({ index, suspicion: surfaceWet(mcPct, core) }));
}

function shellAboveCore(shell: number, core: number): Suspicion {
  return {
    rule: 'shell-above-core',
    weight: 'doubt',
    why: `The shell reads ${pct(shell)} and the core ${pct(core)}, but a drying board is wetter inside.`,
    whatToDo:
      'Rain, dew or fog on the faces does that, and so do core pins that are not in far enough. Let the faces dry for a day or plane a spot clean, drive the core pins to mid-thickness, and probe again.',
  };
}

function surfaceWet(shell: number, core: number): Suspicion {
  return {
    rule: 'surface-wet',
    weight: 'doubt',
    why: `The shell reads ${pct(shell)} here, over a core of ${pct(core)}: this part of the face looks wet.`,
    whatToDo: 'Wipe it and let it dry, or plane the spot clean, and probe again.',
  };
}

/** Changes since the last round that moisture cannot have made in that time, in that air. */
function impossibleChanges(readings: readonly ComparedReading[], evidence: BoardEvidence): Found[] {
  const { previous, board, place } = evidence;
  if (previous === null) return [];
  const { estimate, takenAt } = previous;
  return readings.flatMap(({ index, reading, mcPct }): Found[] => {
    const { depth } = reading.spot;
    const before = depth === 'shell' ? estimate.shellPct : estimate.corePct;
    if (before === null) return [];
    const days = Math.max(0, (Date.parse(reading.takenAt) - Date.parse(takenAt)) / 86_400_000);
    const possible = possibleRange(depth, before, board.thicknessMm, days, place);
    const counts = depth === 'shell' ? estimate.countedShell : estimate.countedCore;
    const slack = OUTLIER_SCORE * spotScatterPct(before) * Math.sqrt(1 + 1 / Math.max(1, counts));
    if (mcPct >= possible.lowPct - slack && mcPct <= possible.highPct + slack) return [];
    return [{ index, suspicion: jump({ mcPct, before, depth, days, board, rose: mcPct > before }) }];
  });
}

function jump({
  mcPct,
  before,
  depth,
  days,
  board,
  rose,
}: {
  mcPct: number;
  before: number;
  depth: Depth;
  days: number;
  board: BoardEvidence['board'];
  rose: boolean;
}): Suspicion {
  const since = days < 1 ? 'in less than a day' : `in ${counted(Math.round(days), 'day')}`;
  return {
    rule: 'jump-since-last-round',
    weight: 'doubt',
    why: rose
      ? `The ${depth} went from ${pct(before)} to ${pct(mcPct)} ${since}, more than the air here can put into it.`
      : `The ${depth} went from ${pct(before)} to ${pct(mcPct)} ${since}, faster than moisture can leave a board ${Math.round(board.thicknessMm)} mm thick.`,
    whatToDo:
      'Check that this is the right board, the right wood and the right temperature, and that the meter passes its own check; then probe again.',
  };
}
