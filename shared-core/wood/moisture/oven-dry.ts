/** One weighing of a piece in the oven: hours since it went in, and its mass in grams. */
export interface Weighing {
  hours: number;
  grams: number;
}

/** How a standard says that a piece in the oven is dry. */
export const constantMassRules = {
  /** The loss in 3 h is at most twice what the balance can tell (ASTM D4442, primary method; from memory). */
  'ASTM D4442': { hours: 3, limit: (_grams: number, balanceGrams: number) => 2 * balanceGrams },
  /** Two weighings 2 h apart differ by at most 0.1 % of the mass (EN 13183-1; from memory). */
  'EN 13183-1': { hours: 2, limit: (grams: number, _balanceGrams: number) => 0.001 * grams },
} as const;
export type ConstantMassRule = keyof typeof constantMassRules;

/**
 * Moisture content by the oven-dry method.
 *
 * Caution: the oven is at 103 ± 2 °C. Never leave wood in it alone, and resinous wood gives off flammable
 * vapor, which also weighs as if it had been water.
 *
 * @param wetGrams   mass when the meter read it, g, at least the dry mass (any unit, if both have the same)
 * @param dryGrams   mass at the end of drying, g, above 0
 * @returns          % of the oven-dry mass
 * @throws           RangeError where the dry mass is not above 0, or the wet mass below it
 * Source: ASTM D4442 and EN 13183-1: MC = (mass - dry mass) / dry mass.
 * @example ovenDryMcPct(98.55, 59.2) // 66.5
 */
export function ovenDryMcPct(wetGrams: number, dryGrams: number): number {
  if (!(dryGrams > 0 && Number.isFinite(dryGrams))) {
    throw new RangeError(`The oven-dry mass must be above 0, not ${dryGrams}.`);
  }
  if (!(wetGrams >= dryGrams && Number.isFinite(wetGrams))) {
    throw new RangeError(`The wet mass (${wetGrams}) must not be below the oven-dry mass (${dryGrams}).`);
  }
  return (100 * (wetGrams - dryGrams)) / dryGrams;
}

/**
 * Whether a piece in the oven is dry, by the end condition of a standard, from the last weighing and the latest one
 * that lies at least the standard's interval before it. A loss over a longer interval is scaled to the standard's.
 *
 * @param weighings      in the order taken
 * @param rule           the standard whose end condition holds
 * @param balanceGrams   smallest step of the balance, g, above 0
 * @returns              whether it is dry; and the change per interval with what is allowed, g, or null for both
 *                       where no two weighings lie far enough apart yet
 * @throws               RangeError where times do not rise or a mass is not above 0
 */
export function constantMass(
  weighings: readonly Weighing[],
  rule: ConstantMassRule,
  balanceGrams: number,
): { dry: boolean; changeGrams: number | null; allowedGrams: number | null } {
  if (!(balanceGrams > 0)) throw new RangeError(`The balance's step must be above 0 g, not ${balanceGrams}.`);
  weighings.forEach(({ hours, grams }, i) => {
    if (!(grams > 0)) throw new RangeError(`A mass must be above 0 g, not ${grams}.`);
    if (i > 0 && !(hours > weighings[i - 1]!.hours)) {
      throw new RangeError('Each weighing must be later than the one before.');
    }
  });
  const { hours: interval, limit } = constantMassRules[rule];
  const last = weighings.at(-1);
  const before = last && weighings.findLast(({ hours }) => last.hours - hours >= interval);
  if (!before) return { dry: false, changeGrams: null, allowedGrams: null };
  // A gain is no end either: the piece took up moisture on the way to the balance.
  const changeGrams = (Math.abs(before.grams - last.grams) * interval) / (last.hours - before.hours);
  const allowedGrams = limit(last.grams, balanceGrams);
  // A balance's own steps do not add up exactly in binary.
  return { dry: changeGrams <= allowedGrams * (1 + 1e-9), changeGrams, allowedGrams };
}
