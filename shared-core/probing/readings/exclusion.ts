import { z } from 'zod';

/** The usual reasons to exclude a reading of the meter. */
export const readingReasons = ['pins-shallow', 'defect', 'wet-face', 'wrong-spot', 'typing-slip'] as const;

/** Reasons that the program knows; each has its words in the catalog, as `exclusion.…`. */
const byCode = z.object({
  code: z.enum([
    /** The program's own: the person undid the reading during the round. */
    'undone-in-round',
    /** Likewise: another reading took its place. */
    'replaced',
    /** Likewise: the act that it came with was undone. It is included by redoing that. */
    'undone',
    /** Likewise: it came from another board, and that is not so any more. */
    'unmoved',
    /** The disk damaged whether it is excluded: it is until a person includes it. */
    'damaged',
    ...readingReasons,
    // For what was weighed.
    'wrong-board',
    'wrong-piece',
    'wet-with-rain',
    // For an oven-dry check.
    'knot',
    'read-frozen',
    'resin-lost',
    // For a check of a meter.
    'not-on-block',
  ]),
});

/** A reading that a person moved to another board: `to` is the UUID of the reading that it is there. */
const movedSchema = z.object({ code: z.literal('moved'), to: z.uuid() });
export type ExclusionCode = z.infer<typeof byCode>['code'];

/** Why something measured is left out: a reason that the program knows, or what a person wrote. */
export const exclusionSchema = z.union([byCode, movedSchema, z.object({ text: z.string() })]);
export type Exclusion = z.infer<typeof exclusionSchema>;

const MOVED_AWAY = ['moved', 'unmoved'];
const isOneOf = (excluded: Exclusion | null, codes: readonly string[]): boolean =>
  excluded !== null && 'code' in excluded && codes.includes(excluded.code);

/** Whether a person moved a reading to another board. */
export const isMoved = (excluded: Exclusion | null): boolean => isOneOf(excluded, ['moved']);

/** Whether a reading is another board's: it is included there, or not at all. */
export const isMovedAway = (excluded: Exclusion | null): boolean => isOneOf(excluded, MOVED_AWAY);

/** Whether the program excluded it because it was undone, replaced or moved: a slip, as if it had never been measured. */
export const isSlip = (excluded: Exclusion | null): boolean =>
  isOneOf(excluded, ['undone-in-round', 'replaced', 'undone', ...MOVED_AWAY]);

/** The same as a person gives it. */
export const givenExclusionSchema = z.union([byCode, z.object({ text: z.string().trim().min(1).max(200) })]);
export type GivenExclusion = z.infer<typeof givenExclusionSchema>;
