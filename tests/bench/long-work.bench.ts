/**
 * How long a reading that is typed in a round waits while labels of 2,000 boards are made, or 99,000 boards are moved.
 * Run: `npx node tests/bench/long-work.bench.ts`.
 */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import { createApp } from '../../electron/app/app.ts';
import { threadSources } from '../../electron/app/thread-files.ts';
import { openWindow } from '../unit/app/a-window.ts';
import { noMeter } from '../unit/app/no-meter.ts';
import { BOARDS, fillYard } from './filled-yard.ts';

const TYPED_EVERY_MS = 20;

const dataDir = mkdtempSync(join(tmpdir(), 'pintally-bench-'));
fillYard(join(dataDir, 'yard.sqlite'));
const app = createApp({
  dataDir,
  links: noMeter,
  threads: threadSources,
  // Not in the way of what is measured.
  forecastAfterMs: 3_600_000,
});
const { query, command } = openWindow(app);
await command('settings.edit', { sound: true });
const shed = await command('places.add', {
  name: 'Shed',
  kind: 'open-shed',
  air: Array.from({ length: 12 }, () => ({ tempC: 12, rh: 0.7 })),
});
const { id: roundId, boards } = await command('rounds.start', { stackId: 7, woodTempC: 15 });
// The round goes on with its own.
const inRound = new Set(boards.map(({ boardId }) => boardId));
const boardIds = Array.from({ length: BOARDS }, (_, index) => index + 1).filter((id) => !inRound.has(id));
let typed = 0;

await whileTyping('nothing else', () => pause(1000));
await whileTyping('labels.pdf of 2,000 labels', () =>
  query('labels.pdf', {
    boardIds: boardIds.slice(0, 2000),
    paperId: 'sheet',
    used: 0,
    region: { locale: 'en-US', timeZone: 'America/Chicago' },
  }),
);
await whileTyping('boards.move of 99,000 boards', () =>
  command('boards.move', { boardIds, placeId: shed.id, since: new Date().toISOString() }),
);
await app.close();
rmSync(dataDir, { recursive: true });

/** Types readings one after another while it lasts, and says how long it took and how long a reading waited at most. */
async function whileTyping(what: string, work: () => Promise<unknown>): Promise<void> {
  const waits: number[] = [];
  const start = performance.now();
  // A machine that is held up does not even take the reading: that counts.
  let dueMs = start;
  let isDone = false;
  const working = work().finally(() => {
    isDone = true;
  });
  do {
    await command('rounds.saveTyped', {
      roundId,
      boardId: boards[typed++]!.boardId,
      spotIndex: 0,
      newestReadingId: null,
      raw: 12.4,
    });
    waits.push(performance.now() - dueMs);
    dueMs = performance.now() + TYPED_EVERY_MS;
    await pause(TYPED_EVERY_MS);
  } while (!isDone && typed < boards.length);
  await working;
  const took = performance.now() - start;
  console.log(
    `${what.padEnd(34)} ${took.toFixed(0).padStart(7)} ms; ${waits.length} readings waited at most ${Math.max(...waits).toFixed(0)} ms`,
  );
}
