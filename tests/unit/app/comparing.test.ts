/** When a round is compared whose boards are done one after the other. What a comparison finds is in `round.test.ts`. */
import { setTimeout as pause } from 'node:timers/promises';
import { expect, test } from 'vitest';
import type { AppContext } from '../../../electron/app/context.ts';
import type { Assessing } from '../../../electron/app/judging/assessing.ts';
import { createComparing, type RoundThread } from '../../../electron/app/judging/comparing.ts';
import type { Judging } from '../../../electron/app/judging/judging.ts';
import { createSignal } from '../../../electron/app/signal.ts';

const TAKES_MS = 30;

test('after each comparison the round rests three times as long, then what was done meanwhile is compared', async () => {
  let done = 0;
  const compared: { atMs: number; boards: number }[] = [];
  const { compareSoon } = createComparing(
    {
      yard: () => ({
        comparisons: { begin: () => undefined, questionableBoards: () => [], settle: () => true },
        readings: { boardsCompared: () => Array.from({ length: done }, (_, id) => id) },
        transaction: <T>(work: () => T) => work(),
      }),
      changed: () => undefined,
      delays: { end: () => undefined },
    } as unknown as AppContext,
    { boardOfRound: () => ({}) } as unknown as Assessing,
    { caughtUp: createSignal() } as unknown as Judging,
    {
      ask: async (boards: unknown[]) => {
        compared.push({ atMs: performance.now(), boards: boards.length });
        await pause(TAKES_MS);
        return boards.map(() => []);
      },
    } as unknown as RoundThread,
  );

  while (compared.length < 3) {
    done++;
    compareSoon(1);
    await pause(2);
  }
  await expect.poll(() => compared.at(-1)?.boards).toBe(done);

  const apartMs = compared.slice(1).map(({ atMs }, index) => atMs - compared[index]!.atMs);
  // A timer may come a millisecond early.
  expect(Math.min(...apartMs)).toBeGreaterThan(4 * TAKES_MS - 4);
});
