import { mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import type { BoardToForecast, Forecaster } from '../../../electron/app/forecast/forecast-messages.ts';
import { createOwnThread } from '../../../electron/app/own-thread.ts';
import { threadSources } from '../../../electron/app/thread-files.ts';
import { DAY_MS } from '../../../shared-core/time.ts';
import { message } from '../../../shared-core/words/message.ts';

const forecasterOf = (script: string): Forecaster => createOwnThread(script);

const nowMs = Date.UTC(2026, 5, 1);
const air = Array.from({ length: 12 }, () => ({ tempC: 18, rh: 0.5 }));

const board = (boardId: number, sawnMs: number): BoardToForecast => ({
  boardId,
  family: 'one log',
  nowMs,
  board: {
    thicknessMm: 27,
    basicSpecificGravity: 0.5,
    start: { atMs: sawnMs, mcPct: null, logSd: 0.3, shellRatio: 1 },
    stays: [{ fromMs: sawnMs, air }],
  },
  readings: [{ atMs: nowMs - DAY_MS, depthFraction: 0.5, mcPct: 15, standardUncertaintyPct: 1 }],
  endUse: { minPct: 6, maxPct: 10, maxShellCorePct: 2 },
  elsewhere: [],
  placeId: 1,
  horizonDays: 30,
});

test('a board whose history does not hold together says so; the others get a forecast, and do not learn from it', async () => {
  const forecaster = forecasterOf(threadSources.forecast);
  const sound = board(1, nowMs - 100 * DAY_MS);
  // Read a day ago, entered as sawn today.
  const wrong = board(2, nowMs);
  const [first, second] = await forecaster.ask({ boards: [sound, wrong], boardIds: [1, 2] });
  expect(first).toMatchObject({ boardId: 1, made: { ok: true, value: { learnedFrom: 0 } } });
  expect(second).toEqual({
    boardId: 2,
    made: { ok: false, problem: message('forecast.none.reading-before-start') },
  });
  await forecaster.close();
});

test('a question that cannot be answered fails alone: the next one is answered', async () => {
  const forecaster = forecasterOf(threadSources.forecast);
  const sound = board(1, nowMs - 100 * DAY_MS);
  await expect(forecaster.ask({ boards: [sound], boardIds: [7] })).rejects.toThrow(
    /to be forecast and was not given/,
  );
  expect(await forecaster.ask({ boards: [sound], boardIds: [1] })).toHaveLength(1);
  await forecaster.close();
});

test('a thread that ends leaves no question waiting for ever', async () => {
  const script = join(mkdtempSync(join(tmpdir(), 'pintally-')), 'ends-at-once.mjs');
  writeFileSync(script, 'process.exit(1);');
  const forecaster = forecasterOf(script);
  await expect(forecaster.ask({ boards: [], boardIds: [] })).rejects.toThrow(/ended before it answered/);
  await expect(forecaster.ask({ boards: [], boardIds: [] })).rejects.toThrow(/ended before it answered/);
  await forecaster.close();
});

test('a question that is under way when Pintally closes is refused', async () => {
  const forecaster = forecasterOf(threadSources.forecast);
  const asked = forecaster.ask({ boards: [board(1, nowMs - 100 * DAY_MS)], boardIds: [1] });
  const refused = expect(asked).rejects.toMatchObject({ problem: { code: 'refusal.closing' } });
  await forecaster.close();
  await refused;
});
