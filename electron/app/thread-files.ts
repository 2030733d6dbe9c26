import { join } from 'node:path';

/** The threads' files as they are written: Node runs them too, in tests and benches. */
export const threadSources = {
  backup: join(import.meta.dirname, 'yard/backup-worker.ts'),
  check: join(import.meta.dirname, 'yard/check-worker.ts'),
  exchange: join(import.meta.dirname, '../exchange/exchange-worker.ts'),
  forecast: join(import.meta.dirname, 'forecast/forecast-worker.ts'),
  import: join(import.meta.dirname, 'importing/import-worker.ts'),
  labels: join(import.meta.dirname, 'stock/labels-worker.ts'),
  reports: join(import.meta.dirname, 'reports/reports-worker.ts'),
  pictures: join(import.meta.dirname, 'pictures/pictures-worker.ts'),
  round: join(import.meta.dirname, 'judging/round-worker.ts'),
  shapes: join(import.meta.dirname, 'stock/shapes-worker.ts'),
  salvage: join(import.meta.dirname, 'yard/salvage-worker.ts'),
};
export type ThreadFiles = typeof threadSources;

/** The same files as they are built, side by side in one folder. */
export const builtThreads = (folder: string): ThreadFiles => ({
  backup: join(folder, 'backup-worker.js'),
  check: join(folder, 'check-worker.js'),
  exchange: join(folder, 'exchange-worker.js'),
  forecast: join(folder, 'forecast-worker.js'),
  import: join(folder, 'import-worker.js'),
  labels: join(folder, 'labels-worker.js'),
  reports: join(folder, 'reports-worker.js'),
  pictures: join(folder, 'pictures-worker.js'),
  round: join(folder, 'round-worker.js'),
  shapes: join(folder, 'shapes-worker.js'),
  salvage: join(folder, 'salvage-worker.js'),
});
