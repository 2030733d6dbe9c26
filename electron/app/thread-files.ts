import { join } from 'node:path';

/** The threads' files in a folder: built (`js`), or as they are written, which Node runs too (`ts`). */
export const threadFiles = (folder: string, ending: 'js' | 'ts') => ({
  check: join(folder, `check-worker.${ending}`),
  forecast: join(folder, `forecast-worker.${ending}`),
  round: join(folder, `round-worker.${ending}`),
});
export type ThreadFiles = ReturnType<typeof threadFiles>;
