import {
  cpSync,
  globSync,
  mkdirSync,
  readFileSync,
  renameSync,
  rmSync,
  statSync,
  truncateSync,
  writeFileSync,
} from 'node:fs';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { type Fault, tryOften } from './fault.ts';
import { inFolder } from './folders.ts';
import { Ledger, type SavedReading } from './ledger.ts';
import { inApp, saidOfYard, sentencesIn, yardFileIn } from './opened.ts';
import { ShimmedHost } from './shimmed-host.ts';
import { addStack, askToSave, readingsOf, startRound, stream } from './streaming.ts';

/** What another program does to a yard file that is open. */
const swaps: Record<string, (data: string, other: string) => void> = {
  'deleted alone': (data) => rmSync(yardFileIn(data)),
  'deleted with its log': (data) => {
    for (const suffix of ['', '-wal', '-shm']) rmSync(yardFileIn(data) + suffix, { force: true });
  },
  renamed: (data) => renameSync(yardFileIn(data), join(data, 'renamed.sqlite')),
  'replaced by another yard': (data, other) => {
    cpSync(yardFileIn(other), join(data, 'coming'));
    renameSync(join(data, 'coming'), yardFileIn(data));
  },
  'replaced by text': (data) => {
    writeFileSync(join(data, 'coming'), 'not a yard');
    renameSync(join(data, 'coming'), yardFileIn(data));
  },
  'cut to nothing': (data) => truncateSync(yardFileIn(data)),
  'its log deleted': (data) => rmSync(`${yardFileIn(data)}-wal`, { force: true }),
  'its log emptied': (data) => truncateSync(`${yardFileIn(data)}-wal`),
  'another yard written over it': (data, other) =>
    writeFileSync(yardFileIn(data), readFileSync(yardFileIn(other))),
  'cut in half': (data) => truncateSync(yardFileIn(data), statSync(yardFileIn(data)).size / 2),
};

/**
 * The yard file is deleted, renamed, replaced or cut while it is open. What was saved before and what is answered as saved
 * after is in the yard at the next start, or in a file that a sentence names.
 */
export const fileSwapped: Fault = (howMany, seed) =>
  inFolder(async (others) => {
    await inApp(others, async ({ window }) => addStack(window, 'Other', 2));
    return tryOften(howMany, seed, 2, (_, mine) =>
      inFolder(async (folder) => {
        const names = Object.keys(swaps);
        const name = names[mine % names.length] as string;
        const lost = await swapOnce(join(folder, 'data'), (data) => swaps[name]?.(data, others));
        return lost.map((loss) => `${name}: ${loss}`);
      }),
    );
  });

async function swapOnce(data: string, swap: (data: string) => void): Promise<string[]> {
  mkdirSync(data);
  const host = new ShimmedHost(data);
  const window = await host.window();
  const { stackId, boardIds } = await addStack(window, 'Typed', 4);
  const roundId = await startRound(window, stackId);
  const readings = readingsOf(roundId, boardIds, 10);
  const ledger = new Ledger();
  await stream(window, readings.slice(0, 8), ledger);
  swap(data);

  const said: string[] = [];
  for (const reading of readings.slice(8)) {
    const answer = await askToSave(window, { reading, act: crypto.randomUUID() }).catch(() => null);
    if (answer === null) break;
    if (answer.ok) ledger.save(reading);
    else said.push(...sentencesIn(answer.problem));
  }
  if (host.hasEnded()) return ['the process ended'];
  said.push(...(await saidOfYard(window)));
  await host.stop();

  const { there, saidNext } = await inApp(data, async ({ window: next }) => ({
    saidNext: await saidOfYard(next),
    there: await ledger.differences(next).catch(() => ['it does not open']),
  }));
  said.push(...saidNext);
  if (there.length === 0) return [];
  const holders = globSync('**/*', { cwd: data }).filter((file) =>
    holdsAll(join(data, file), ledger.saved()),
  );
  if (holders.length === 0) return [`readings are in no file: ${there.join('; ')}; said: ${said.join(' ')}`];
  return holders.some((file) => said.some((sentence) => sentence.includes(file)))
    ? []
    : [`readings are in ${holders.join(', ')}, which no sentence names; said: ${said.join(' ')}`];
}

function holdsAll(file: string, readings: readonly SavedReading[]): boolean {
  // Opening one removes what lies beside it.
  if (!statSync(file, { throwIfNoEntry: false })?.isFile()) return false;
  try {
    const db = new Database(file, { readonly: true });
    try {
      const find = db
        .prepare(
          'SELECT count(*) FROM reading WHERE round_id = ? AND board_id = ? AND spot_index = ? AND raw = ?',
        )
        .pluck();
      return readings.every(
        ({ roundId, boardId, spotIndex, raw }) => find.get(roundId, boardId, spotIndex, raw) === 1,
      );
    } finally {
      db.close();
    }
  } catch {
    return false;
  }
}
