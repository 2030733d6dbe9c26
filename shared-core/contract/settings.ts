import { z } from 'zod';
import { noPedalKeys, pedalKeysSchema } from '../hands-free/pedal-keys.ts';
import { soundLevels } from '../hands-free/sounds.ts';
import { voicePaces } from '../hands-free/spoken.ts';
import { labelPapersSchema, usualPapers } from '../labels/paper.ts';
import { languages } from '../words/languages.ts';

/** `system`: as the computer is set, high contrast included. */
export const themeSchema = z.enum(['system', 'light', 'dark', 'high-contrast']);
export type Theme = z.infer<typeof themeSchema>;

export const settingsSchema = z.object({
  /** In which language a person reads and hears Pintally; null: in the computer's. */
  language: z.enum(languages).nullable(),
  /** How lengths, thicknesses and temperatures are shown and typed; null: as in the computer's region. Inside, everything is SI. */
  units: z.enum(['metric', 'imperial']).nullable(),
  theme: themeSchema,
  /** Whether a round tells by sounds what happens, and how loud they are. */
  sound: z.boolean(),
  soundLevel: z.enum(soundLevels),
  /** Whether a voice says values, spots and boards, and how fast; only where the computer has one. */
  voice: z.enum(['off', ...voicePaces]),
  /** Save a reading by itself when it settles; otherwise only Space saves it. */
  saveWhenSettled: z.boolean(),
  /** So many seconds after its last spot was read, a round goes on to the next board, 0 at once; null: it waits for a key. */
  nextBoardAfterS: z.union([z.literal(0), z.literal(2), z.literal(5)]).nullable(),
  /** What a pedal or a presenter sends. */
  pedalKeys: pedalKeysSchema,
  /** The sheets and rolls of labels that the person has. */
  labelPapers: labelPapersSchema,
  /** Of the yard or its owner, on sheets for buyers; may be blank. */
  nameOnPaper: z.string().trim().max(80),
});
export type Settings = z.infer<typeof settingsSchema>;

/** Those of a yard in which nothing was chosen yet. */
export const usualSettings: Settings = {
  language: null,
  units: null,
  theme: 'system',
  sound: true,
  soundLevel: 'normal',
  voice: 'off',
  saveWhenSettled: true,
  nextBoardAfterS: null,
  pedalKeys: noPedalKeys,
  labelPapers: usualPapers,
  nameOnPaper: '',
};
