/** Boards whose moisture is known because we drew it, and readings of them: for `calls-by-harm.bench.ts`, which says how. */
import type { PlaceFacts } from '../../shared-core/probing/readings/evidence.ts';
import { PAIRS, type PlanBasis, usualBasis } from '../../shared-core/probing/readings/plan-basis.ts';
import type { Reading } from '../../shared-core/probing/readings/reading.ts';
import { type PlannedSpot, plannedDepthMm } from '../../shared-core/probing/readings/spots.ts';
import { DAY_S } from '../../shared-core/time.ts';
import { priorDiffusivity, priorPace } from '../../shared-core/wood/drying/history-fit.ts';
import { dryingGrid } from '../../shared-core/wood/drying/model/drying-grid.ts';
import { woodDryingLaw } from '../../shared-core/wood/drying/model/drying-law.ts';
import { simulateDrying } from '../../shared-core/wood/drying/model/drying-model.ts';
import type { AirSegment } from '../../shared-core/wood/drying/model/drying-run.ts';
import { LawTables } from '../../shared-core/wood/drying/model/law-tables.ts';
import { parabolicStart } from '../../shared-core/wood/drying/model/parabolic-start.ts';
import { spotScatterPct } from '../../shared-core/wood/moisture/spot-scatter.ts';
import { builtInEndUses } from '../../shared-core/wood/species/built-in.ts';
import type { EndUse } from '../../shared-core/wood/species/end-use.ts';
import { reading } from '../unit/probing/a-board.ts';
import type { Random } from './rounds-with-faults.ts';

/** Of the meter's error, which all readings of a board share, % MC. */
export const METER_SD_PCT = 0.85;
const DEPTHS = Array.from({ length: 41 }, (_, i) => i / 80);

export interface Place {
  facts: Omit<PlaceFacts, 'emcPct'>;
  emcPct: number;
  noisePct: number;
  uses: EndUse[];
}
const use = (id: string): EndUse => builtInEndUses.find((each) => each.id === id)!;
const PLACES: Place[] = [
  {
    facts: { name: 'shed', kind: 'open-shed', month: 5, airTempC: 15 },
    emcPct: 12.5,
    noisePct: 1.5,
    uses: ['air-dried-stock', 'exterior-most-us', 'outdoor-furniture', 'framing'].map(use),
  },
  {
    facts: { name: 'room', kind: 'heated-room', month: 5, airTempC: 20 },
    emcPct: 7,
    noisePct: 0.6,
    uses: ['furniture', 'interior-most-us', 'shop-projects', 'interior-damp-coast'].map(use),
  },
];

export interface Truth {
  thicknessMm: number;
  place: Place;
  endUse: EndUse;
  averagePct: number;
  at: (depthMm: number) => number;
  differencePct: number;
  /** Days since it came to its place, or since it was sawn there; what it had then, and its wood's density. */
  days: number;
  isNewHere: boolean;
  startPct: number;
  gravity: number;
  /** That many days ago, as `at`. */
  earlier: (daysAgo: number) => (depthMm: number) => number;
}

const pick = <T>(random: Random, list: readonly T[]): T => list[Math.floor(random.uniform() * list.length)]!;

function weather(random: Random, days: number, emcPct: number, noisePct: number): AirSegment[] {
  let off = noisePct * random.normal();
  return Array.from({ length: days }, () => {
    off = 0.75 * off + noisePct * Math.sqrt(1 - 0.75 ** 2) * random.normal();
    const emc = Math.max(3, emcPct + off);
    return { durationS: DAY_S, emcStartPct: emc, emcEndPct: emc, tempC: 17 };
  });
}

/** A board at a moment when its average is what was drawn; null where it never was. */
export function drawTruth(random: Random, thicknessMm: number): Truth | null {
  const place = pick(random, PLACES);
  const endUse = pick(random, place.uses);
  const wantedPct = endUse.maxPct - 4 + (6 + endUse.tolerancePoints) * random.uniform();
  const grid = dryingGrid(thicknessMm, true, 14);
  const gravity = 0.35 + 0.35 * random.uniform();
  const tables = new LawTables(woodDryingLaw(gravity));
  const wasMoved = random.uniform() < 0.25;
  const startPct = wasMoved ? wantedPct + 1 + 5 * random.uniform() : 28;
  const days = wasMoved ? 60 : 600;
  const { surface } = priorPace;
  const observeS = Array.from({ length: days }, (_, day) => (day + 1) * DAY_S);
  const factor = (prior: typeof surface) => prior.median * Math.exp(prior.logSd * random.normal());
  const face = factor(surface);
  const emcPct = wasMoved ? place.emcPct - 2 * random.uniform() : place.emcPct;
  const { averagePct, depthPct } = simulateDrying({
    grid,
    tables,
    startPct: parabolicStart(grid, startPct, 0.93),
    segments: weather(random, days, emcPct, place.noisePct),
    diffusivityFactor: factor(priorDiffusivity(null)),
    faceFactors: [face, face],
    tolerancePct: 0.05,
    observeS,
    depthFractions: DEPTHS,
  });
  const near = averagePct.reduce(
    (best, pct, day) => (Math.abs(pct - wantedPct) < Math.abs(averagePct[best]! - wantedPct) ? day : best),
    0,
  );
  if (Math.abs(averagePct[near]! - wantedPct) > 0.3) return null;
  const onDay =
    (day: number) =>
    (depthMm: number): number => {
      const place = 80 * Math.min(depthMm / thicknessMm, 1 - depthMm / thicknessMm);
      const below = Math.min(39, Math.floor(place));
      const rest = place - below;
      return (1 - rest) * depthPct[below]![day]! + rest * depthPct[below + 1]![day]!;
    };
  const at = onDay(near);
  return {
    thicknessMm,
    place,
    endUse,
    averagePct: averagePct[near]!,
    at,
    differencePct: at(thicknessMm / 2) - at(plannedDepthMm('shell', thicknessMm)),
    days: near + 1,
    isNewHere: wasMoved,
    startPct,
    gravity,
    earlier: (daysAgo) => onDay(near - daysAgo),
  };
}

export type Honesty = 'honest' | 'planned' | 'fully in' | 'old pairs';
export interface Pins {
  lengthMm: number;
  insulated: boolean;
}
export const LENGTH_MM = 3000;

/** What the app plans for such pins: as they are, and where they reach no core also with a fresh crosscut. */
export function basesOf(thicknessMm: number, pins: Pins, honesty: Honesty): PlanBasis[] {
  if (honesty === 'old pairs') return [PAIRS];
  const usual = usualBasis(thicknessMm, honesty === 'honest' ? pins : null);
  return usual.faces === 'pairs' ? [usual] : [usual, { ...usual, core: 'fresh-cut' }];
}

/** What pins show at a spot, but for errors: uninsulated ones the wettest layer that they touch. */
export function shownPct(at: Truth['at'], { insulated }: Pick<Pins, 'insulated'>, tipMm: number): number {
  const layers = Array.from({ length: 9 }, (_, i) => (tipMm * (i + 1)) / 9);
  return insulated ? at(tipMm) : Math.max(...layers.map(at));
}

/** The readings of a round. @param meterPct  the meter's error on this board, % MC */
export function readingsOf(
  { thicknessMm, at }: Truth,
  pins: Pins,
  plan: readonly PlannedSpot[],
  honesty: Honesty,
  random: Random,
  meterPct = METER_SD_PCT * random.normal(),
): Reading[] {
  return plan.map(({ spot, by }, index): Reading => {
    const plannedMm = spot.depthMm ?? plannedDepthMm(spot.depth, thicknessMm);
    const reachMm = Math.min(pins.lengthMm, thicknessMm / 2);
    const isCut = by !== 'pins';
    const tipMm = isCut ? plannedMm : honesty === 'fully in' ? reachMm : Math.min(plannedMm, reachMm);
    const pct = shownPct(at, { insulated: pins.insulated || isCut }, tipMm);
    const raw = Math.max(0.5, pct + meterPct + spotScatterPct(pct) * random.normal());
    return reading(index + 1, spot.depth, raw, {
      spotIndex: index,
      spot: { ...spot, depthMm: plannedMm },
      depthFrom: isCut || honesty === 'honest' ? 'pins' : 'plan',
    });
  });
}
