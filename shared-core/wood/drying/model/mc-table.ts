/**
 * A function of moisture content as cubic pieces, each half a percent wide, from 0 to 60 % MC: what a run looks up at
 * every cell of every stage of every step. A function of wood is smooth enough for it, and straight on above 60 %.
 */

/** Four coefficients a piece, lowest power first, in the fraction of a piece. */
export type McTable = Float64Array;

// Exported, they would be looked up at every use, and dividing by one would take a division (an eighth of a run's time).
const pieces = 120;
const pieceMcPct = 0.5;

/** Where two pieces meet, and the ends, % MC. */
export const nodesPct: readonly number[] = Array.from({ length: pieces + 1 }, (_, j) => j * pieceMcPct);

/**
 * Hermite cubics through values and slopes at the nodes.
 *
 * @param values  of the function at `nodesPct`
 * @param slopes  of the function there, per % MC
 */
export function hermitePieces(values: Float64Array, slopes: Float64Array): McTable {
  const cubic = new Float64Array(4 * pieces);
  for (let j = 0; j < pieces; j++) {
    const [v0, v1] = [values[j]!, values[j + 1]!];
    const [s0, s1] = [slopes[j]! * pieceMcPct, slopes[j + 1]! * pieceMcPct];
    cubic.set([v0, s0, 3 * (v1 - v0) - 2 * s0 - s1, 2 * (v0 - v1) + s0 + s1], 4 * j);
  }
  return cubic;
}

/** A function's value and slope at one moisture content. */
export type Looked = { value: number; slope: number };

/** Looks a function up; beyond the ends of its table it goes straight on. */
export function look(cubic: McTable, mcPct: number, into: Looked): void {
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
  into.value = cubic[at]! + s * (c1 + s * (c2 + s * c3)) + (scaled - j - s) * slope;
  into.slope = slope / pieceMcPct;
}

/** `look` at all cells. A twin: calling it for each cell takes a tenth more of a run, being called by it a twentieth (measured). */
export function lookAll(
  cubic: McTable,
  mcPct: Float64Array,
  values: Float64Array,
  slopes: Float64Array,
): void {
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

const beyond: Looked = { value: 0, slope: 0 };
/** The value alone, at one cell. */
export function valueIn(cubic: McTable, mcPct: number): number {
  const scaled = mcPct / pieceMcPct;
  if (!(scaled >= 0 && scaled < pieces)) {
    look(cubic, mcPct, beyond);
    return beyond.value;
  }
  const j = scaled | 0;
  const s = scaled - j;
  const at = j << 2;
  return cubic[at]! + s * (cubic[at | 1]! + s * (cubic[at | 2]! + s * cubic[at | 3]!));
}
