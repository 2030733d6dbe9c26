import type { BoardEvidence } from '../../../shared-core/probing/readings/evidence.ts';
import type { Depth, Reading, Suspicion } from '../../../shared-core/probing/readings/reading.ts';
import { plannedDepthMm } from '../../../shared-core/probing/readings/spots.ts';
import type { MeterScale } from '../../../shared-core/wood/moisture/corrected.ts';
import type { EndUse } from '../../../shared-core/wood/species/end-use.ts';
import type { Species } from '../../../shared-core/wood/species/species.ts';

/**
 * Boards for the tests: of a species with the curve of the meter's scale and at its temperature, so that the
 * corrected value is the typed one and the numbers in a test can be read off.
 */
export const plainSpecies: Species = {
  id: 'plain-wood',
  name: 'Plain wood',
  botanicalName: null,
  group: 'Test species',
  aliases: [],
  basicSpecificGravity: 0.45,
  radialPct: null,
  tangentialPct: null,
  volumetricPct: null,
  changeCoefficient: null,
  curveId: 'douglas-fir-coast',
  linear: null,
  note: '',
  source: '',
};

export const interior: EndUse = {
  id: 'interior',
  name: 'interior work',
  minPct: 6,
  maxPct: 10,
  tolerancePoints: 2,
  minIsAdvice: false,
  maxShellCorePct: 2,
  cautions: [],
  note: '',
  source: '',
};

export const SCALE: MeterScale = {
  kind: 'species',
  speciesId: null,
  curveId: 'douglas-fir-coast',
  tempC: 20,
};
export const TAKEN_AT = '2026-05-20T10:00:00.000Z';

export function reading(id: number, depth: Depth, raw: number, more: Partial<Reading> = {}): Reading {
  return {
    id,
    roundId: 1,
    boardId: 1,
    spotIndex: null,
    spot: { depth, depthMm: null, fromEndMm: 1000, face: 'face' },
    depthFrom: 'pins',
    raw,
    unit: 'pct',
    how: 'typed',
    settled: null,
    woodTempC: 20,
    meterId: null,
    meterProfileId: null,
    takenAt: TAKEN_AT,
    excluded: null,
    ...more,
  };
}

/** Readings of a board: shells first, then cores. */
export function readings(shell: number[], core: number[], more: Partial<Reading> = {}): Reading[] {
  return [
    ...shell.map((raw, index) => reading(index + 1, 'shell', raw, more)),
    ...core.map((raw, index) => reading(shell.length + index + 1, 'core', raw, more)),
  ];
}

/** A reading that says no depth was read as deep as it is planned there. */
const asDeepAsPlanned = (each: Reading, thicknessMm: number): Reading => ({
  ...each,
  spot: { ...each.spot, depthMm: each.spot.depthMm ?? plannedDepthMm(each.spot.depth, thicknessMm) },
});

export function evidence(of: Reading[], more: Partial<BoardEvidence> = {}): BoardEvidence {
  const { board = { thicknessMm: 27, lengthMm: 3000 } } = more;
  return {
    board,
    species: plainSpecies,
    endUse: interior,
    place: { name: 'the shop', kind: 'shop', emcPct: 8, month: 5 },
    readings: of.map((each) => asDeepAsPlanned(each, board.thicknessMm)),
    meters: {},
    // A good meter, of the kind that laboratories have.
    typedBasis: { scale: SCALE, meterSdPct: 0.5, range: { min: 5, max: 60 } },
    previous: null,
    ...more,
  };
}

/** What the last round found: two readings of either depth. */
export const lastRound = (shellPct: number, corePct: number, takenAt: string) => ({
  estimate: {
    averagePct: (shellPct + corePct) / 2,
    averageIs: 'read' as const,
    shellPct,
    corePct,
    differencePct: corePct - shellPct,
    standardUncertaintyPct: 0.6,
    lowPct: (shellPct + corePct) / 2 - 1,
    highPct: (shellPct + corePct) / 2 + 1,
    likelyInterval: { minPct: (shellPct + corePct) / 2 - 0.8, maxPct: (shellPct + corePct) / 2 + 0.8 },
    countedShell: 2,
    countedAverage: 0,
    countedCore: 2,
    inCore: 2,
  },
  takenAt,
});

/** What the last round found of a board read by its average alone, at three spots. */
export function lastRoundByAverage(averagePct: number, takenAt: string) {
  const { estimate } = lastRound(averagePct, averagePct, takenAt);
  const none = {
    shellPct: null,
    corePct: null,
    differencePct: null,
    countedShell: 0,
    countedCore: 0,
    inCore: 0,
  };
  return { estimate: { ...estimate, ...none, countedAverage: 3 }, takenAt };
}

/** Readings of a board by its average alone. */
export const averages = (values: number[], more: Partial<Reading> = {}): Reading[] =>
  values.map((raw, index) => reading(index + 1, 'average', raw, more));

/** The rules that fired on each reading, in order. */
export const rules = (judged: readonly { suspicions: Suspicion[] }[]): Suspicion['rule'][][] =>
  judged.map((each) => each.suspicions.map((suspicion) => suspicion.rule));
