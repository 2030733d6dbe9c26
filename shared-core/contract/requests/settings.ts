import { command, nothingSchema, query } from '../request-kinds.ts';
import { settingsSchema } from '../settings.ts';

export const settingRequests = {
  'settings.get': query({ input: nothingSchema, output: settingsSchema, topics: () => ['settings'] }),
  /** Changes only the settings given. */
  'settings.edit': command({
    input: settingsSchema.partial(),
    output: settingsSchema,
    topics: () => ['settings'],
  }),
};
