import type { DayOrder } from '../contract/import.ts';
import type { DisplayUnits } from '../units/length.ts';
import type { Species } from '../wood/species/species.ts';

/** The rows of a table as texts, each as long as the table is wide. */
export type Table = readonly (readonly string[])[];

/** For whom a table is read. */
export interface Reader {
  /** Local day. */
  today: string;
  units: DisplayUnits;
  /** The order in which the person writes a date in figures. */
  order: DayOrder;
  species: readonly Species[];
}

/** So many rows tell what a column holds. */
export const SAMPLE_ROWS = 400;
/** At least this part of a column's cells must be what it is guessed to hold. */
export const MOST_OF = 0.7;
