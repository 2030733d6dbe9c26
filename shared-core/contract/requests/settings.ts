import { command, nothingSchema, query } from '../request-kinds.ts';
import { settingsSchema } from '../settings.ts';

export const settingRequests = {
  'settings.get': query({ input: nothingSchema, output: settingsSchema, topics: () => ['settings'] }),
  'settings.save': command({ input: settingsSchema, output: settingsSchema, topics: () => ['settings'] }),
};
