import type { DisplayUnits } from '../../../shared-core/units/length.ts';
import { celsiusFromTemperature, temperatureText } from '../../../shared-core/units/temperature.ts';

/** The range that the EMC formula is used in, °C (see `emcPct`). */
const COLDEST_C = -20;
const WARMEST_C = 60;
const DAMPEST_PCT = 99;

/** What a person typed, as a value or as the sentence that is wrong with it. */
export type Typed = { ok: true; value: number } | { ok: false; sentence: string };

/** The air's temperature in °C. */
export function airTempC(typed: number | null, units: DisplayUnits): Typed {
  const tempC = typed === null ? Number.NaN : celsiusFromTemperature(typed, units);
  return tempC >= COLDEST_C && tempC <= WARMEST_C
    ? { ok: true, value: tempC }
    : {
        ok: false,
        sentence: `This must be ${temperatureText(COLDEST_C, units)} to ${temperatureText(WARMEST_C, units)}.`,
      };
}

/** Relative humidity as a fraction. Perfectly dry air has no dew point, and is nowhere. */
export function airRh(typedPct: number | null): Typed {
  return typedPct !== null && typedPct >= 1 && typedPct <= DAMPEST_PCT
    ? { ok: true, value: typedPct / 100 }
    : { ok: false, sentence: `This must be 1 to ${DAMPEST_PCT} %.` };
}
