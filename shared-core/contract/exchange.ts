import { z } from 'zod';
import { messageSchema } from '../words/message.ts';

export const csvKinds = ['boards', 'readings', 'calls', 'forecasts', 'air'] as const;
export type CsvKind = (typeof csvKinds)[number];

/** What an export holds: everything that a person entered, as JSON; a table of it, or what the boards amount to, as CSV. */
export const exportKindSchema = z.enum(['everything', ...csvKinds, 'tally']);
export type ExportKind = z.infer<typeof exportKindSchema>;

/** Whose version of a record holds. */
export const sideSchema = z.enum(['mine', 'theirs']);
export type Side = z.infer<typeof sideSchema>;
/** Not this one. */
export const otherSide = (side: Side): Side => (side === 'mine' ? 'theirs' : 'mine');

const valueSchema = z.union([messageSchema, z.string()]).nullable();
/**
 * A record that both yards edited since they were the same, each otherwise; or that one let go, as by archiving or undoing,
 * and the other went on with.
 */
const clashSchema = z.object({
  /** Of the own record. */
  id: z.uuid(),
  /** What it is, and by what a person knows it. */
  record: messageSchema,
  /** Those in which the two differ, with both values as a person reads them; null where it is blank. */
  fields: z.array(z.object({ label: messageSchema, mine: valueSchema, theirs: valueSchema })),
  /** Where one let it go: what became of it in either. */
  mine: z.array(messageSchema),
  theirs: z.array(messageSchema),
});
export type Clash = z.infer<typeof clashSchema>;

/** A record of theirs whose name another has here. */
const renamedSchema = z.object({ tableName: z.string(), from: z.string(), to: z.string() });
export type Renamed = z.infer<typeof renamedSchema>;

const mergedRecordsSchema = z.object({
  /** How many records come in, by the tables of an export. */
  added: z.record(z.string(), z.number().int()),
  /** How many records here become as they are there. */
  edited: z.number().int(),
  /** How many go because they were deleted there, by the tables of an export. */
  deleted: z.record(z.string(), z.number().int()),
  /** What leaves the lists of this yard, a sentence for each kind of record. */
  leaves: z.array(messageSchema),
  /** How many records that are. */
  leaveCount: z.number().int(),
  /** Boards that are in the lists whole and in pieces, or in the pieces of two cuts: a sentence for each kind. */
  cuts: z.array(messageSchema),
  /** Records that are never edited, and say something else in the file than here: the first of them. Those here stay. */
  otherValues: z.array(messageSchema),
  otherValueCount: z.number().int(),
  /** The first of them. */
  clashes: z.array(clashSchema),
  clashCount: z.number().int(),
  renamed: z.array(renamedSchema),
  renamedCount: z.number().int(),
});
export type MergedRecords = z.infer<typeof mergedRecordsSchema>;

/** What bringing another yard in comes to. */
export const mergedSchema = mergedRecordsSchema.extend({
  /** How many of its pictures do not come with it: their files were not found, or are damaged. */
  missingPictures: z.number().int(),
  /** How many come, of those whose files this yard lacks. */
  foundPictures: z.number().int(),
});
export type Merged = z.infer<typeof mergedSchema>;

/** More are not shown one by one: one answer holds for them. */
export const MOST_CLASHES_SHOWN = 200;
/** So many names that were taken are listed. */
export const MOST_RENAMED_SHOWN = 200;
/** So many names of a kind are listed. */
export const MOST_NAMES_TOLD = 8;
