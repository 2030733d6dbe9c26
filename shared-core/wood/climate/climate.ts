import { emcPct } from './emc.ts';
import type { MonthlyAir } from './monthly-air.ts';

/** What a year's air at a place does to wood there. */
export interface YearOfEmc {
  /** Equilibrium moisture content of each month, %, January first. */
  monthlyEmcPct: number[];
  /** The driest that wood can get there, if it is thin enough to keep up with the month, %. */
  driestEmcPct: number;
  /** 1 January to 12 December; the first of equals. */
  driestMonth: number;
}

/** Colder air than this counts as this cold, °C: the formula ends there, and frozen wood hardly dries. */
export const COLDEST_C = -20;

/**
 * Equilibrium moisture content over a year and its driest month: the floor that air drying cannot pass at that place.
 * A month's own EMC holds where it is known; else it is that of the month's mean temperature and humidity.
 *
 * The same sum that W. T. Simpson made for 384 outdoor places (Equilibrium Moisture Content of Wood in Outdoor
 * Locations, FPL-RN-268, 1998, from its abstract), with eq. 4-5 of the Wood Handbook.
 */
export function emcOfYear(air: MonthlyAir): YearOfEmc {
  const monthlyEmcPct = air.map(
    (month) => month.emcPct ?? emcPct(Math.max(COLDEST_C, month.tempC), month.rh),
  );
  const driestEmcPct = Math.min(...monthlyEmcPct);
  return { monthlyEmcPct, driestEmcPct, driestMonth: monthlyEmcPct.indexOf(driestEmcPct) + 1 };
}
