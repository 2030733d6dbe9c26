import type { NewBoard } from '../contract/yard.ts';
import type { Depth } from '../probing/readings/reading.ts';
import type { Species } from '../wood/species/species.ts';
import type { Message } from '../words/message.ts';

/** One reading of a table. */
export interface TableReading {
  raw: number;
  unit: 'pct' | 'ohm';
  /** The meter showed only that it is more than `raw`. */
  isAbove: boolean;
  /** What it tells; null where that is not known. */
  depth: Depth | null;
  /** How deep the pins were, mm; null where that is not known. */
  depthMm: number | null;
  /** The wood's temperature, °C; null where that is not known. */
  tempC: number | null;
  /** Since midnight; null where no time is given. */
  minutes: number | null;
  /** What else stood in its cell. */
  note: string;
  /** Why it is excluded, as the table says; null where it is not. */
  excluded: string | null;
}

/** A board's readings of one local day. */
export interface BoardDay {
  code: string;
  /** The board's row, where the yard has it. */
  boardId: number | null;
  day: string;
  /** Of the first reading, since midnight; null where no time is given. */
  minutes: number | null;
  readings: TableReading[];
}

/** A board that the yard does not know. */
export interface BoardToAdd
  extends Pick<
    NewBoard,
    | 'code'
    | 'speciesId'
    | 'thicknessMm'
    | 'thicknessQuarters'
    | 'widthMm'
    | 'lengthMm'
    | 'sawnOn'
    | 'log'
    | 'layer'
    | 'note'
  > {
  stackName: string;
  /** As the table names it; null where it names none. */
  placeName: string | null;
  /** The first day that the table has a reading of; null without any. */
  firstReadOn: string | null;
}

/** A board of the yard, as far as a table is compared with it. */
export interface KnownBoard
  extends Pick<NewBoard, 'speciesId' | 'thicknessMm' | 'thicknessQuarters' | 'sawnOn'> {
  id: number;
  code: string;
  /** Why this is another ID than that of the table; null where it is the same. */
  otherId: 'merged' | 'renamed' | null;
  /** The local day on which it was sold, used, scrapped or cut; null while it is in the yard. */
  leftOn: string | null;
  /** It left the yard in pieces. */
  isCut: boolean;
}

/** What of the yard a table is compared with. */
export interface KnownYard {
  today: string;
  /** Since midnight, now. */
  minutesNow: number;
  /** A time by a clock so many minutes ahead of UTC, by the clock of the yard. */
  localOf(time: { day: string; minutes: number; aheadMinutes: number }): { day: string; minutes: number };
  species: readonly Species[];
  /** That with this ID, or else the one that it was merged into, or that had this ID before. */
  board(code: string): KnownBoard | undefined;
  /** By `nameKey`, the stacks' names. */
  stacks: ReadonlyMap<string, string>;
  /** By `nameKey`. */
  places: ReadonlyMap<string, number>;
  /** Those of these stacks, by `nameKey`, and places that are closed: what comes to them opens them again. */
  closedStacks: ReadonlySet<string>;
  closedPlaces: ReadonlySet<number>;
}

/** What boards and readings a table brings. */
export interface BoardsOfTable {
  boards: BoardToAdd[];
  days: BoardDay[];
  /** Boards of the table that the yard has. */
  known: number;
  /** Those of them that left the yard whole, by their IDs. */
  left: string[];
  /** Those of them that were cut, by their IDs. */
  cut: string[];
  /** Those of them that the table gives another species or thickness. */
  otherInYard: number;
  /** Boards that come into one stack, of several that the table has for them. */
  inTwoStacks: number;
  /** IDs of the table whose boards have others now, with these. */
  otherIds: ReadonlyMap<string, { code: string; why: 'merged' | 'renamed' }>;
  /** Cells of readings in which the meter showed no number, as "OL", with how many have each. */
  withoutNumber: ReadonlyMap<string, number>;
  /** Rows that are the same as an earlier one, and go in as readings of other spots. */
  alike: number;
  /** The first rows that go in, as they were read. */
  firstRows: Message[];
}

/** What a row of a table says of its board. */
export interface RowOfBoard {
  row: number;
  code: string;
  speciesId: string | null;
  thickness: { mm: number; quarters: number | null } | null;
  widthMm: number | null;
  lengthMm: number | null;
  sawnOn: string | null;
  log: string | null;
  layer: number | null;
  stackName: string | null;
  placeName: string | null;
  note: string;
  days: { day: string; reading: TableReading }[];
}
