import { ZERO_CELSIUS_K } from '../../measures.ts';

/** Wood temperatures that both corrections are meant for, °C (range from memory). */
export const WOOD_TEMP_RANGE_C = { min: -20, max: 60 } as const;
/** Beyond these the corrections are refused, °C: outside, resistance may no longer tell one MC from another. */
export const WOOD_TEMP_LIMIT_C = { min: -40, max: 80 } as const;

function requireWoodTemp(tempC: number): void {
  if (!(tempC >= WOOD_TEMP_LIMIT_C.min && tempC <= WOOD_TEMP_LIMIT_C.max)) {
    throw new RangeError(
      `Wood temperature must be ${WOOD_TEMP_LIMIT_C.min} to ${WOOD_TEMP_LIMIT_C.max} °C, not ${tempC}.`,
    );
  }
}

/** What a warm or cold piece does to the shown % is a straight line at any one temperature: MC = (M + offset) / gain. */
function line(woodTempC: number): { offset: number; gain: number } {
  requireWoodTemp(woodTempC);
  return {
    offset: 0.567 - 0.026 * woodTempC + 0.000051 * woodTempC * woodTempC,
    gain: 0.881 * 1.0056 ** woodTempC,
  };
}

/**
 * Wood temperature at which the published formula leaves a reading as it is, °C: the temperature that the meters
 * behind it were made for, close to the 70 °F (21 °C) that meters are commonly calibrated at.
 */
export const NEUTRAL_TEMP_C = 22.7;

/**
 * Temperature correction of a resistance meter that shows %.
 *
 * @param shownPct    what the meter shows, % MC on its basis species
 * @param woodTempC   wood temperature, °C, -20 to 60; extended to -40 and 80
 * @returns           % MC on the meter's basis species
 * @throws            RangeError outside the extended range
 * Source: F. Pfaff and P. Garrahan, Forest Products Journal 36(3), 1986, with a = 1, b = 0; as used in public
 * field-monitoring code, checked there.
 * @example pfaffGarrahanPct(15, 5) // 17.0
 */
export function pfaffGarrahanPct(shownPct: number, woodTempC: number): number {
  const { offset, gain } = line(woodTempC);
  return (shownPct + offset) / gain;
}

/**
 * What the meter would have shown on the same piece, had it been at the temperature that the meter's scale was
 * made for.
 *
 * The formula has its neutral temperature built in (`NEUTRAL_TEMP_C`). A meter made for another temperature is
 * wrong by the same physics and right elsewhere: two readings of one piece correct to one MC, so the reading
 * searched for is the one that corrects to the same MC at `basisTempC`.
 *
 * @param shownPct     what the meter shows, %
 * @param woodTempC    wood temperature, °C, as in `pfaffGarrahanPct`
 * @param basisTempC   temperature that the meter's scale was made for, °C
 * @returns            % on the meter's basis species; equals `shownPct` where both temperatures are equal
 * @throws             RangeError outside the extended range
 */
export function shownAtBasisTempPct(shownPct: number, woodTempC: number, basisTempC: number): number {
  const { offset, gain } = line(basisTempC);
  return pfaffGarrahanPct(shownPct, woodTempC) * gain - offset;
}

const GAS_CONSTANT = 8.314462618;
/** Doubling of conductance from 20 to 30 °C. */
const DRY_J_PER_MOL = (GAS_CONSTANT * Math.LN2) / (1 / 293.15 - 1 / 303.15);
/** Threefold conductance along the grain from 23 to 90 °C. */
const WET_J_PER_MOL = (GAS_CONSTANT * Math.log(3)) / (1 / 296.15 - 1 / 363.15);

/** Activation energy of conduction along the grain, J/mol: straight from 10 to 30 % MC, held below 5 % and above 30 %. */
function activationEnergy(mcPct: number): number {
  const dryness = (30 - Math.min(30, Math.max(5, mcPct))) / 20;
  return WET_J_PER_MOL + (DRY_J_PER_MOL - WET_J_PER_MOL) * dryness;
}

/**
 * How much more resistance wood has at one temperature than at another, at the same moisture content.
 *
 * The logarithm of conductance is linear in 1/T (thermally activated ions; C. Skaar, Wood-Water Relations, 1988,
 * chapter 7, from memory), with an activation energy that falls as water is taken up. Two published points fix it:
 * dry wood's conductance doubles for each 10 °C (Wood Handbook, chapter 4, from memory), taken at 10 % MC, 51 kJ/mol;
 * that of green sapwood of radiata pine grows threefold from 23 to 90 °C along the grain (Wood Science and
 * Technology 51, 2017, 795-809, from its abstract), taken from fiber saturation on, 15 kJ/mol. The straight line
 * between them is ours.
 *
 * Against the formula of Pfaff and Garrahan on the Douglas-fir curve, wood at 0 to 45 °C and 8 to 22 % MC: the two
 * routes differ by 0.1 % MC on average, and by 1.1 at most (22 % shown in wood at 0 °C); the resistance route gives
 * less there, and more in warm dry wood (tests/unit/wood/temperature.test.ts holds them to it).
 *
 * @param mcPct        moisture content, %
 * @param woodTempC    wood temperature, °C, -20 to 60; extended to -40 and 80
 * @param atTempC      temperature compared with, °C, same range
 * @returns            decades (log10 of the ratio), positive in colder wood
 * @throws             RangeError outside the extended range
 */
export function log10OhmsShift(mcPct: number, woodTempC: number, atTempC: number): number {
  requireWoodTemp(woodTempC);
  requireWoodTemp(atTempC);
  const inverseKelvin = 1 / (woodTempC + ZERO_CELSIUS_K) - 1 / (atTempC + ZERO_CELSIUS_K);
  return (activationEnergy(mcPct) / (GAS_CONSTANT * Math.LN10)) * inverseKelvin;
}
