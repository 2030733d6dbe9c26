import { mkdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { errno, FOREVER, kinds } from './disk-shim.ts';
import { type Fault, tryOften } from './fault.ts';
import { inFolder } from './folders.ts';
import { Ledger, type SavedReading } from './ledger.ts';
import { inApp, sentencesIn, yardFileIn } from './opened.ts';
import { oneOf, type Random, wholeBetween } from './random.ts';
import { settleOnFailingDisk } from './settling.ts';
import { ShimmedHost } from './shimmed-host.ts';
import { type AnyWindow, addStack, readingsOf, startRound } from './streaming.ts';

type Failure = { kinds: number; error: number };
const everything = kinds.writes | kinds.grows | kinds.syncs | kinds.creates | kinds.names;

/** A full disk takes what replaces other bytes; some file systems take nothing at all. */
const full: Failure[] = [
  { kinds: kinds.grows | kinds.creates, error: errno.ENOSPC },
  { kinds: kinds.writes | kinds.creates, error: errno.ENOSPC },
];
const failing: Failure[] = [
  { kinds: kinds.writes, error: errno.EIO },
  { kinds: kinds.syncs, error: errno.EIO },
  { kinds: kinds.reads, error: errno.EIO },
  { kinds: everything, error: errno.EIO },
];

/** So many tries go by until one has values that settle, which takes longer than typing. */
const ONE_SETTLES_OF = 4;

/** The disk is full from some write on, and has room again later. */
export const fullDisk: Fault = (howMany, seed) => failOften(howMany, seed, full);

/** The disk fails from some write, sync or read on, and works again later. */
export const diskErrors: Fault = (howMany, seed) => failOften(howMany, seed, failing);

function failOften(howMany: number, seed: number, failures: readonly Failure[]) {
  return tryOften(howMany, seed, 2, (random, mine) =>
    inFolder((folder) => {
      const failure = oneOf(random, failures);
      const work = mine % ONE_SETTLES_OF === 0 ? settleOnFailingDisk : fillDisk;
      return work(join(folder, 'data'), random, failure);
    }),
  );
}

/**
 * What is answered as saved must be there, what is answered as not saved must not, and once the disk works again the
 * app goes on.
 */
async function fillDisk(data: string, random: Random, failure: Failure): Promise<string[]> {
  mkdirSync(data);
  const host = new ShimmedHost(data);
  const window = await host.window();
  const { stackId, boardIds } = await addStack(window, 'Typed', 20);
  const roundId = await startRound(window, stackId);
  const readings = readingsOf(roundId, boardIds, 10);
  const ledger = new Ledger();
  const lost: string[] = [];

  for (const reading of readings.slice(0, 10)) await save(window, reading, ledger);
  host.disk.set({ ...failure, passFirst: wholeBetween(random, 0, 200), failFor: FOREVER });
  for (const reading of readings.slice(10, 50)) lost.push(...(await save(window, reading, ledger)).untrue);
  host.disk.set({ kinds: 0, failFor: 0 });
  for (const reading of readings.slice(50)) {
    const { refusal } = await save(window, reading, ledger);
    if (refusal !== null) lost.push(`refused though the disk works again: ${refusal}`);
  }

  if (host.hasEnded()) return [...lost, 'the process ended'];
  lost.push(...(await ledger.differences(window)).map((difference) => `while it is open: ${difference}`));
  await oneOf(random, [() => host.kill(), () => host.stop()])();
  const after = await inApp(data, ({ window: next }) => ledger.differences(next));
  return [...new Set([...lost, ...after])];
}

async function save(
  window: AnyWindow,
  reading: SavedReading,
  ledger: Ledger,
): Promise<{ refusal: string | null; untrue: string[] }> {
  const answer = await window.answer('rounds.saveTyped', { ...reading, newestReadingId: null });
  if (answer.ok) {
    ledger.save(reading);
    return { refusal: null, untrue: [] };
  }
  const [refusal = ''] = sentencesIn(answer.problem);
  if (JSON.stringify(answer.problem).includes('refusal.saved-not-updated')) ledger.save(reading);
  const untrue = refusal.includes('Something went wrong') ? [`a failing disk was not named: ${refusal}`] : [];
  return { refusal, untrue };
}

/** The folder cannot be written to, from the start or from some moment on. */
export const readOnly: Fault = (howMany, seed) =>
  tryOften(howMany, seed, 2, (random, mine) =>
    inFolder(async (folder) => {
      const error = oneOf(random, [errno.EROFS, errno.EACCES]);
      const failure = { kinds: everything | kinds.opens, error };
      const data = join(folder, 'data');
      if (mine % 3 === 0) return fillDisk(data, random, failure);
      mkdirSync(data);
      // The folder is new, or has a yard that was closed, or one that was killed.
      const ledger = new Ledger();
      if (mine % 3 === 1) await makeYard(data, ledger, oneOf(random, ['stop', 'kill']));
      return startReadOnly(data, ledger, failure);
    }),
  );

async function makeYard(data: string, ledger: Ledger, end: 'stop' | 'kill'): Promise<void> {
  const host = new ShimmedHost(data);
  const window = await host.window();
  const { stackId, boardIds } = await addStack(window, 'Typed', 3);
  const roundId = await startRound(window, stackId);
  for (const reading of readingsOf(roundId, boardIds, 10)) await save(window, reading, ledger);
  await host[end]();
}

async function startReadOnly(data: string, ledger: Ledger, failure: Failure): Promise<string[]> {
  const bytes = (): string | null => {
    try {
      return readFileSync(yardFileIn(data)).toString('base64');
    } catch {
      return null;
    }
  };
  const before = bytes();
  const host = new ShimmedHost(data, { control: { ...failure, failFor: FOREVER } });
  const window = await host.window().catch(() => null);
  if (window === null) return [`the process ended: ${host.printed().slice(0, 200)}`];
  const info = await window.query('yard.info', {});
  const lost: string[] = [];
  if (info.problem === null) lost.push(...(await ledger.differences(window)));
  if (info.problem === null && ledger.saved().length === 0) lost.push('a new yard is shown that is nowhere');
  await host.kill();
  if (bytes() !== before) lost.push('the file was changed');
  if (before !== null) lost.push(...(await inApp(data, ({ window: next }) => ledger.differences(next))));
  return lost;
}
