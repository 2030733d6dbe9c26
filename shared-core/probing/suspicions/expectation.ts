import { DAY_S } from '../../time.ts';
import { priorDiffusivity, priorPace, usualTables } from '../../wood/drying/history-fit.ts';
import { dryingGrid } from '../../wood/drying/model/drying-grid.ts';
import { simulateDrying } from '../../wood/drying/model/drying-model.ts';
import { dryingClassOf } from '../../wood/species/drying-class.ts';
import type { Species } from '../../wood/species/species.ts';
import type { Estimate } from '../readings/estimate.ts';
import type { BoardEvidence, PlaceFacts } from '../readings/evidence.ts';
import { SPELL_SD_PCT, STEEPNESS, shellAhead } from '../readings/profile-posterior.ts';
import type { Depth, ShellOrCore } from '../readings/reading.ts';
import { plannedDepthMm } from '../readings/spots.ts';

/** What one depth of a board should read now, % MC, with one standard deviation to either side. */
export type Expected = { pct: number; sdLowPct: number; sdHighPct: number };
/** Shell and core are null for a board that was read by its average alone. */
export type Expectation = Record<ShellOrCore, Expected | null> & { average: Expected };

type Pace = { diffusivity: number; surface: number };

/** How fast real boards dry: the middle of what is known before any reading, and two standard deviations to either side. */
function pacesOf(species: Species): [Pace, Pace, Pace] {
  const { surface } = priorPace;
  const diffusivity = priorDiffusivity(dryingClassOf(species));
  return [-2, 0, 2].map((sds) => ({
    diffusivity: diffusivity.median * Math.exp(sds * diffusivity.logSd),
    surface: surface.median * Math.exp(sds * surface.logSd),
  })) as [Pace, Pace, Pace];
}

/** How warm the air of each kind of place is where nothing else is known, °C. Common practice, no source. */
const TEMP_C: Record<PlaceFacts['kind'], number> = {
  outdoors: 14,
  'open-shed': 14,
  shop: 18,
  'heated-room': 20,
};

/** What two rounds differ by besides the spots: temperatures taken, the meter's own day, % MC. Common practice, no source. */
export const BETWEEN_ROUNDS_PCT = 0.35;

/** Longest stretch expected from one round to the next; beyond it the air has changed too much, days. */
export const LONGEST_DAYS = 60;
const CELLS = 10;
/** The model’s tables end here, % MC. */
const MODEL_TOP_PCT = 58;

/**
 * What a board should read now, from what the last round found and the time since in the air of its place, by the drying
 * model at three paces. The model starts from the parabola through the shell and core of the last round, or through its
 * average alone, as steep as drying usually makes it.
 *
 * Null where something that it needs is not known (the air, the specific gravity, what the board read), where it was
 * moved meanwhile or may have been, or after more than two months.
 */
export function expectationNow(
  { previous, board, species, place }: BoardEvidence,
  takenAt: string,
): Expectation | null {
  if (previous === null || previous.moved !== false || place.emcPct === null) return null;
  if (species.basicSpecificGravity === null) return null;
  const shellShare = plannedDepthMm('shell', board.thicknessMm) / board.thicknessMm;
  const start = startOf(previous.estimate, shellShare, { ...place, emcPct: place.emcPct });
  if (start === null) return null;
  const days = (Date.parse(takenAt) - Date.parse(previous.takenAt)) / (DAY_S * 1000);
  if (!(days >= 0 && days <= LONGEST_DAYS)) return null;

  const tempC = TEMP_C[place.kind];
  const grid = dryingGrid(board.thicknessMm, true, CELLS);
  const startPct = Float64Array.from(grid.centerM, (x) =>
    Math.min(
      MODEL_TOP_PCT,
      Math.max(1, start.corePct - start.dropPct * (1 - (2 * x) / grid.thicknessM) ** 2),
    ),
  );
  const tables = usualTables(species.basicSpecificGravity);
  const averageShare = plannedDepthMm('average', board.thicknessMm) / board.thicknessMm;
  const { emcPct } = place;
  const run = (pace: Pace, emc: number) => {
    const durationS = Math.max(1, days * DAY_S);
    const { depthPct } = simulateDrying({
      grid,
      tables,
      startPct,
      segments: [{ durationS, emcStartPct: emc, emcEndPct: emc, tempC }],
      diffusivityFactor: pace.diffusivity,
      faceFactors: [pace.surface, pace.surface],
      tolerancePct: 0.1,
      observeS: [durationS],
      depthFractions: [shellShare, averageShare, 0.5],
    });
    const [shell, average, core] = depthPct.map((ofDepth) => ofDepth[0]!) as [number, number, number];
    return { shell, average, core };
  };
  const paces = pacesOf(species);
  const [slow, middle, fast] = paces.map((pace) => run(pace, emcPct));
  const damp = run(paces[1], emcPct + SPELL_SD_PCT[place.kind]);

  const expected = (depth: Depth): Expected => {
    const pct = middle![depth];
    const ends = [slow![depth] - pct, fast![depth] - pct];
    const air = damp[depth] - pct;
    return {
      pct,
      sdLowPct: Math.hypot(Math.min(0, ...ends) / 2, air),
      sdHighPct: Math.hypot(Math.max(0, ...ends) / 2, air),
    };
  };
  const { areBothRead } = start;
  return {
    shell: areBothRead ? expected('shell') : null,
    average: expected('average'),
    core: areBothRead ? expected('core') : null,
  };
}

/** The parabola that the last round left: its core, and how far its surface lies below that, % MC. */
function startOf(
  { shellPct, corePct, averagePct, countedAverage }: Estimate,
  shellShare: number,
  { emcPct, isNewHere = null }: { emcPct: number; isNewHere?: boolean | null },
) {
  if (shellPct !== null && corePct !== null)
    return { corePct, dropPct: (corePct - shellPct) / (1 - 2 * shellShare) ** 2, areBothRead: true };
  if (countedAverage === 0) return null;
  const dropPct = shellAhead(isNewHere).points + STEEPNESS.mean * (averagePct - emcPct);
  // A parabola's average lies a third of its drop below its middle.
  return { corePct: averagePct + dropPct / 3, dropPct, areBothRead: false };
}
