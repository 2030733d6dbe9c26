import type { DisplayUnits } from '../../shared-core/units/length.ts';
import { celsiusFromTemperature } from '../../shared-core/units/temperature.ts';
import { type Message, message } from '../../shared-core/words/message.ts';

/** A wood temperature as a person typed it, in their own unit, or that they do not know it. */
export interface TypedTemperature {
  typed: number | null;
  unknown: boolean;
}

/** The same bounds as the contract's `woodTempSchema`. */
const LOWEST_C = -40;
const HIGHEST_C = 80;

/** The temperature that was typed (null: not known), or what is wrong with it. */
export function readTemperature(
  { typed, unknown }: TypedTemperature,
  units: DisplayUnits,
): { ok: true; woodTempC: number | null } | { ok: false; problem: Message } {
  if (unknown) return { ok: true, woodTempC: null };
  if (typed === null || Number.isNaN(typed)) return { ok: false, problem: message('wood-temp.missing') };
  const woodTempC = celsiusFromTemperature(typed, units);
  if (woodTempC < LOWEST_C || woodTempC > HIGHEST_C) {
    const bounds = { lowestTempC: LOWEST_C, highestTempC: HIGHEST_C };
    return { ok: false, problem: message('wood-temp.out-of-range', bounds) };
  }
  return { ok: true, woodTempC };
}
