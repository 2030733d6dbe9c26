import { cpSync } from 'node:fs';
import { join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import type { EventData } from '../../shared-core/contract/events.ts';
import { type Fault, tryOften } from './fault.ts';
import { inFolder } from './folders.ts';
import { Ledger, type SavedReading } from './ledger.ts';
import { inApp } from './opened.ts';
import { type Random, wholeBetween } from './random.ts';
import { ShimmedHost } from './shimmed-host.ts';
import type { SocketWindow } from './socket-window.ts';
import {
  type AnyWindow,
  type AskedReading,
  addStack,
  askToSave,
  boardIdsOf,
  readingsOf,
  startRound,
  stream,
} from './streaming.ts';

const BOARDS = 100;
/** A value settles some two seconds after the pins go in; one kill of so many waits for that. */
const ONE_WAITS_OF = 12;

/**
 * The host is killed while one window types readings as fast as it can and another has a meter that streams. The next
 * start must hold every reading that a window was told is saved, once, and take up where the first ended.
 */
export const killsWhileStreaming: Fault = (howMany, seed) =>
  inFolder(async (yards) => {
    // Half of them begin on a yard with readings in it, and so with more to write at a checkpoint.
    const begun = [
      { yard: join(yards, 'empty'), saved: await prepare(join(yards, 'empty'), 0) },
      { yard: join(yards, 'read'), saved: await prepare(join(yards, 'read'), 150) },
    ] as const;
    return tryOften(howMany, seed, 2, (random, mine) =>
      inFolder(async (folder) => {
        const data = join(folder, 'data');
        const { yard, saved } = mine % 2 === 0 ? begun[0] : begun[1];
        cpSync(yard, data, { recursive: true });
        return killOnce(data, random, mine % ONE_WAITS_OF === ONE_WAITS_OF - 1, new Ledger(saved));
      }),
    );
  });

/** @returns what is saved in it */
async function prepare(folder: string, toRead: number): Promise<SavedReading[]> {
  const ledger = new Ledger();
  await inApp(folder, async ({ window }) => {
    const typed = await addStack(window, 'Typed', BOARDS);
    await addStack(window, 'Metered', 3);
    if (toRead === 0) return;
    const roundId = await startRound(window, typed.stackId);
    await stream(window, readingsOf(roundId, typed.boardIds, 8).slice(0, toRead), ledger);
    await window.command('rounds.finish', { roundId });
  });
  return ledger.saved();
}

async function killOnce(
  data: string,
  random: Random,
  waitsForMeter: boolean,
  ledger: Ledger,
): Promise<string[]> {
  const host = new ShimmedHost(data);
  const typing = await host.window();
  const stacks = await typing.query('stacks.list', {});
  const idOf = (name: string): number => stacks.find((stack) => stack.name === name)?.id ?? 0;
  await probeWithMeter(await host.window(), idOf('Metered'), ledger);
  const roundId = await startRound(typing, idOf('Typed'));
  const boardIds = await boardIdsOf(typing, idOf('Typed'));

  const isByClock = waitsForMeter || random() < 0.4;
  const afterMs = waitsForMeter ? 2000 + 1500 * random() : 400 * random();
  if (!isByClock) host.disk.set({ killIn: wholeBetween(random, 1, 3000) });
  const killed = isByClock ? pause(afterMs).then(() => host.kill()) : null;
  const unheardOf = await stream(typing, readingsOf(roundId, boardIds, 10), ledger);
  // Where everything was read before the kill came, it comes now.
  await (killed ?? host.kill());

  return inApp(data, async ({ window }) => [
    ...(await ledger.differences(window)),
    ...(await sendAgain(window, unheardOf, ledger)),
  ]);
}

/** Sends again what nobody answered, as a window does that connects again: it must be saved once. */
export async function sendAgain(
  window: AnyWindow,
  unheardOf: readonly AskedReading[],
  ledger: Ledger,
): Promise<string[]> {
  const refused: string[] = [];
  for (const asked of unheardOf) {
    const answer = await askToSave(window, asked);
    if (answer.ok) ledger.save(asked.reading);
    else refused.push(`sent again, ${asked.reading.raw}% was refused: ${answer.problem.code}`);
  }
  return [...refused, ...(await ledger.differences(window))];
}

/**
 * A window with the simulated meter, which reads boards and saves what settles.
 * @returns the round
 */
export async function probeWithMeter(window: SocketWindow, stackId: number, ledger: Ledger): Promise<number> {
  window.on('round.changed', ({ savedReadingId, board }: EventData<'round.changed'>) => {
    const reading = board.assessment?.readings.find(({ id }) => id === savedReadingId);
    if (reading !== undefined && reading.spotIndex !== null)
      ledger.save({ ...reading, spotIndex: reading.spotIndex });
  });
  await window.command('meter.simulate', {});
  await window.command('meter.hold', {});
  const roundId = await startRound(window, stackId);
  await window.command('rounds.open', { roundId });
  return roundId;
}
