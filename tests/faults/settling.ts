import { mkdirSync } from 'node:fs';
import { setTimeout as pause } from 'node:timers/promises';
import type { Message } from '../../shared-core/words/message.ts';
import { say } from '../unit/app/a-window.ts';
import { FOREVER } from './disk-shim.ts';
import { probeWithMeter } from './kills-while-streaming.ts';
import { Ledger } from './ledger.ts';
import { inApp } from './opened.ts';
import { oneOf, type Random, wholeBetween } from './random.ts';
import { ShimmedHost } from './shimmed-host.ts';
import type { SocketWindow } from './socket-window.ts';
import { addStack } from './streaming.ts';

/** A simulated value settles within some three seconds; on a busy computer later. */
const SETTLES_WITHIN_MS = 30_000;

/**
 * Values settle while the disk fails, and nobody is there to be answered: the window hears of each whether it was saved,
 * and Space saves it once the disk works again.
 */
export async function settleOnFailingDisk(
  data: string,
  random: Random,
  failure: { kinds: number; error: number },
): Promise<string[]> {
  mkdirSync(data);
  const host = new ShimmedHost(data);
  const window = await host.window();
  const { stackId, boardIds } = await addStack(window, 'Metered', 4);
  const ledger = new Ledger();
  const notSaved: Message[] = [];
  const delayed: Message[] = [];
  window.on('round.notSaved', ({ problem }) => notSaved.push(problem));
  window.on('updates.delayed', ({ problem }) => problem !== null && delayed.push(problem));
  host.disk.set({ ...failure, passFirst: 1_000_000, failFor: FOREVER });
  const roundId = await probeWithMeter(window, stackId, ledger);
  await until(() => ledger.saved().length > 0);
  host.disk.set({ passFirst: wholeBetween(random, 0, 40) });
  await until(() => notSaved.length + delayed.length > 0);
  const lost: string[] = [];
  if (notSaved.length + delayed.length === 0) lost.push('no sentence came while the disk failed');
  if (delayed.length === 0 && (await readingsIn(window, boardIds)) > ledger.saved().length)
    lost.push('a value is saved of which the window was told that it is not');
  lost.push(
    ...[...notSaved, ...delayed]
      .map((problem) => say(problem))
      .filter((sentence) => sentence.includes('Something went wrong'))
      .map((sentence) => `a failing disk was not named: ${sentence}`),
  );

  host.disk.set({ kinds: 0, failFor: 0 });
  if (notSaved.length > 0) lost.push(...(await pressSpace(window, roundId, boardIds)));
  await window.command('meter.disconnect', {});
  lost.push(...(await ledger.differences(window)));
  await oneOf(random, [() => host.kill(), () => host.stop()])();
  return [...lost, ...(await inApp(data, ({ window: next }) => ledger.differences(next)))];
}

async function pressSpace(
  window: SocketWindow,
  roundId: number,
  boardIds: readonly number[],
): Promise<string[]> {
  const before = await readingsIn(window, boardIds);
  const { aim } = await window.query('rounds.get', { roundId });
  const spot = { roundId, boardId: aim?.boardId, spotIndex: aim?.spotIndex, newestReadingId: null };
  const answer = await window.answer('rounds.saveLive', spot);
  if (!answer.ok) return [`the disk works again, and Space saves nothing: ${say(answer.problem)}`];
  return (await readingsIn(window, boardIds)) > before ? [] : ['Space was answered, and nothing is saved'];
}

async function readingsIn(window: SocketWindow, boardIds: readonly number[]): Promise<number> {
  const boards = await Promise.all(boardIds.map((id) => window.query('boards.get', { id })));
  return boards.flatMap(({ readings }) => readings).length;
}

async function until(isSo: () => boolean): Promise<void> {
  const giveUpAt = performance.now() + SETTLES_WITHIN_MS;
  while (!isSo() && performance.now() < giveUpAt) await pause(20);
}
