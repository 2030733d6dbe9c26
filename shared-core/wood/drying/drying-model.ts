/**
 * Moisture moving through the thickness of a board and out of its two faces.
 *
 *     dM/dt = d/dx ( D(M, T) dM/dx ),   at a face   outflow = E (g(M at the face) - g(EMC))
 *
 * Finite volumes on a grid that is finer toward the faces, second order. The flux between two cells is the difference
 * of the integral of D (Kirchhoff), so a D that varies twentyfold over the thickness costs no accuracy. In time ROS3PL
 * (`rosenbrock.ts`), third order and L-stable, whose four linear systems a step share one tridiagonal matrix. The flux at
 * the faces is taken from the same linear systems as the new state, so mass balances to rounding.
 */
import {
  surfaceEmission,
  surfaceHumidity,
  temperatureRise,
  transverseDiffusivityM2S,
  USUAL_C,
} from './diffusivity.ts';
import { ros3pl } from './rosenbrock.ts';

/** A stretch of time in one air: EMC runs straight from start to end, temperature is its mean. */
export type AirSegment = {
  durationS: number;
  emcStartPct: number;
  emcEndPct: number;
  tempC: number;
};

/** What the wood and its faces do at one temperature; functions of % MC. */
export type DryingLaw = {
  /** Diffusivity, m²/s. */
  diffusivityM2S: (mcPct: number, tempC: number) => number;
  /** What drives moisture off a face: increasing with % MC, and at the EMC equal to that of the air. */
  surfacePotential: (mcPct: number, tempC: number) => number;
  /** Rate off a freely exposed face, % MC · m/s per unit of potential. */
  emission: (tempC: number) => number;
};

/** Where the diffusivity is the same for each exponent, % MC: about the middle of the way of a board that dries. */
export const ANCHOR_MC_PCT = 18;

/**
 * The law of wood of this basic specific gravity, from `diffusivity.ts`.
 *
 * @param exponent  how much of the published rise over moisture content it has: (D / D at 18 %) to this power; 1 is all
 */
export function woodDryingLaw(basicSpecificGravity: number, exponent = 1): DryingLaw {
  return {
    diffusivityM2S: (mcPct, tempC) => {
      if (exponent === 1) return transverseDiffusivityM2S(mcPct, tempC, basicSpecificGravity);
      const anchor = transverseDiffusivityM2S(ANCHOR_MC_PCT, tempC, basicSpecificGravity);
      return anchor * (transverseDiffusivityM2S(mcPct, tempC, basicSpecificGravity) / anchor) ** exponent;
    },
    surfacePotential: surfaceHumidity,
    emission: (tempC) => surfaceEmission(tempC, basicSpecificGravity),
  };
}

/** Cubic pieces of the integral of D and of the surface potential, over % MC from 0 to `topPct`. */
type LawTable = {
  emission: number;
  /** Diffusivity over the one that was integrated. */
  rise: number;
  /** Four coefficients a piece, lowest power first, in the fraction of a piece. */
  integral: Float64Array;
  potential: Float64Array;
};

/** No wood holds as much; a run begins nowhere above it, % MC. */
export const MOST_MC_PCT = 1000;

const pieces = 120;
const pieceMcPct = 0.5;
const noTable: LawTable = {
  emission: 0,
  rise: 1,
  integral: new Float64Array(4 * pieces),
  potential: new Float64Array(4 * pieces),
};

/** Hermite cubics through values and slopes at the nodes. */
function hermitePieces(values: Float64Array, slopes: Float64Array): Float64Array {
  const cubic = new Float64Array(4 * pieces);
  for (let j = 0; j < pieces; j++) {
    const [v0, v1] = [values[j]!, values[j + 1]!];
    const [s0, s1] = [slopes[j]! * pieceMcPct, slopes[j + 1]! * pieceMcPct];
    cubic.set([v0, s0, 3 * (v1 - v0) - 2 * s0 - s1, 2 * (v0 - v1) + s0 + s1], 4 * j);
  }
  return cubic;
}

/** Diffusivity at the nodes and halfway between two of them. */
function diffusivitiesOf(law: DryingLaw, tempC: number): Float64Array {
  return Float64Array.from({ length: 2 * pieces + 1 }, (_, j) =>
    law.diffusivityM2S((j * pieceMcPct) / 2, tempC),
  );
}

/** The integral of a diffusivity given there. */
function integralOf(diffusivities: Float64Array): Float64Array {
  const atNodes = diffusivities.filter((_, j) => j % 2 === 0);
  const integral = new Float64Array(pieces + 1);
  for (let j = 1; j <= pieces; j++) {
    const middle = diffusivities[2 * j - 1]!;
    integral[j] = integral[j - 1]! + (pieceMcPct / 6) * (atNodes[j - 1]! + 4 * middle + atNodes[j]!);
  }
  return hermitePieces(integral, atNodes);
}

/** Of a law's surface potential. */
function potentialOf(law: Pick<DryingLaw, 'surfacePotential'>, tempC: number): Float64Array {
  const potential = new Float64Array(pieces + 1);
  const potentialSlope = new Float64Array(pieces + 1);
  const small = 1e-3;
  for (let j = 0; j <= pieces; j++) {
    const mc = j * pieceMcPct;
    potential[j] = law.surfacePotential(mc, tempC);
    potentialSlope[j] =
      (law.surfacePotential(mc + small, tempC) - law.surfacePotential(Math.max(0, mc - small), tempC)) /
      (small + Math.min(mc, small));
  }
  return hermitePieces(potential, potentialSlope);
}

/** Of wood, whose surface potential is the same for every density: kept for all boards of a run of the program. */
const woodPotentials = new Map<number, Float64Array>();
/** More temperatures than a year has, to half a degree. */
const MOST_POTENTIALS = 400;

function woodPotentialOf(tempC: number): Float64Array {
  let potential = woodPotentials.get(tempC);
  if (potential === undefined) {
    if (woodPotentials.size === MOST_POTENTIALS) woodPotentials.clear();
    potential = potentialOf({ surfacePotential: surfaceHumidity }, tempC);
    woodPotentials.set(tempC, potential);
  }
  return potential;
}

/** Value and slope of a table at a moisture content; straight on beyond its ends. */
const looked = { value: 0, slope: 0 };
function look(cubic: Float64Array, mcPct: number): void {
  const scaled = mcPct / pieceMcPct;
  // A piece beyond the ends begins or ends where the table does.
  const isWithin = scaled >= 0 && scaled < pieces;
  const j = isWithin ? scaled | 0 : scaled >= pieces ? pieces - 1 : 0;
  const s = isWithin ? scaled - j : scaled >= pieces ? 1 : 0;
  const at = j << 2;
  const c1 = cubic[at | 1]!;
  const c2 = cubic[at | 2]!;
  const c3 = cubic[at | 3]!;
  const slope = c1 + s * (2 * c2 + 3 * s * c3);
  looked.value = cubic[at]! + s * (c1 + s * (c2 + s * c3)) + (scaled - j - s) * slope;
  looked.slope = slope / pieceMcPct;
}

/** `look` at all cells; written out, for a call for each cell takes a fifth more of a run's time (measured). */
function lookAll(cubic: Float64Array, mcPct: Float64Array, values: Float64Array, slopes: Float64Array): void {
  for (let i = 0; i < mcPct.length; i++) {
    const scaled = mcPct[i]! / pieceMcPct;
    const isWithin = scaled >= 0 && scaled < pieces;
    const j = isWithin ? scaled | 0 : scaled >= pieces ? pieces - 1 : 0;
    const s = isWithin ? scaled - j : scaled >= pieces ? 1 : 0;
    const at = j << 2;
    const c1 = cubic[at | 1]!;
    const c2 = cubic[at | 2]!;
    const c3 = cubic[at | 3]!;
    const slope = c1 + s * (2 * c2 + 3 * s * c3);
    values[i] = cubic[at]! + s * (c1 + s * (c2 + s * c3)) + (scaled - j - s) * slope;
    slopes[i] = slope / pieceMcPct;
  }
}

/** The value alone, at one cell. */
function valueIn(cubic: Float64Array, mcPct: number): number {
  const scaled = mcPct / pieceMcPct;
  if (!(scaled >= 0 && scaled < pieces)) {
    look(cubic, mcPct);
    return looked.value;
  }
  const j = scaled | 0;
  const s = scaled - j;
  const at = j << 2;
  return cubic[at]! + s * (cubic[at | 1]! + s * (cubic[at | 2]! + s * cubic[at | 3]!));
}

/** What a run looks its law up in. */
export interface Tables {
  at(tempC: number): LawTable;
}

/** Keeps one table a temperature; share it between runs of the same species, whatever their factors. */
export class LawTables implements Tables {
  private readonly law: DryingLaw;
  private readonly byTemp = new Map<number, LawTable>();

  constructor(law: DryingLaw) {
    this.law = law;
  }

  at(tempC: number): LawTable {
    let table = this.byTemp.get(tempC);
    if (table === undefined) {
      table = {
        emission: this.law.emission(tempC),
        potential: potentialOf(this.law, tempC),
        integral: integralOf(diffusivitiesOf(this.law, tempC)),
        rise: 1,
      };
      this.byTemp.set(tempC, table);
    }
    return table;
  }
}

/** Exponents that are tabulated; between two of them the mean of their tables is off by 3 % at most (`drying-model.test.ts`). */
const exponentStep = 0.4;
/** Beyond this the exponent counts as this; a fit to odd readings may try more. */
const [leastExponent, mostExponent] = [-0.8, 2];

/**
 * Tables of one wood for any exponent of its law; share them between runs. Temperature raises its diffusivity at every moisture
 * content alike, so one integral does for all.
 */
export class WoodTables {
  private readonly law: DryingLaw;
  private readonly diffusivities: Float64Array;
  private readonly byStep = new Map<number, Float64Array>();
  private readonly byTemp = new Map<number, Omit<LawTable, 'integral'>>();
  /** A board is run with the same exponent through its past and at each place. */
  private readonly byExponent = new Map<number, Tables>();

  constructor(basicSpecificGravity: number) {
    this.law = woodDryingLaw(basicSpecificGravity);
    this.diffusivities = diffusivitiesOf(this.law, USUAL_C);
  }

  /** @param exponent  as `woodDryingLaw` takes it; finite */
  with(exponent: number): Tables {
    if (!Number.isFinite(exponent)) throw new RangeError(`The exponent of a law cannot be ${exponent}.`);
    const before = this.byExponent.get(exponent);
    if (before !== undefined) return before;
    const steps = Math.min(mostExponent, Math.max(leastExponent, exponent)) / exponentStep;
    const below = Math.floor(steps);
    const integral = this.mixed(below, steps - below);
    const known = new Map<number, LawTable>();
    const tables: Tables = {
      at: (tempC) => {
        let table = known.get(tempC);
        if (table === undefined) {
          table = { ...this.sharedAt(tempC), integral };
          known.set(tempC, table);
        }
        return table;
      },
    };
    this.byExponent.set(exponent, tables);
    return tables;
  }

  private mixed(below: number, share: number): Float64Array {
    const integral = this.integralAt(below);
    if (share === 0) return integral;
    const next = this.integralAt(below + 1);
    const mixed = new Float64Array(integral.length);
    for (let i = 0; i < mixed.length; i++) mixed[i] = integral[i]! + share * (next[i]! - integral[i]!);
    return mixed;
  }

  private sharedAt(tempC: number): Omit<LawTable, 'integral'> {
    let shared = this.byTemp.get(tempC);
    if (shared === undefined) {
      const emission = this.law.emission(tempC);
      shared = { emission, potential: woodPotentialOf(tempC), rise: temperatureRise(tempC) };
      this.byTemp.set(tempC, shared);
    }
    return shared;
  }

  private integralAt(step: number): Float64Array {
    let integral = this.byStep.get(step);
    if (integral === undefined) {
      const anchor = this.law.diffusivityM2S(ANCHOR_MC_PCT, USUAL_C);
      integral = integralOf(this.diffusivities.map((d) => anchor * (d / anchor) ** (step * exponentStep)));
      this.byStep.set(step, integral);
    }
    return integral;
  }
}

/** Cells through the thickness, from face A to face B, or from face A to the middle where both sides are alike. */
export type DryingGrid = {
  thicknessM: number;
  /** Only the half next to face A is computed; the other is its mirror image. */
  half: boolean;
  widthM: Float64Array;
  /** Depth of each cell's center below face A, m. */
  centerM: Float64Array;
};

/**
 * A grid whose cells shrink smoothly to a fifth of the mean width at an open face.
 *
 * @param thicknessMm  0.5 to 1000
 * @param half         whether the two faces are alike in everything
 * @param cells        4 to 2000, in the computed part
 */
export function dryingGrid(thicknessMm: number, half: boolean, cells: number): DryingGrid {
  if (!(thicknessMm >= 0.5 && thicknessMm <= 1000)) {
    throw new RangeError(`Thickness ${thicknessMm} mm is outside 0.5 to 1000 mm.`);
  }
  if (!(Number.isInteger(cells) && cells >= 4 && cells <= 2000)) {
    throw new RangeError(`${cells} cells: the model takes 4 to 2000.`);
  }
  const thicknessM = thicknessMm / 1000;
  const grading = 0.8;
  const edge = (i: number): number => {
    const whole = half ? i / cells / 2 : i / cells;
    return thicknessM * (whole - (grading / (2 * Math.PI)) * Math.sin(2 * Math.PI * whole));
  };
  const widthM = Float64Array.from({ length: cells }, (_, i) => edge(i + 1) - edge(i));
  const centerM = Float64Array.from({ length: cells }, (_, i) => (edge(i + 1) + edge(i)) / 2);
  return { thicknessM, half, widthM, centerM };
}

/** The average over the thickness, % MC. */
export function averageOf(grid: DryingGrid, profilePct: ArrayLike<number>): number {
  let sum = 0;
  let width = 0;
  for (let i = 0; i < grid.widthM.length; i++) {
    sum += grid.widthM[i]! * profilePct[i]!;
    width += grid.widthM[i]!;
  }
  return sum / width;
}

/** Three cells and their weights: the parabola through them, read at one depth. */
type DepthWeights = { first: number; w0: number; w1: number; w2: number };

function depthWeights(grid: DryingGrid, depthFraction: number): DepthWeights {
  if (!(depthFraction >= 0 && depthFraction <= 1)) {
    throw new RangeError(`Depth ${depthFraction} is outside 0 to 1 of the thickness.`);
  }
  const fraction = grid.half ? Math.min(depthFraction, 1 - depthFraction) : depthFraction;
  const x = fraction * grid.thicknessM;
  const center = grid.centerM;
  let first = 0;
  while (first < center.length - 3 && (center[first + 1]! + center[first + 2]!) / 2 < x) first++;
  const [x0, x1, x2] = [center[first]!, center[first + 1]!, center[first + 2]!];
  return {
    first,
    w0: ((x - x1) * (x - x2)) / ((x0 - x1) * (x0 - x2)),
    w1: ((x - x0) * (x - x2)) / ((x1 - x0) * (x1 - x2)),
    w2: ((x - x0) * (x - x1)) / ((x2 - x0) * (x2 - x1)),
  };
}

const weigh = (y: ArrayLike<number>, w: DepthWeights): number =>
  w.w0 * y[w.first]! + w.w1 * y[w.first + 1]! + w.w2 * y[w.first + 2]!;

/** Moisture content at a depth, % MC; the depth is a fraction of the thickness, from face A. */
export function atDepthOf(grid: DryingGrid, profilePct: ArrayLike<number>, depthFraction: number): number {
  return weigh(profilePct, depthWeights(grid, depthFraction));
}

/** What a board goes through, and when and where to look at it. */
export type DryingCourse = {
  grid: DryingGrid;
  segments: readonly AirSegment[];
  /** Error allowed in one step, root mean square over the thickness, % MC. */
  tolerancePct: number;
  /** Where to look: seconds from the start, rising, none beyond the end; and depths from face A as fractions. */
  observeS: ArrayLike<number>;
  depthFractions: readonly number[];
};

/** How it dries there. */
export type DryingPace = {
  tables: Tables;
  /** % MC of each cell. */
  startPct: ArrayLike<number>;
  /** Multiplies the law's diffusivity; above 0. */
  diffusivityFactor: number;
  /** Multiplies the law's emission at face A and at face B; 0 is sealed. */
  faceFactors: readonly [number, number];
  /** Added to every EMC, % MC. */
  emcOffsetPct?: number;
};

export type DryingRun = DryingCourse & DryingPace;

export type DryingResult = {
  averagePct: Float64Array;
  /** One row a depth. */
  depthPct: Float64Array[];
  finalPct: Float64Array;
  /** Moisture that went out through the faces, as % MC of the board's average. */
  lostPct: number;
  steps: number;
};

/** A face of the board, and how its outflow answered the first cell and the air when it was last worked out. */
type Face = {
  /** From the first cell's center to the face, m/s over the diffusivity that was integrated. */
  conductance: number;
  emission: number;
  cellPct: number;
  emcPct: number;
  /** Moisture content of the very face, and its slopes. */
  facePct: number;
  facePerCell: number;
  facePerEmc: number;
  /** Outflow, % MC · m/s, and its slopes. */
  rate: number;
  ratePerCell: number;
  ratePerEmc: number;
};

const newFace = (): Face => ({
  conductance: Number.NaN,
  emission: 0,
  cellPct: Number.NaN,
  emcPct: Number.NaN,
  facePct: Number.NaN,
  facePerCell: Number.NaN,
  facePerEmc: Number.NaN,
  rate: Number.NaN,
  ratePerCell: Number.NaN,
  ratePerEmc: Number.NaN,
});

/** The face of another run: nothing is known of where it is, and nothing leaves it while it is sealed. */
function startFace(face: Face, conductance: number): void {
  face.conductance = conductance;
  face.facePct = Number.NaN;
  face.rate = 0;
  face.ratePerCell = 0;
  face.ratePerEmc = 0;
}

/** Arrays with a number for each cell, out of one block: each by itself, they took a tenth of a short run's time. */
function columns(count: number, cells: number): () => Float64Array {
  const { buffer, BYTES_PER_ELEMENT } = new Float64Array(count * cells);
  let taken = 0;
  return () => new Float64Array(buffer, taken++ * cells * BYTES_PER_ELEMENT, cells);
}

const { gamma } = ros3pl;
const [alpha2, alpha3] = [ros3pl.alpha[1], ros3pl.alpha[2]];
const [gamma1, gamma2, gamma3] = ros3pl.gammaOf;
const [m1, m2, , m4] = ros3pl.m;
const [e1, e2, e3, e4] = ros3pl.error;
const [c21] = ros3pl.c2.map((c) => gamma * c) as [number];
const [c31, c32] = ros3pl.c3.map((c) => gamma * c) as [number, number];
const [c41, c42, c43] = ros3pl.c4.map((c) => gamma * c) as [number, number, number];
const [dense1, dense2, dense3, dense4] = ros3pl.dense;

/**
 * The equations of a board, one for each cell, and its steps in time (`rosenbrock.ts`). It serves one run after another.
 *
 * A stage takes two passes over the cells: up, where each cell's gain goes straight into the elimination, and back down,
 * where each solved cell goes straight to where the next stage is taken. Apart, these took a tenth more time (measured).
 */
class Stepper {
  private readonly grid: DryingGrid;
  /** Of the computed cells together, m. */
  private readonly computedM: number;
  private faceFactors: readonly [number, number] = [0, 0];
  private tables: Tables | null = null;
  /** Of each cell, 1/m. */
  private readonly perWidth: Float64Array;
  /** From each cell to the next, m/s over the diffusivity that was integrated; 0 from the last. */
  private readonly conductance: Float64Array;
  private readonly faceA: Face = newFace();
  private readonly faceB: Face = newFace();
  /** Largest last change of a face's moisture. */
  private readonly newtonPct: number;
  private table: LawTable = noTable;
  /** Of the table: conductances hold it. */
  private rise = 1;
  /** The air last met: its EMC, the potential there, and its slope. */
  private emcPct = Number.NaN;
  private air = Number.NaN;
  private airPerEmc = Number.NaN;
  /** Of each cell, as last worked out. */
  private readonly integral: Float64Array;
  private readonly integralSlope: Float64Array;
  /** Factors of 1 - scale J. */
  private readonly perPivot: Float64Array;
  private readonly lower: Float64Array;
  private readonly upper: Float64Array;
  /** Solutions of the four stages. */
  private readonly u1: Float64Array;
  private readonly u2: Float64Array;
  private readonly u3: Float64Array;
  private readonly u4: Float64Array;
  /** % MC of each cell at the end of a step. */
  endPct: Float64Array;
  /** What flowed out of the board in it, and for each stage, % MC · m. */
  outM = 0;
  private out1 = 0;
  private out2 = 0;
  private out3 = 0;
  private out4 = 0;

  constructor(grid: DryingGrid, tolerancePct: number) {
    const n = grid.widthM.length;
    this.grid = grid;
    this.computedM = grid.widthM.reduce((sum, width) => sum + width, 0);
    const column = columns(12, n);
    this.perWidth = column();
    this.conductance = column();
    this.integral = column();
    this.integralSlope = column();
    this.perPivot = column();
    this.lower = column();
    this.upper = column();
    this.u1 = column();
    this.u2 = column();
    this.u3 = column();
    this.u4 = column();
    this.endPct = column();
    for (let i = 0; i < n; i++) this.perWidth[i] = 1 / grid.widthM[i]!;
    // Its square over the % MC that it takes to bend the law, some 5, is left: a five-hundredth of the tolerance.
    this.newtonPct = 0.1 * Math.sqrt(tolerancePct);
  }

  /** Another run begins, at this temperature. */
  begin({ tables, diffusivityFactor, faceFactors }: DryingPace, tempC: number): void {
    const { widthM, centerM } = this.grid;
    const end = widthM.length - 1;
    this.tables = tables;
    this.faceFactors = faceFactors;
    for (let i = 0; i < end; i++) this.conductance[i] = diffusivityFactor / (centerM[i + 1]! - centerM[i]!);
    startFace(this.faceA, diffusivityFactor / (widthM[0]! / 2));
    startFace(this.faceB, diffusivityFactor / (widthM[end]! / 2));
    this.rise = 1;
    this.bringTo(tempC);
  }

  /** From now on the board has this temperature. */
  bringTo(tempC: number): void {
    const { faceFactors, faceA, faceB, conductance } = this;
    const table = this.tables!.at(tempC);
    const change = table.rise / this.rise;
    if (change !== 1) {
      for (let i = 0; i < conductance.length; i++) conductance[i] = change * conductance[i]!;
      faceA.conductance *= change;
      faceB.conductance *= change;
      this.rise = table.rise;
    }
    faceA.emission = table.emission * faceFactors[0];
    // The middle of a board that is alike on both sides lets nothing through.
    faceB.emission = this.grid.half ? 0 : table.emission * faceFactors[1];
    this.table = table;
  }

  /** Brings both faces to where the cells next to them, and the air, have these % MC. */
  private meetAir(y: Float64Array, emcPct: number): void {
    look(this.table.potential, emcPct);
    this.emcPct = emcPct;
    this.air = looked.value;
    this.airPerEmc = looked.slope;
    if (this.faceA.emission !== 0) this.meet(this.faceA, y, 0);
    if (this.faceB.emission !== 0) this.meet(this.faceB, y, y.length - 1);
  }

  /**
   * The moisture content of the very face is where outflow to the air equals flow from the first cell. Both are
   * monotone in it, and it lies between the first cell and the air, so Newton within that bracket always arrives.
   *
   * Numbers come from fields and arrays: as arguments each would be boxed.
   */
  private meet(face: Face, y: Float64Array, cell: number): void {
    const { emission, conductance } = face;
    const { table, emcPct, air, airPerEmc, newtonPct } = this;
    const cellPct = y[cell]!;
    look(table.integral, cellPct);
    const cellIntegral = looked.value;
    const cellSlope = looked.slope;
    let low = Math.min(cellPct, emcPct);
    let high = Math.max(cellPct, emcPct);
    const guess =
      face.facePct + face.facePerCell * (cellPct - face.cellPct) + face.facePerEmc * (emcPct - face.emcPct);
    let pct = guess > low && guess < high ? guess : (low + high) / 2;
    let rate = 0;
    let rateSlope = 0;
    let total = 1;
    for (let iteration = 0; iteration < 60; iteration++) {
      look(table.potential, pct);
      rate = emission * (looked.value - air);
      rateSlope = emission * looked.slope;
      look(table.integral, pct);
      const excess = rate - conductance * (cellIntegral - looked.value);
      total = rateSlope + conductance * looked.slope;
      if (excess > 0) high = pct;
      else low = pct;
      const newton = pct - excess / total;
      // At an end of the bracket it has arrived.
      const next = newton >= low && newton <= high ? newton : (low + high) / 2;
      const change = Math.abs(next - pct);
      rate += rateSlope * (next - pct);
      pct = next;
      // What is left goes with the square of the change.
      if (change < newtonPct) break;
    }
    face.cellPct = cellPct;
    face.emcPct = emcPct;
    face.facePct = pct;
    face.facePerCell = (conductance * cellSlope) / total;
    face.facePerEmc = (emission * airPerEmc) / total;
    face.rate = rate;
    face.ratePerCell = rateSlope * face.facePerCell;
    face.ratePerEmc = rateSlope * face.facePerEmc - emission * airPerEmc;
  }

  /** The rate of change of each cell, % MC/s. */
  rates(y: Float64Array, emcPct: number, into: Float64Array): void {
    const { table, faceA, faceB, perWidth, conductance } = this;
    const end = y.length - 1;
    this.meetAir(y, emcPct);
    let inflow = -faceA.rate;
    let here = valueIn(table.integral, y[0]!);
    for (let i = 0; i <= end; i++) {
      const next = i < end ? valueIn(table.integral, y[i + 1]!) : here;
      const out = i < end ? conductance[i]! * (here - next) : faceB.rate;
      into[i] = perWidth[i]! * (inflow - out);
      inflow = out;
      here = next;
    }
  }

  /**
   * Goes from `y` on for a time `h`, while EMC runs straight. The stages are written out, for a forecast takes some 5,000
   * steps.
   *
   * @returns its error, root mean square over the computed thickness, % MC; infinite where a cell would dry to less than
   *          nothing, but for rounding
   */
  take(y: Float64Array, emcPct: number, emcPerS: number, h: number): number {
    const { table, faceA, faceB, perWidth, conductance, integral, integralSlope } = this;
    const { perPivot, lower, upper, u1, u2, u3, u4, endPct } = this;
    const end = y.length - 1;
    const scale = gamma * h;

    // First stage. The matrix is factored on the way up (Thomas algorithm; it is diagonally dominant).
    lookAll(table.integral, y, integral, integralSlope);
    this.meetAir(y, emcPct);
    const perCellA = faceA.ratePerCell;
    const perCellB = faceB.ratePerCell;
    const laterA = h * faceA.ratePerEmc * emcPerS;
    const laterB = h * faceB.ratePerEmc * emcPerS;
    let rateA = faceA.rate + gamma1 * laterA;
    let rateB = faceB.rate + gamma1 * laterB;
    let inflow = -rateA;
    let here = integral[0]!;
    let before = 0;
    // Of the flow over a cell's near side, by the cell before it and by itself; of that over its far side, likewise.
    let nearBefore = 0;
    let nearSelf = perCellA;
    let aboveBefore = 0;
    let pivot = 1;
    for (let i = 0; i <= end; i++) {
      const scaled = scale * perWidth[i]!;
      let out = rateB;
      let farSelf = perCellB;
      let farNext = 0;
      if (i < end) {
        const g = conductance[i]!;
        const next = integral[i + 1]!;
        out = g * (here - next);
        farSelf = g * integralSlope[i]!;
        farNext = g * integralSlope[i + 1]!;
        here = next;
      }
      const below = scaled * nearBefore;
      // Only one division waits for the one before it.
      pivot = 1 + scaled * (nearSelf + farSelf) - (below * aboveBefore) / pivot;
      const per = 1 / pivot;
      perPivot[i] = per;
      const low = below * per;
      lower[i] = low;
      aboveBefore = scaled * farNext;
      upper[i] = aboveBefore * per;
      nearBefore = farSelf;
      nearSelf = farNext;
      before = scaled * (inflow - out) * per + low * before;
      u1[i] = before;
      inflow = out;
    }
    before = 0;
    for (let i = end; i >= 0; i--) {
      before = u1[i]! + upper[i]! * before;
      u1[i] = before;
      const pct = y[i]! + ros3pl.a21 * before;
      endPct[i] = pct;
      integral[i] = valueIn(table.integral, pct);
    }
    const out1 = scale * (rateA + perCellA * u1[0]! + rateB + perCellB * u1[end]!);

    // Second stage.
    this.meetAir(endPct, emcPct + emcPerS * alpha2 * h);
    rateA = faceA.rate + gamma2 * laterA;
    rateB = faceB.rate + gamma2 * laterB;
    inflow = -rateA;
    here = integral[0]!;
    before = 0;
    for (let i = 0; i <= end; i++) {
      let out = rateB;
      if (i < end) {
        const next = integral[i + 1]!;
        out = conductance[i]! * (here - next);
        here = next;
      }
      before = (scale * perWidth[i]! * (inflow - out) + c21 * u1[i]!) * perPivot[i]! + lower[i]! * before;
      u2[i] = before;
      inflow = out;
    }
    before = 0;
    for (let i = end; i >= 0; i--) {
      before = u2[i]! + upper[i]! * before;
      u2[i] = before;
      const pct = y[i]! + m1 * u1[i]! + m2 * before;
      endPct[i] = pct;
      integral[i] = valueIn(table.integral, pct);
    }
    const out2 = scale * (rateA + perCellA * u2[0]! + rateB + perCellB * u2[end]!) + c21 * out1;

    // Third stage; the fourth is taken at the same place.
    this.meetAir(endPct, emcPct + emcPerS * alpha3 * h);
    rateA = faceA.rate + gamma3 * laterA;
    rateB = faceB.rate + gamma3 * laterB;
    inflow = -faceA.rate;
    here = integral[0]!;
    before = 0;
    for (let i = 0; i <= end; i++) {
      let out = faceB.rate;
      if (i < end) {
        const next = integral[i + 1]!;
        out = conductance[i]! * (here - next);
        here = next;
      }
      let gain = scale * perWidth[i]! * (inflow - out);
      u4[i] = gain;
      if (i === 0) gain -= scale * perWidth[0]! * gamma3 * laterA;
      if (i === end) gain -= scale * perWidth[end]! * gamma3 * laterB;
      before = (gain + c31 * u1[i]! + c32 * u2[i]!) * perPivot[i]! + lower[i]! * before;
      u3[i] = before;
      inflow = out;
    }
    before = 0;
    for (let i = end; i >= 0; i--) {
      before = u3[i]! + upper[i]! * before;
      u3[i] = before;
      u4[i] = u4[i]! + c41 * u1[i]! + c42 * u2[i]! + c43 * before;
    }
    const out3 = scale * (rateA + perCellA * u3[0]! + rateB + perCellB * u3[end]!) + c31 * out1 + c32 * out2;

    // Fourth stage: gamma4 is 0.
    before = 0;
    for (let i = 0; i <= end; i++) {
      before = u4[i]! * perPivot[i]! + lower[i]! * before;
      u4[i] = before;
    }
    const { widthM } = this.grid;
    let squares = 0;
    let driestPct = 0;
    before = 0;
    for (let i = end; i >= 0; i--) {
      before = u4[i]! + upper[i]! * before;
      u4[i] = before;
      const pct = endPct[i]! + m4 * before;
      endPct[i] = pct;
      if (pct < driestPct) driestPct = pct;
      const error = e1 * u1[i]! + e2 * u2[i]! + e3 * u3[i]! + e4 * before;
      squares += widthM[i]! * error * error;
    }
    const out4 =
      scale * (faceA.rate + perCellA * u4[0]! + faceB.rate + perCellB * u4[end]!) +
      c41 * out1 +
      c42 * out2 +
      c43 * out3;
    this.out1 = out1;
    this.out2 = out2;
    this.out3 = out3;
    this.out4 = out4;
    this.outM = m1 * out1 + m2 * out2 + m4 * out4;
    return driestPct < -1e-9 ? Number.POSITIVE_INFINITY : Math.sqrt(squares / this.computedM);
  }

  /** The board's average over the step, out of what it was at its begin. */
  average(beginPct: number): CubicInStep {
    const { computedM, out1, out2, out3, out4 } = this;
    return cubicOf(beginPct, -out1 / computedM, -out2 / computedM, -out3 / computedM, -out4 / computedM);
  }

  /** Moisture content at a depth over the step that began at `y`. */
  atDepth(y: Float64Array, w: DepthWeights): CubicInStep {
    return cubicOf(weigh(y, w), weigh(this.u1, w), weigh(this.u2, w), weigh(this.u3, w), weigh(this.u4, w));
  }
}

/**
 * The rates of change of all cells, % MC/s: the same equations for another solver (`tests/bench/drying.bench.ts`).
 * The returned array is the same at every call.
 */
export function dryingRates(
  run: DryingRun,
): (profilePct: Float64Array, tempC: number, emcPct: number) => Float64Array {
  // Another solver takes differences of them, whatever tolerance the run has.
  const stepper = new Stepper(run.grid, 1e-10);
  stepper.begin(run, 20);
  const rates = new Float64Array(run.grid.widthM.length);
  return (profilePct, tempC, emcPct) => {
    stepper.bringTo(tempC);
    stepper.rates(profilePct, emcPct, rates);
    return rates;
  };
}

/** Coefficients of the powers of the fraction of a step. */
type CubicInStep = { p0: number; p1: number; p2: number; p3: number };

const cubicOf = (begin: number, v1: number, v2: number, v3: number, v4: number): CubicInStep => ({
  p0: begin,
  p1: dense1[0] * v1 + dense2[0] * v2 + dense3[0] * v3 + dense4[0] * v4,
  p2: dense1[1] * v1 + dense2[1] * v2 + dense3[1] * v3 + dense4[1] * v4,
  p3: dense1[2] * v1 + dense2[2] * v2 + dense3[2] * v3 + dense4[2] * v4,
});

/**
 * Runs a board through a sequence of airs.
 *
 * @throws RangeError for values that no board has, or when no step length meets the tolerance
 */
export const simulateDrying = (run: DryingRun): DryingResult => dryingAlong(run)(run);

/** Records a run at the times and depths that were asked for. */
class Observer {
  private readonly grid: DryingGrid;
  private readonly observeS: Float64Array;
  private readonly depths: readonly DepthWeights[];
  private seen = 0;
  readonly averagePct: Float64Array;
  readonly depthPct: Float64Array[];

  constructor(grid: DryingGrid, observeS: Float64Array, depths: readonly DepthWeights[]) {
    this.grid = grid;
    this.observeS = observeS;
    this.depths = depths;
    const column = columns(1 + depths.length, observeS.length);
    this.averagePct = column();
    this.depthPct = depths.map(column);
  }

  /** Takes the instants up to one, in a step that began at `y`, and an average of `beginPct`. */
  inStep(
    stepper: Stepper,
    y: Float64Array,
    beginPct: number,
    beganS: number,
    h: number,
    untilS: number,
  ): void {
    const { observeS, depths, seen } = this;
    let end = seen;
    while (end < observeS.length && observeS[end]! <= untilS) end++;
    if (end === seen) return;
    this.seen = end;
    this.fill(this.averagePct, stepper.average(beginPct), seen, end, beganS, h);
    for (let row = 0; row < depths.length; row++) {
      this.fill(this.depthPct[row]!, stepper.atDepth(y, depths[row]!), seen, end, beganS, h);
    }
  }

  private fill(
    into: Float64Array,
    { p0, p1, p2, p3 }: CubicInStep,
    from: number,
    end: number,
    beganS: number,
    h: number,
  ): void {
    const { observeS } = this;
    const perH = 1 / h;
    for (let i = from; i < end; i++) {
      const s = (observeS[i]! - beganS) * perH;
      into[i] = p0 + s * (p1 + s * (p2 + s * p3));
    }
  }

  /** Takes the instants up to one, at which the profile is `y`. */
  still(y: Float64Array, untilS: number): void {
    const { grid, observeS, depths } = this;
    for (; this.seen < observeS.length && observeS[this.seen]! <= untilS; this.seen++) {
      this.averagePct[this.seen] = averageOf(grid, y);
      for (let row = 0; row < depths.length; row++) {
        this.depthPct[row]![this.seen] = weigh(y, depths[row]!);
      }
    }
  }
}

/** What `simulateDrying` does, for any number of paces of one board: what is the same in all is worked out once. */
export function dryingAlong(course: DryingCourse): (pace: DryingPace) => DryingResult {
  checkCourse(course);
  const { grid, tolerancePct } = course;
  const n = grid.widthM.length;
  const depths = course.depthFractions.map((fraction) => depthWeights(grid, fraction));
  const observeS = Float64Array.from(course.observeS);
  const computedM = grid.half ? grid.thicknessM / 2 : grid.thicknessM;
  const stepper = new Stepper(grid, tolerancePct);

  return (pace) => {
    checkPace(pace, grid);
    const observer = new Observer(grid, observeS, depths);
    let y: Float64Array = new Float64Array(pace.startPct);
    stepper.begin(pace, course.segments[0]?.tempC ?? 20);
    const startAveragePct = averageOf(grid, y);
    let lostM = 0;
    let steps = 0;
    let clock = 0;
    let tryS = 0;
    let emcBefore = Number.NaN;

    observer.still(y, 0);
    for (const { durationS, tempC, emcStartPct, emcEndPct } of course.segments) {
      if (durationS === 0) continue;
      stepper.bringTo(tempC);
      const offset = pace.emcOffsetPct ?? 0;
      const emcBegin = Math.max(0.1, offset + emcStartPct);
      const emcPerS = (Math.max(0.1, offset + emcEndPct) - emcBegin) / durationS;
      if (!(Math.abs(emcBegin - emcBefore) < 0.05)) {
        // New air: start with a step in which the fastest cell changes by about the cube root of the tolerance.
        const rates = stepper.endPct;
        stepper.rates(y, emcBegin, rates);
        let fastest = 1e-12;
        for (let i = 0; i < n; i++) fastest = Math.max(fastest, Math.abs(rates[i]!));
        const careful = Math.cbrt(tolerancePct) / fastest;
        tryS = tryS === 0 ? careful : Math.min(tryS, careful);
      }
      let inside = 0;
      while (inside < durationS) {
        const left = durationS - inside;
        // Two even steps rather than a full one and a sliver.
        const h = tryS >= left ? left : Math.min(tryS, left / 2);
        const error = stepper.take(y, emcBegin + emcPerS * inside, emcPerS, h) / tolerancePct;
        if (!(error <= 1)) {
          tryS = Number.isFinite(error) ? h * Math.max(0.2, 0.9 * error ** (-1 / 3)) : h / 4;
          if (tryS < 1e-6)
            throw new RangeError('The drying model found no step length that meets its tolerance.');
          continue;
        }
        steps++;
        const began = clock + inside;
        inside = h === left ? durationS : inside + h;
        observer.inStep(stepper, y, startAveragePct - lostM / computedM, began, h, clock + inside);
        lostM += stepper.outM;
        const end = stepper.endPct;
        stepper.endPct = y;
        y = end;
        tryS = h * Math.min(8, 0.9 * Math.max(error, 1e-6) ** (-1 / 3));
      }
      clock += durationS;
      emcBefore = emcBegin + emcPerS * durationS;
    }
    // Rounding may leave the last instant a hair beyond the end.
    observer.still(y, Number.POSITIVE_INFINITY);
    // Nor may it leave wood that loses no water a hair wetter than the next run may begin.
    const finalPct = y.map((pct) => Math.min(MOST_MC_PCT, pct));
    const { averagePct, depthPct } = observer;
    return { averagePct, depthPct, finalPct, lostPct: lostM / computedM, steps };
  };
}

function checkPace(pace: DryingPace, grid: DryingGrid): void {
  const n = grid.widthM.length;
  if (pace.startPct.length !== n)
    throw new RangeError(`The start has ${pace.startPct.length} cells, the grid ${n}.`);
  for (let i = 0; i < n; i++) {
    if (!(pace.startPct[i]! >= 0 && pace.startPct[i]! <= MOST_MC_PCT)) {
      throw new RangeError(`Start moisture content ${pace.startPct[i]} % is outside 0 to ${MOST_MC_PCT} %.`);
    }
  }
  if (!(pace.diffusivityFactor > 0 && pace.diffusivityFactor <= 1e4)) {
    throw new RangeError(`Diffusivity factor ${pace.diffusivityFactor} is not between 0 and 10000.`);
  }
  if (!pace.faceFactors.every((factor) => factor >= 0 && factor <= 1e9)) {
    throw new RangeError('A face factor is below 0.');
  }
  if (grid.half && pace.faceFactors[0] !== pace.faceFactors[1]) {
    throw new RangeError('Half a board was asked for, but its two faces differ.');
  }
}

function checkCourse(course: DryingCourse): void {
  if (!(course.tolerancePct > 0)) throw new RangeError('The tolerance must be above 0.');
  let total = 0;
  for (const segment of course.segments) {
    if (!(segment.durationS >= 0 && segment.durationS < 1e11)) {
      throw new RangeError(`A stretch of ${segment.durationS} s is not a length of time.`);
    }
    for (const emc of [segment.emcStartPct, segment.emcEndPct]) {
      if (!(emc >= 0 && emc <= 100)) throw new RangeError(`EMC ${emc} % is outside 0 to 100 %.`);
    }
    total += segment.durationS;
  }
  for (let i = 0; i < course.observeS.length; i++) {
    const at = course.observeS[i]!;
    if (!(at >= (i === 0 ? 0 : course.observeS[i - 1]!) && at <= total * (1 + 1e-12))) {
      throw new RangeError(`Time ${at} s to look at is out of order or beyond the end.`);
    }
  }
}

/** How far a parabola is from its faces to its average at a depth, as a part of the thickness; beyond that above 1. */
const towardAverage = (u: number): number => 6 * u * (1 - u);

/** Of a parabola through the thickness, its faces over its average, where it has `ratio` of the average at a depth. */
export function faceRatio(ratio: number, depthFraction: number): number {
  // The parabola is its average at 0.211 of the thickness: near that, no face follows from it.
  const part = Math.min(LEAST_SURE, towardAverage(depthFraction));
  return (ratio - part) / (1 - part);
}
const LEAST_SURE = 0.6;

/** A parabola through the thickness with this average, its faces at `shellRatio` times the average. */
export function parabolicStart(grid: DryingGrid, averagePct: number, shellRatio: number): Float64Array {
  // Mean over the thickness of 4 u (1 - u) is 2/3, so the middle is half as far above as the faces are below.
  const profile = Float64Array.from(grid.centerM, (x) => {
    const u = x / grid.thicknessM;
    return averagePct * (shellRatio + (1 - shellRatio) * towardAverage(u));
  });
  const mean = averageOf(grid, profile);
  return profile.map((value) => (value * averagePct) / mean);
}
