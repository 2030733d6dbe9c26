/** A value as the file has it; an id of a species, use, place or stack as the name that it had then. */
export type SavedValue = string | number | null;

/** One record that an act changed. */
export interface ChangedRecord {
  /** By what a person knows it, or what it is of; null where that is gone. */
  name: string | null;
  /** Where it is or went: the stack of a board, the place of a stack or a move; of an origin, the board that it came from. */
  whereName: string | null;
  /** Its columns: of an edited one those that changed, as they were and as they became. */
  values: Readonly<Record<string, SavedValue>>;
  before: Readonly<Record<string, SavedValue>>;
  /** Of a round: nobody gave its time, only its day. */
  isDayOnly: boolean;
}

/** What an act did to the records of one table. */
export interface TableChange {
  inTable: string;
  how: 'added' | 'edited' | 'deleted';
  rows: number;
  /** The first of them. */
  records: readonly ChangedRecord[];
}
