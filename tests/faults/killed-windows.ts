import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import { type Fault, tryOften } from './fault.ts';
import { inFolder } from './folders.ts';
import { probeWithMeter, sendAgain } from './kills-while-streaming.ts';
import { Ledger } from './ledger.ts';
import { inApp } from './opened.ts';
import { ShimmedHost } from './shimmed-host.ts';
import type { SocketWindow } from './socket-window.ts';
import { addStack, readingsOf, startRound, stream } from './streaming.ts';

/** Long enough for many of the readings to be answered, too short for all. */
const KILLED_WITHIN_MS = 60;

/**
 * A window that types ends in the middle of saving, and so does the one that holds the meter. The host goes on; what they
 * heard is saved is there, and what a new window sends again of the rest is saved once.
 */
export const killedWindows: Fault = (howMany, seed) =>
  tryOften(howMany, seed, 2, (random) =>
    inFolder(async (folder) => {
      const data = join(folder, 'data');
      mkdirSync(data);
      const host = new ShimmedHost(data);
      const typing = await host.window();
      const typed = await addStack(typing, 'Typed', 30);
      const metered = await addStack(typing, 'Metered', 2);
      const roundId = await startRound(typing, typed.stackId);
      const holder = await host.window();
      await probeWithMeter(holder, metered.stackId, new Ledger());

      const ledger = new Ledger();
      const killed = pause(KILLED_WITHIN_MS * random()).then(() => {
        typing.kill();
        holder.kill();
      });
      const unheardOf = await stream(typing, readingsOf(roundId, typed.boardIds, 10), ledger);
      await killed;
      if (host.hasEnded()) return ['the process ended'];

      const next = await host.window();
      const lost = [...(await ledger.differences(next)), ...(await sendAgain(next, unheardOf, ledger))];
      if (!(await isFreeSoon(next))) lost.push('the meter still belongs to the window that is gone');
      await host.kill();
      return [...lost, ...(await inApp(data, ({ window }) => ledger.differences(window)))];
    }),
  );

async function isFreeSoon(window: SocketWindow): Promise<boolean> {
  for (const giveUpAt = performance.now() + 5000; performance.now() < giveUpAt; await pause(50)) {
    if ((await window.query('meter.state', {})).heldBy === 'nobody') return true;
  }
  return false;
}
