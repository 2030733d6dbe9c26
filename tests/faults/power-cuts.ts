import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { type Fault, tryOften } from './fault.ts';
import { inFolder } from './folders.ts';
import { Ledger, type SavedReading } from './ledger.ts';
import { inApp } from './opened.ts';
import { cutPower, diskIn, writeDisk } from './power-cut.ts';
import { type Random, wholeBetween } from './random.ts';
import { ShimmedHost } from './shimmed-host.ts';
import { type AnyWindow, addStack, readingsOf, startRound, stream } from './streaming.ts';
import { type Change, readWriteLog } from './write-log.ts';

/** Enough for SQLite to copy its log into the file while readings are saved, which it does every 1,000 pages. */
const BOARDS = 60;

/** What a window was told, and how long the write record was then. */
interface Told {
  end: number;
  reading: SavedReading;
}

/** A day of the app's life, as it reached the disk. */
interface Recorded {
  before: ReturnType<typeof diskIn>;
  changes: Change[];
  told: Told[];
}

/**
 * The power goes at a random moment of a recorded day, and the disk holds what `power-cut.ts` says that it may. The next
 * start must hold every reading that a window was told is saved before that, and save more.
 */
export const powerCuts: Fault = (howMany, seed) =>
  inFolder(async (folder) => {
    const days = [
      await recordDay(join(folder, 'first'), ownDay),
      await recordDay(join(folder, 'demo'), demoDay),
    ];
    const result = await tryOften(howMany, seed, 1, (random, mine) => cutOnce(days, random, mine));
    const isFinding = await findsWhatIsNotSynced(days);
    return isFinding ? result : { ...result, lost: [...result.lost, 'nothing is lost without syncs either'] };
  });

function cutOnce(days: readonly Recorded[], random: Random, mine: number): Promise<string[]> {
  return inFolder(async (cutFolder) => {
    const { before, changes, told } = days[mine % 4 === 0 ? 1 : 0] as Recorded;
    const cut = wholeBetween(random, 1, changes.length + 1);
    const end = changes[cut - 1]?.end ?? 0;
    const data = join(cutFolder, 'data');
    writeDisk(cutPower(before, changes, cut, random), data);
    const kept = told.filter((each) => each.end <= end).map(({ reading }) => reading);
    return inApp(data, ({ window }) => lostAfterCut(window, kept, told));
  });
}

/** Whether the same cuts lose something of an app that does not sync: where they never do, they show nothing. */
async function findsWhatIsNotSynced(days: readonly Recorded[]): Promise<boolean> {
  const unsynced = days.map((day) => ({ ...day, changes: day.changes.map(asUnsynced) }));
  for (let mine = 1; mine <= 20; mine++) {
    const { lost } = await tryOften(1, mine, 1, (random) => cutOnce(unsynced, random, mine));
    if (lost.length > 0) return true;
  }
  return false;
}

/** Something without effect is in the place of a sync, so that a cut is at the same moment. */
const asUnsynced = (change: Change): Change =>
  change.op === 'sync' || change.op === 'datasync' ? { op: 'mkdir', name: '', end: change.end } : change;

async function lostAfterCut(
  window: AnyWindow,
  kept: SavedReading[],
  told: readonly Told[],
): Promise<string[]> {
  const { problem } = await window.query('yard.info', {});
  if (problem !== null) return [`it does not open: ${problem.code}`];
  const ledger = new Ledger(kept);
  // What was asked for and not yet answered may be there or not.
  for (const { reading } of told) ledger.ask(reading);
  const lost = kept.length === 0 ? [] : await ledger.differences(window);
  const { stackId, boardIds } = await addStack(window, 'After', 1);
  const roundId = await startRound(window, stackId);
  const more = new Ledger();
  await stream(window, readingsOf(roundId, boardIds, 12), more);
  return [...lost, ...(await more.differences(window))];
}

type Day = (host: ShimmedHost, ledger: Pick<Ledger, 'ask' | 'save'>) => Promise<void>;

async function recordDay(data: string, day: Day): Promise<Recorded> {
  mkdirSync(data);
  const before = diskIn(data);
  const host = new ShimmedHost(data, { logs: true });
  const told: Told[] = [];
  await day(host, {
    ask: () => undefined,
    save: (reading) => told.push({ end: host.logBytes(), reading }),
  });
  await host.stop();
  return { before, changes: readWriteLog(host.log), told };
}

/** A new yard, two rounds, and the end of the app. */
async function ownDay(host: ShimmedHost, ledger: Pick<Ledger, 'ask' | 'save'>): Promise<void> {
  const window = await host.window();
  const { stackId, boardIds } = await addStack(window, 'Typed', BOARDS);
  for (const firstRaw of [10, 11]) {
    const roundId = await startRound(window, stackId);
    await stream(window, readingsOf(roundId, boardIds, firstRaw), ledger);
    await window.command('rounds.finish', { roundId });
  }
}

/** Readings of the person's own, the demo yard and its removal, and more readings. */
async function demoDay(host: ShimmedHost, ledger: Pick<Ledger, 'ask' | 'save'>): Promise<void> {
  const window = await host.window();
  const { stackId, boardIds } = await addStack(window, 'Typed', 8);
  const roundId = await startRound(window, stackId);
  const readings = readingsOf(roundId, boardIds, 10);
  await stream(window, readings.slice(0, 16), ledger);
  await window.command('yard.openDemo', {});
  await window.command('yard.removeDemo', {});
  await window.command('rounds.open', { roundId });
  await stream(window, readings.slice(16), ledger);
}
