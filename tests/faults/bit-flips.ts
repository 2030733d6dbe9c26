import { cpSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import { type Fault, tryOften } from './fault.ts';
import { inFolder } from './folders.ts';
import { Ledger } from './ledger.ts';
import { inApp, type Opened, saidOfYard, yardFileIn } from './opened.ts';
import { type Random, wholeBetween } from './random.ts';
import { ShimmedHost } from './shimmed-host.ts';
import { addStack, readingsOf, startRound, stream } from './streaming.ts';
import { differencesOf, type Visible, visibleIn } from './visible.ts';

const BOARDS = 12;
/** The app looks for damage once the window is there; on a busy computer it has so long for that. */
const PATIENCE_MS = 10_000;
/** What is said of a fault of ours says nothing of the file. */
const TELLS_NOTHING = /Something went wrong/;

/** One bit of the yard file is another one: nothing that is seen changes, or a sentence says what is wrong. */
export const bitFlipsInFile: Fault = (howMany, seed) =>
  flipOften(howMany, seed, '', (random, bytes) => wholeBetween(random, 0, bytes.length * 8));

/**
 * The same in SQLite's log after a kill. A flip in the very last commit cannot be told from a write that the kill cut
 * short, so the flips are before it.
 */
export const bitFlipsInLog: Fault = (howMany, seed) =>
  flipOften(howMany, seed, '-wal', (random, log) => wholeBetween(random, 0, lastCommitAt(log) * 8));

function flipOften(
  howMany: number,
  seed: number,
  suffix: '' | '-wal',
  pickBit: (random: Random, bytes: Buffer) => number,
) {
  return inFolder(async (folder) => {
    const left = join(folder, 'left');
    await makeYard(left, suffix === '' ? 'stop' : 'kill');
    const seen = await inFolder(async (copy) => {
      cpSync(left, copy, { recursive: true });
      return inApp(copy, ({ window }) => visibleIn(window));
    });
    return tryOften(howMany, seed, 1, (random) =>
      inFolder(async (copy) => {
        cpSync(left, copy, { recursive: true });
        const file = yardFileIn(copy) + suffix;
        const bytes = readFileSync(file);
        const bit = pickBit(random, bytes);
        bytes[bit >> 3] = (bytes[bit >> 3] ?? 0) ^ (1 << (bit & 7));
        writeFileSync(file, bytes);
        const lost = await silentlyChanged(copy, seen);
        return lost.map((loss) => `bit ${bit & 7} of byte ${bit >> 3} of ${bytes.length}: ${loss}`);
      }),
    );
  });
}

/** A yard with two rounds; a kill leaves most of it in SQLite's log. */
async function makeYard(folder: string, end: 'stop' | 'kill'): Promise<void> {
  const host = new ShimmedHost(folder);
  const window = await host.window();
  const { stackId, boardIds } = await addStack(window, 'Typed', BOARDS);
  for (const firstRaw of [10, 11]) {
    const roundId = await startRound(window, stackId);
    await stream(window, readingsOf(roundId, boardIds, firstRaw), new Ledger());
    if (firstRaw === 10) await window.command('rounds.finish', { roundId });
  }
  // What follows from the readings comes after them.
  await pause(500);
  await host[end]();
  rmSync(`${yardFileIn(folder)}-shm`, { force: true });
}

function silentlyChanged(folder: string, before: Visible): Promise<string[]> {
  const look = async ({ window }: Opened): Promise<string[]> => {
    const giveUpAt = performance.now() + PATIENCE_MS;
    for (;;) {
      const said = (await saidOfYard(window)).filter((sentence) => !TELLS_NOTHING.test(sentence));
      if (said.length > 0) return [];
      const now = await visibleIn(window);
      const different = differencesOf(before, now);
      if (different.length === 0) return [];
      if (performance.now() > giveUpAt) {
        const [first = ''] = different;
        return [`${different.join(', ')}: without a sentence; ${now.get(first)?.slice(0, 120) ?? 'gone'}`];
      }
      await pause(200);
    }
  };
  return inApp(folder, look, 0);
}

/** Where the last commit begins in SQLite's log (its file format, section 4.1): frames of a page each after a head. */
function lastCommitAt(log: Buffer): number {
  const head = 32;
  const frame = 24 + log.readUInt32BE(8);
  const salt = log.readBigUInt64BE(16);
  const commits: number[] = [];
  for (let at = head; at + frame <= log.length && log.readBigUInt64BE(at + 8) === salt; at += frame) {
    if (log.readUInt32BE(at + 4) !== 0) commits.push(at + frame);
  }
  return commits.at(-2) ?? head;
}
