import type { Message } from '../words/message.ts';

/** A cell of a table of the methods page: a sentence, a number, or names or a citation as they are. */
export type MethodCell = Message | number | string;

/** Names have commas in them. */
export const BETWEEN_NAMES = '; ';

export interface MethodTable {
  caption: Message;
  heads: readonly Message[];
  rows: readonly (readonly MethodCell[])[];
  /** The numbers of a column are of unlike things; else all have as many decimals. */
  isOfUnlike?: true;
}

/** One part of the methods page. */
export interface MethodPart {
  /** Of its address: `#/methods?part=emc`. */
  id: string;
  title: Message;
  says: readonly Message[];
  tables: readonly MethodTable[];
  /** Where it comes from; null where its tables say so. */
  source: Message | null;
}

/** A part without tables, or with those given. */
export const partOf = (
  id: string,
  title: Message,
  says: readonly Message[],
  source: Message | null,
  ...tables: readonly MethodTable[]
): MethodPart => ({ id, title, says, tables, source });
