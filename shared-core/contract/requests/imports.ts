import { z } from 'zod';
import { messageSchema } from '../../words/message.ts';
import {
  columnChoiceSchema,
  dayOrderSchema,
  importChoicesSchema,
  importKindSchema,
  MOST_CELL_LETTERS,
} from '../import.ts';
import { command, ofWindow } from '../request-kinds.ts';
import { workSchema } from './work.ts';

/** What a table is read by where it leaves it open. */
const readerSchema = z.object({
  units: z.enum(['metric', 'imperial']),
  /** In which the person writes dates. */
  order: dayOrderSchema,
});

const guessedSchema = z.object({
  kind: importKindSchema,
  headerRow: z.number().int().min(0).nullable(),
  decimalMark: z.enum(['.', ',']),
  columns: z.array(columnChoiceSchema),
});

/** A row as the table has it; rows are counted from 0. */
const rowSchema = z.object({ row: z.number().int().min(0), cells: z.array(z.string()) });
const refusedRowSchema = rowSchema.extend({
  problems: z.array(z.object({ column: z.number().int().min(0).nullable(), problem: messageSchema })),
});
export type RefusedTableRow = z.infer<typeof refusedRowSchema>;
const missedSchema = z.object({ name: z.string().max(MOST_CELL_LETTERS), rows: z.number().int() });

/** What goes in, or went in. */
export const importCountsSchema = z.object({
  places: z.number().int(),
  stacks: z.number().int(),
  boards: z.number().int(),
  readings: z.number().int(),
  /** Dated values of the air of places. Acts of earlier versions do not have them. */
  airValues: z.number().int().default(0),
  ovenChecks: z.number().int(),
});
export type ImportCounts = z.infer<typeof importCountsSchema>;

/** So many rows that do not go in are shown at a time. */
export const MOST_REFUSED_SHOWN = 200;

const guessedTableSchema = z.object({
  guessed: guessedSchema,
  /** Names of the columns by the header, or blank. */
  heads: z.array(z.string()),
  /** The first rows below the header. */
  sample: z.array(rowSchema),
});

/**
 * A table that a person brings: read, then checked as often as they change how it is read, then saved as one act.
 * Each window has one at a time.
 */
export const importRequests = {
  /** Reads a file that was uploaded, or what was pasted. */
  'imports.read': ofWindow(
    command({
      input: readerSchema.extend({ file: z.string().max(4000), work: workSchema }),
      output: guessedTableSchema.extend({
        table: z.uuid(),
        rows: z.number().int(),
        /** Its boards were columns, or its lists side by side; they are rows, or below each other, now. */
        reshaped: z.enum(['turned', 'below']).nullable(),
      }),
      topics: () => [],
    }),
  ),
  /** Guesses the columns again where a person chose the kind, the header or the decimal mark. */
  'imports.guess': ofWindow(
    command({
      input: readerSchema.extend({
        table: z.uuid(),
        ...importChoicesSchema.pick({ kind: true, headerRow: true, decimalMark: true }).shape,
      }),
      output: guessedTableSchema,
      topics: () => [],
    }),
  ),
  'imports.check': ofWindow(
    command({
      input: z.object({
        table: z.uuid(),
        choices: importChoicesSchema,
        /** How many of the rows that do not go in come before those that are shown. */
        refusedFrom: z.number().int().min(0).default(0),
      }),
      output: z.object({
        /** To be saved by. */
        plan: z.uuid(),
        counts: importCountsSchema,
        /** Readings of the table that the yard has. */
        knownReadings: z.number().int(),
        rows: z.number().int(),
        leftOut: z.number().int(),
        /** Boards of the yard that the table gives another species or thickness. */
        otherInYard: z.number().int(),
        refused: z.number().int(),
        /** Those of them that are shown. */
        refusedRows: z.array(refusedRowSchema),
        problems: z.array(messageSchema),
        remarks: z.array(messageSchema),
        /** Whether boards were moved on a day of their readings, and the day alone does not tell which came first. */
        isOrderAsked: z.boolean(),
        /** The first rows that go in, as they were read. */
        firstRows: z.array(messageSchema),
        /** Names of species and what each was taken for; those to be chosen come first. */
        speciesNames: z.array(missedSchema.extend({ speciesId: z.string().nullable() })),
        unknownPlaces: z.array(missedSchema),
      }),
      topics: () => [],
    }),
  ),
  /** Saves all that was checked. Where the same was saved before and undone since, that is restored. */
  'imports.save': command({
    input: z.object({
      plan: z.uuid(),
      /** What the person calls the file; null for pasted cells. */
      fileName: z.string().max(260).nullable().default(null),
      work: workSchema,
    }),
    output: z.object({
      act: z.uuid(),
      fileName: z.string().nullable(),
      counts: importCountsSchema,
      /** What was imported, by its hash. */
      content: z.string(),
      isRestored: z.boolean(),
    }),
    topics: () => ['yard'],
  }),
};
