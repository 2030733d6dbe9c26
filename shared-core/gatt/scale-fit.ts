/**
 * The simplest scale and offset that make the numbers on a display from what a meter stores: 0.5, 1/16, 0.1 and 5. What
 * a display shows is rounded, so each number leaves some room.
 */

export interface StoredAndShown {
  stored: number;
  /** On the display. */
  value: number;
  /** What its last digit counts. */
  resolution: number;
}

export interface Fit {
  scale: number;
  offset: number;
  /** In bits: one more is half as likely beforehand. */
  cost: number;
}

interface Room {
  low: number;
  high: number;
}

/** @returns the fit without an offset first; none where no fit is within the display's rounding */
export function fitScales(points: readonly StoredAndShown[]): Fit[] {
  const fits: Fit[] = [];
  const proportional = meet(points.map(({ stored, ...shown }) => over(roomOf(shown), stored)));
  if (proportional !== null && proportional.low * proportional.high > 0) {
    const scale = simplestIn(proportional);
    fits.push({ scale, offset: 0, cost: 1 + costOf(scale) });
  }
  const sorted = points.toSorted((a, b) => a.stored - b.stored);
  const [first, last] = [sorted[0], sorted.at(-1)];
  if (first === undefined || last === undefined || first.stored === last.stored) return fits;
  const [low, high] = [roomOf(first), roomOf(last)];
  const slopes = over({ low: high.low - low.high, high: high.high - low.low }, last.stored - first.stored);
  if (slopes === null || slopes.low * slopes.high <= 0) return fits;
  const scale = simplestIn(slopes);
  const offsets = meet(
    points.map((point) => {
      const room = roomOf(point);
      return { low: room.low - scale * point.stored, high: room.high - scale * point.stored };
    }),
  );
  if (offsets === null) return fits;
  const offset = simplestIn(offsets);
  if (offset !== 0) fits.push({ scale, offset, cost: 3 + costOf(scale) + costOf(offset) });
  return fits;
}

/** What the display would round to it. */
const roomOf = ({ value, resolution }: Omit<StoredAndShown, 'stored'>): Room => ({
  low: value - resolution / 2,
  high: value + resolution / 2,
});

function over({ low, high }: Room, divisor: number): Room | null {
  if (divisor === 0) return null;
  const [a, b] = [low / divisor, high / divisor];
  return { low: Math.min(a, b), high: Math.max(a, b) };
}

function meet(rooms: readonly (Room | null)[]): Room | null {
  const known = rooms.filter((room) => room !== null);
  if (known.length < rooms.length) return null;
  const low = Math.max(...known.map((room) => room.low));
  const high = Math.min(...known.map((room) => room.high));
  return low <= high ? { low, high } : null;
}

const MOST_DIGITS = 6;

/** The number with the fewest digits, or a half of a half of one, that is in there. */
function simplestIn({ low, high }: Room): number {
  if (low <= 0 && high >= 0) return 0;
  const isNegative = high < 0;
  const [least, most] = isNegative ? [-high, -low] : [low, high];
  const size = Math.floor(Math.log10(most));
  let simplest = (least + most) / 2;
  for (let digits = 1; digits <= MOST_DIGITS; digits++) {
    // By division: 3 times 0.1 is not 0.3.
    const power = 10 ** (digits - 1 - size);
    const rounded = Math.ceil(least * power - 1e-9) / power;
    if (rounded > most * (1 + 1e-12)) continue;
    simplest = rounded;
    if (digits > 2) simplest = halvingIn(least, most) ?? rounded;
    break;
  }
  return isNegative ? -simplest : simplest;
}

/** 1/4, 1/8, 1/16 … */
function halvingIn(low: number, high: number): number | null {
  const halving = 2 ** Math.floor(Math.log2(high));
  return halving < 1 && halving >= low ? halving : null;
}

/** More digits are more chance. */
function costOf(number: number): number {
  if (Number.isInteger(Math.log2(Math.abs(number)))) return 2;
  const digits = Number(Math.abs(number).toPrecision(MOST_DIGITS))
    .toExponential()
    .replace(/\.|e.*/g, '').length;
  return Math.min(8, 1.5 * digits);
}
