import { join } from 'node:path';
import { type App, createApp } from '../../electron/app/app.ts';
import { threadSources } from '../../electron/app/thread-files.ts';
import { type RequestName, requests } from '../../shared-core/contract/requests.ts';
import { type Message, messageSchema } from '../../shared-core/words/message.ts';
import { type AWindow, openWindow, say } from '../unit/app/a-window.ts';
import { noMeter } from '../unit/app/no-meter.ts';
import type { AnyWindow } from './streaming.ts';

/** The app on a folder, in this process, with one window. */
export interface Opened {
  app: App;
  window: AWindow;
  /** Faults that it reported, by what they say. */
  faults: string[];
}

/**
 * Opens a folder after a fault, as the next start of the app does.
 *
 * @param verifyAfterMs  when every reading is compared with its checksum; long after what most faults wait for
 */
export async function inApp<T>(
  folder: string,
  work: (opened: Opened) => Promise<T>,
  verifyAfterMs = 600_000,
): Promise<T> {
  const faults: string[] = [];
  const app = createApp({
    dataDir: folder,
    links: noMeter,
    threads: threadSources,
    verifyAfterMs,
    reportFault: (error) => faults.push(String(error)),
    // Nothing here waits for forecasts.
    forecastAfterMs: 600_000,
  });
  try {
    return await work({ app, window: openWindow(app), faults });
  } finally {
    await app.close();
  }
}

/** Every sentence in an answer, wherever it is. */
export function sentencesIn(value: unknown): string[] {
  if (value === null || typeof value !== 'object') return [];
  const found = messageSchema.safeParse(value);
  if (found.success) return [say(found.data as Message)];
  return Object.values(value).flatMap(sentencesIn);
}

/** What the app says about the yard that is open, wherever it says so: what is wrong, what was done about it. */
export async function saidOfYard(window: AnyWindow): Promise<string[]> {
  const answers = await Promise.all(
    ofYard.map((name) => window.answer(name, {}).then((answer) => (answer.ok ? answer.output : null))),
  );
  return sentencesIn(answers);
}

const ofYard = Object.entries(requests)
  .filter(([name, { kind }]) => /^(yard|recovery)\./.test(name) && kind === 'query')
  .map(([name]) => name as RequestName);

export const yardFileIn = (folder: string): string => join(folder, 'yard.sqlite');
