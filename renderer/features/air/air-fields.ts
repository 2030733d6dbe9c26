import type { DisplayUnits } from '../../../shared-core/units/length.ts';
import { celsiusFromTemperature } from '../../../shared-core/units/temperature.ts';
import { type Message, message } from '../../../shared-core/words/message.ts';

/** The range that the EMC formula is used in, °C (see `emcPct`). */
const COLDEST_C = -20;
const WARMEST_C = 60;
const DRIEST_PCT = 1;
const DAMPEST_PCT = 99;

/** What a person typed, as a value or as what is wrong with it. */
export type Typed = { ok: true; value: number } | { ok: false; problem: Message };

/** The air's temperature in °C. */
export function airTempC(typed: number | null, units: DisplayUnits): Typed {
  const tempC = typed === null ? Number.NaN : celsiusFromTemperature(typed, units);
  return tempC >= COLDEST_C && tempC <= WARMEST_C
    ? { ok: true, value: tempC }
    : {
        ok: false,
        problem: message('air.temperature-outside', { coldestTempC: COLDEST_C, warmestTempC: WARMEST_C }),
      };
}

/** Relative humidity as a fraction. Perfectly dry air has no dew point, and is nowhere. */
export function airRh(typedPct: number | null): Typed {
  return typedPct !== null && typedPct >= DRIEST_PCT && typedPct <= DAMPEST_PCT
    ? { ok: true, value: typedPct / 100 }
    : {
        ok: false,
        problem: message('air.humidity-outside', { driestRhPct: DRIEST_PCT, dampestRhPct: DAMPEST_PCT }),
      };
}
