import { z } from 'zod';
import { labelLayoutSchema } from '../labels/sheet.ts';

export const settingsSchema = z.object({
  /** How lengths, thicknesses and temperatures are shown and typed. Inside, everything is SI. */
  units: z.enum(['metric', 'imperial']),
  /** A sound when a reading is kept. */
  sound: z.boolean(),
  /** Keep a reading by itself when it settles; otherwise only Space takes it. */
  saveWhenSettled: z.boolean(),
  /** A sheet of many labels, and a page of one for a label printer. */
  labelLayouts: z.object({ sheet: labelLayoutSchema, single: labelLayoutSchema }),
});
export type Settings = z.infer<typeof settingsSchema>;
