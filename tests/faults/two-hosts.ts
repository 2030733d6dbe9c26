import { randomUUID } from 'node:crypto';
import { linkSync, mkdirSync, rmSync, symlinkSync } from 'node:fs';
import { join } from 'node:path';
import { type Fault, tryOften } from './fault.ts';
import { inFolder } from './folders.ts';
import { Ledger, type SavedReading } from './ledger.ts';
import { yardFileIn } from './opened.ts';
import { oneOf, type Random } from './random.ts';
import { ShimmedHost } from './shimmed-host.ts';
import type { SocketWindow } from './socket-window.ts';
import { addStack, askToSave, readingsOf, startRound, stream } from './streaming.ts';

/** How a second host comes to the yard file in `data` that the first has open. @returns its data folder */
const ways: Record<string, (data: string, other: string) => string> = {
  'same folder': (data) => data,
  'folder by another name': (data, other) => {
    symlinkSync(data, other);
    return other;
  },
  'file by another name': (data, other) => {
    mkdirSync(other);
    symlinkSync(yardFileIn(data), yardFileIn(other));
    return other;
  },
  'hard link': (data, other) => {
    mkdirSync(other);
    linkSync(yardFileIn(data), yardFileIn(other));
    return other;
  },
  'lock file deleted': (data) => {
    rmSync(`${yardFileIn(data)}-lock`);
    return data;
  },
};
const names = [...Object.keys(ways), 'at once'];

/** Of two hosts on the same yard file one has it and the other says why it has not; the one after them opens all. */
export const twoHosts: Fault = (howMany, seed) =>
  tryOften(howMany, seed, 2, (random, mine) =>
    inFolder(async (folder) => {
      const name = names[mine % names.length] as string;
      const way = ways[name];
      const data = join(folder, 'data');
      mkdirSync(data);
      const first = new ShimmedHost(data);
      const lost =
        way === undefined
          ? await bothAtOnce(first, new ShimmedHost(data))
          : await oneAfterTheOther(first, () => way(data, join(folder, 'other')), random);
      return lost.map((loss) => `${name}: ${loss}`);
    }),
  );

async function oneAfterTheOther(
  first: ShimmedHost,
  comeAgain: () => string,
  random: Random,
): Promise<string[]> {
  const window = await first.window();
  const ledger = new Ledger();
  const { stackId, boardIds } = await addStack(window, 'Typed', 4);
  const roundId = await startRound(window, stackId);
  const readings = readingsOf(roundId, boardIds, 10);
  await stream(window, readings.slice(0, 8), ledger);

  const other = comeAgain();
  const second = new ShimmedHost(other);
  const secondWindow = await second.window();
  const info = await secondWindow.query('yard.info', {});
  const lost: string[] = [];
  if (info.uuid === null && info.problem === null) lost.push('the second does not say why it opens nothing');
  const byFirst = await saveAll(window, readings.slice(8, 12), ledger);
  const bySecond = info.uuid === null ? 0 : await saveAll(secondWindow, readings.slice(12), ledger);
  if (byFirst > 0 && info.uuid !== null) lost.push('both hosts have the file open');
  if (byFirst === 0 && bySecond === 0) lost.push('no host can write to the file');
  await second.kill();
  await oneOf(random, [() => first.kill(), () => first.stop()])();
  // A file with two names is opened by none of them.
  if (other !== first.folder) rmSync(other, { recursive: true });

  const next = new ShimmedHost(first.folder);
  const opened = await next.window();
  const { problem } = await opened.query('yard.info', {});
  if (problem !== null) lost.push(`nobody has the file open, and it does not open: ${problem.code}`);
  else lost.push(...(await ledger.differences(opened)));
  await next.stop();
  return lost;
}

/** @returns how many were saved; the others were refused, with a sentence */
async function saveAll(
  window: SocketWindow,
  readings: readonly SavedReading[],
  ledger: Ledger,
): Promise<number> {
  let saved = 0;
  for (const reading of readings) {
    const { ok } = await askToSave(window, { reading, act: randomUUID() });
    if (!ok) continue;
    ledger.save(reading);
    saved++;
  }
  return saved;
}

async function bothAtOnce(one: ShimmedHost, other: ShimmedHost): Promise<string[]> {
  const windows = await Promise.all([one.window(), other.window()]);
  const infos = await Promise.all(windows.map((window) => window.query('yard.info', {})));
  await one.kill();
  await other.kill();
  const open = infos.filter(({ uuid }) => uuid !== null).length;
  if (open !== 1) return [`${open} hosts have the file open`];
  return infos.some(({ uuid, problem }) => uuid === null && problem === null)
    ? ['the second does not say why it opens nothing']
    : [];
}
