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

/** @returns the simplest first; none where no fit is within the display's rounding */
export function fitScales(points: readonly StoredAndShown[]): Fit[] {
  if (points.length === 0) return [];
  const proportional = meet(points.map(({ stored, ...shown }) => over(roomOf(shown), stored)));
  const fits = simpleIn(proportional).map(({ number, cost }): Fit => ({ scale: number, offset: 0, cost }));
  const sorted = points.toSorted((a, b) => a.stored - b.stored);
  const [first, last] = [sorted[0]!, sorted.at(-1)!];
  const [low, high] = [roomOf(first), roomOf(last)];
  const slopes = over({ low: high.low - low.high, high: high.high - low.low }, last.stored - first.stored);
  const most = Math.max(...points.map(({ value }) => Math.abs(value)));
  for (const { number: scale, cost } of simpleIn(slopes)) {
    const offsets = meet(
      points.map((point) => {
        const room = roomOf(point);
        return { low: room.low - scale * point.stored, high: room.high - scale * point.stored };
      }),
    );
    const [simplest] = simpleIn(offsets);
    if (simplest === undefined) continue;
    const { number: offset, cost: ofOffset } = simplest;
    fits.push({ scale, offset, cost: 1 + cost + ofOffset + (Math.abs(offset) > most ? ODD : 0) });
  }
  return fits
    .map((fit) => ({ ...fit, cost: 2 + fit.cost + (fit.scale < 0 ? ODD : 0) }))
    .toSorted((a, b) => a.cost - b.cost)
    .slice(0, MOST_FITS);
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

/** What is in all of them; the end lies before the beginning where that is nothing. */
function meet(rooms: readonly (Room | null)[]): Room | null {
  const known = rooms.filter((room) => room !== null);
  if (known.length < rooms.length) return null;
  return {
    low: Math.max(...known.map((room) => room.low)),
    high: Math.min(...known.map((room) => room.high)),
  };
}

const MOST_DIGITS = 5;
const MOST_FITS = 3;
const MOST_OF_DIGITS = 4;
/** Of what is unlikely, as a scale that runs the other way. */
const ODD = 4;

/** Numbers in there that a person would choose: halves of halves and few digits, the simplest first. */
function simpleIn(room: Room | null): { number: number; cost: number }[] {
  // Where 0 would do, nothing is needed.
  if (room === null || (room.low <= 0 && room.high >= 0)) return [];
  const { low, high } = room;
  const isNegative = high < 0;
  const [least, most] = isNegative ? [-high, -low] : [low, high];
  const found = new Map<number, number>();
  const add = (number: number, cost: number) => {
    if (!found.has(number)) found.set(number, cost);
  };
  for (let power = Math.ceil(Math.log2(least)); power <= Math.floor(Math.log2(most)); power++) {
    add(2 ** power, 2.5);
  }
  const size = Math.floor(Math.log10(most));
  for (let digits = 1; digits <= MOST_DIGITS && found.size < MOST_OF_DIGITS; digits++) {
    // By division: 3 times 0.1 is not 0.3.
    const power = 10 ** (digits - 1 - size);
    const [from, to] = [Math.ceil(least * power - 1e-9), Math.floor(most * power + 1e-9)];
    for (let whole = from; whole <= Math.min(to, from + 60); whole++) {
      if (digits === 1 || whole % 10 !== 0) add(whole / power, costOf(whole, digits));
    }
  }
  return [...found]
    .map(([number, cost]) => ({ number: isNegative ? -number : number, cost }))
    .toSorted((a, b) => a.cost - b.cost)
    .slice(0, MOST_OF_DIGITS);
}

/** As many bits as it takes to say the digits, fewer for those that steps usually have. */
function costOf(whole: number, digits: number): number {
  const usual = [1, 2, 5, 25, 75, 125, 15].includes(whole) ? 1 : whole % 5 === 0 ? 0.5 : 0;
  return 3.3 * digits - 1.5 * usual;
}
