import { z } from 'zod';
import { type Board, boardRowSchema, moveSchema } from './yard.ts';

/** What two records of one board can differ in; the fields of one part go together. */
const FIELDS = {
  species: ['speciesId'],
  thickness: ['thicknessMm', 'thicknessQuarters'],
  width: ['widthMm'],
  length: ['lengthMm'],
  'sawn-on': ['sawnOn'],
  'dried-by': ['driedBy'],
  sawing: ['sawing'],
  'ring-radius': ['ringRadiusMm'],
  'bark-side': ['barkSide', 'barkOffOn'],
  log: ['log'],
  stack: ['stackId', 'layer', 'column'],
} as const satisfies Readonly<Record<string, readonly (keyof Board)[]>>;

export const boardPartSchema = z.enum(Object.keys(FIELDS) as [BoardPart, ...BoardPart[]]);
export type BoardPart = keyof typeof FIELDS;

/** Of which record a part comes: of the one that stays, or of the other. */
export const recordSchema = z.enum(['own', 'other']);
export type WhichRecord = z.infer<typeof recordSchema>;
/** The same of what can be of both. */
export const recordsSchema = z.enum([...recordSchema.options, 'both']);
export type WhichRecords = z.infer<typeof recordsSchema>;

/** One record of a board that was entered twice. */
export const twiceRecordSchema = z.object({
  board: boardRowSchema,
  /** Oldest first. */
  moves: z.array(moveSchema),
  /** The use of its stack. */
  endUseName: z.string(),
  /** What it is reserved for; null for nothing. */
  projectName: z.string().nullable(),
  /** Taken of it, excluded ones too. */
  readings: z.number().int().nonnegative(),
});
export type TwiceRecord = z.infer<typeof twiceRecordSchema>;

/** Where a field says no more than that nobody knows. */
const UNKNOWN: ReadonlySet<unknown> = new Set([null, '', 'unknown']);

const differing = (part: BoardPart, own: Board, other: Board): readonly (keyof Board)[] =>
  FIELDS[part].filter((field) => own[field] !== other[field]);

/** The parts in which two records differ. */
export const partsThatDiffer = (own: Board, other: Board): BoardPart[] =>
  boardPartSchema.options.filter((part) => differing(part, own, other).length > 0);

/** The record that knows a part in which they differ, the one that stays first. */
export const knownBy = (part: BoardPart, own: Board, other: Board): WhichRecord =>
  differing(part, own, other).every((field) => UNKNOWN.has(own[field])) ? 'other' : 'own';

/** What the record that stays is changed to, so that it has these parts of the other. */
export function partsTaken(other: Board, parts: readonly BoardPart[]): Partial<Board> {
  return Object.fromEntries(parts.flatMap((part) => FIELDS[part].map((field) => [field, other[field]])));
}

/** A blank line between. */
const BETWEEN_NOTES = '\n\n';

/** The notes of both, each once. */
export function noteOf(which: WhichRecords, own: string, other: string): string {
  if (which !== 'both') return which === 'own' ? own : other;
  const all = new Set([own.trim(), other.trim()].filter((note) => note !== ''));
  return [...all].join(BETWEEN_NOTES);
}

type Stay = { placeId: number; since: string };

/**
 * The moves of two records that count for one board, in the order of their days. Of both, one to where it is already
 * counts as none.
 */
export function movesOf<M extends Stay>(which: WhichRecords, own: readonly M[], other: readonly M[]): M[] {
  if (which !== 'both') return [...(which === 'own' ? own : other)];
  return [...own, ...other]
    .toSorted((a, b) => Date.parse(a.since) - Date.parse(b.since))
    .filter((move, index, all) => move.placeId !== all[index - 1]?.placeId);
}

/** Whether they were in the same places at the same times. */
export const isSameMoves = (own: readonly Stay[], other: readonly Stay[]): boolean =>
  own.length === other.length &&
  own.every(({ placeId, since }, index) => {
    const move = other[index];
    return placeId === move?.placeId && Date.parse(since) === Date.parse(move.since);
  });

/** So much thicker may be how it was measured, mm. */
const MEASURED_WITHIN_MM = 2;

/** In what two records differ that one board hardly can. */
export function hardlyOneBoard(own: Board, other: Board): ('species' | 'thickness')[] {
  return [
    ...(own.speciesId === other.speciesId ? [] : (['species'] as const)),
    ...(Math.abs(own.thicknessMm - other.thicknessMm) <= MEASURED_WITHIN_MM ? [] : (['thickness'] as const)),
  ];
}
