import { mkdirSync, symlinkSync } from 'node:fs';
import { join } from 'node:path';
import { type Fault, tryOften } from './fault.ts';
import { inFolder } from './folders.ts';
import { Ledger } from './ledger.ts';
import { yardFileIn } from './opened.ts';
import { oneOf } from './random.ts';
import { ShimmedHost } from './shimmed-host.ts';
import { addStack, readingsOf, startRound, stream } from './streaming.ts';

/** How a second host comes to the same yard file. */
const ways = ['same folder', 'at once', 'folder by another name', 'file by another name'] as const;

/** A second host on the same yard file opens nothing and says why; the first goes on; the one after it opens all. */
export const twoHosts: Fault = (howMany, seed) =>
  tryOften(howMany, seed, 2, (random, mine) =>
    inFolder(async (folder) => {
      const way = ways[mine % ways.length] as (typeof ways)[number];
      const data = join(folder, 'data');
      mkdirSync(data);
      const other = way.includes('another') ? join(folder, 'other') : data;
      const first = new ShimmedHost(data);
      if (way === 'at once') return bothAtOnce(first, new ShimmedHost(data));

      const window = await first.window();
      const ledger = new Ledger();
      const { stackId, boardIds } = await addStack(window, 'Typed', 4);
      const roundId = await startRound(window, stackId);
      const readings = readingsOf(roundId, boardIds, 10);
      await stream(window, readings.slice(0, 8), ledger);

      if (way === 'folder by another name') symlinkSync(data, other);
      if (way === 'file by another name') {
        mkdirSync(other);
        symlinkSync(yardFileIn(data), yardFileIn(other));
      }
      const second = new ShimmedHost(other);
      const lost: string[] = [];
      const info = await (await second.window()).query('yard.info', {});
      if (info.uuid !== null) lost.push(`${way}: both hosts have the file open`);
      else if (info.problem === null) lost.push(`${way}: the second does not say why it opens nothing`);
      await stream(window, readings.slice(8), ledger);
      lost.push(...(await ledger.differences(window)));
      await second.kill();

      await oneOf(random, [() => first.kill(), () => first.stop()])();
      const next = new ShimmedHost(data);
      const opened = await next.window();
      const { problem } = await opened.query('yard.info', {});
      if (problem !== null)
        lost.push(`${way}: nobody has the file open, and it does not open: ${problem.code}`);
      else lost.push(...(await ledger.differences(opened)));
      await next.stop();
      return lost;
    }),
  );

async function bothAtOnce(one: ShimmedHost, other: ShimmedHost): Promise<string[]> {
  const windows = await Promise.all([one.window(), other.window()]);
  const infos = await Promise.all(windows.map((window) => window.query('yard.info', {})));
  await one.kill();
  await other.kill();
  const open = infos.filter(({ uuid }) => uuid !== null).length;
  if (open !== 1) return [`at once: ${open} hosts have the file open`];
  return infos.some(({ uuid, problem }) => uuid === null && problem === null)
    ? ['at once: the second does not say why it opens nothing']
    : [];
}
