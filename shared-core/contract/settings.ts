import { z } from 'zod';
import { labelPapersSchema, usualPapers } from '../labels/paper.ts';

/** `system`: as the computer is set, high contrast included. */
export const themeSchema = z.enum(['system', 'light', 'dark', 'high-contrast']);
export type Theme = z.infer<typeof themeSchema>;

export const settingsSchema = z.object({
  /** How lengths, thicknesses and temperatures are shown and typed; null: as in the computer's region. Inside, everything is SI. */
  units: z.enum(['metric', 'imperial']).nullable(),
  theme: themeSchema,
  /** A sound when a reading is saved. */
  sound: z.boolean(),
  /** Save a reading by itself when it settles; otherwise only Space saves it. */
  saveWhenSettled: z.boolean(),
  /** So many seconds after its last spot was read, a round goes on to the next board; null: it waits for a key. */
  nextBoardAfterS: z.union([z.literal(2), z.literal(5)]).nullable(),
  /** The sheets and rolls of labels that the person has. */
  labelPapers: labelPapersSchema,
  /** Of the yard or its owner, on sheets for buyers; may be blank. */
  nameOnPaper: z.string().trim().max(80),
});
export type Settings = z.infer<typeof settingsSchema>;

/** Those of a yard in which nothing was chosen yet. */
export const usualSettings: Settings = {
  units: null,
  theme: 'system',
  sound: true,
  saveWhenSettled: true,
  nextBoardAfterS: null,
  labelPapers: usualPapers,
  nameOnPaper: '',
};
