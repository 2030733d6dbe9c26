import { closeSync, copyFileSync, mkdtempSync, openSync, readSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { Refusal } from '../../shared-core/contract/answer.ts';
import {
  type Merged,
  type MergedRecords,
  otherSide,
  type Side,
} from '../../shared-core/contract/exchange.ts';
import type { MergedAct } from '../../shared-core/exchange/merged-act.ts';
import { message } from '../../shared-core/words/message.ts';
import { actHistory } from '../store/act-history.ts';
import { type Act, actReads, actWrites } from '../store/act-table.ts';
import { asBackupProblem, writeBackup } from '../store/backup.ts';
import { withChosenYard } from '../store/chosen-file.ts';
import { bringTheirPictures, type PictureWays } from '../store/merged-pictures.ts';
import { correctAsChecked } from '../store/meter-corrections.ts';
import { picturesBeside } from '../store/picture-files.ts';
import { MOVED_ARE_DUE } from '../store/reading-table.ts';
import { type Db, openYardFile, YardFileProblem } from '../store/yard-file.ts';
import { makeYardOfJson } from './json-import.ts';
import { merge } from './merge.ts';

/** Two yards to be brought together, and what a person chose. */
export interface BringingIn {
  /** The own yard file, which may be open. */
  own: string;
  /** The other one: a yard file, a backup, or an export of everything. */
  file: string;
  /** Where the own yard comes with the other in it, and its pictures beside; null to see what that would come to. */
  target: string | null;
  act: Act;
  /** What the person calls the file. */
  fileName: string;
  /** Whose version of a record holds where both edited it, and of which records the other's. */
  choices: { rest: Side; others: readonly string[] };
}

export interface BroughtIn {
  merged: Merged;
  /** The newest act that the own yard had; null before the first. */
  newestAct: number | null;
}

/**
 * Brings the other yard into a copy of the own one, which stays as it is.
 * @throws Refusal that says what is wrong with the file, or the disk; or that nothing in the file is new
 */
export async function bringIn(
  { own, file, target, act, fileName, choices }: BringingIn,
  tell: (done: number, total: number) => void,
): Promise<BroughtIn> {
  const folder = mkdtempSync(join(tmpdir(), 'pintally-merge-'));
  try {
    const theirs = join(folder, 'theirs.sqlite');
    await makeReadable(file, theirs, tell);
    const copy = target ?? join(folder, 'own.sqlite');
    await writeBackup(own, copy);
    const ways = { own, file, to: target && picturesBeside(target) };
    const came = mergeFiles(copy, theirs, { act, fileName }, choices, ways, tell);
    if (target !== null && came.isNothing) throw new Refusal(message('refusal.merge-nothing'));
    return came;
  } catch (error) {
    if (target !== null) {
      rmSync(target, { force: true });
      rmSync(picturesBeside(target), { recursive: true, force: true });
    }
    throw asBackupProblem(error, target ?? join(folder, 'own.sqlite'));
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/** Makes a yard file of this layout of whatever was chosen, which stays as it is. */
async function makeReadable(
  file: string,
  target: string,
  tell: (done: number, total: number) => void,
): Promise<void> {
  if (!isDatabase(file)) return makeYardOfJson(file, target, tell);
  await withChosenYard(file, (readable) => copyFileSync(readable, target));
  try {
    openYardFile(target).db.close();
  } catch (error) {
    throw error instanceof YardFileProblem ? withoutCopy(error) : error;
  }
}

/** A person chose a file, and knows nothing of the copy that could not be opened. */
function withoutCopy({ damaged, cause }: YardFileProblem): Refusal {
  const isFull = /^(ENOSPC|EDQUOT|SQLITE_FULL)/.test(String((cause as { code?: unknown } | undefined)?.code));
  if (isFull) return new Refusal(message('refusal.restore-no-room', { folder: tmpdir() }));
  return new Refusal(message(damaged ? 'refusal.restore-damaged' : 'refusal.restore-file-gone'));
}

/** By the start of SQLite's header, https://www.sqlite.org/fileformat.html, section 1.3. */
function isDatabase(file: string): boolean {
  const opened = openSync(file, 'r');
  try {
    const header = Buffer.alloc(6);
    readSync(opened, header, 0, header.length, 0);
    return header.toString('latin1') === 'SQLite';
  } finally {
    closeSync(opened);
  }
}

function mergeFiles(
  copy: string,
  theirs: string,
  what: Pick<BringingIn, 'act' | 'fileName'>,
  { rest, others }: BringingIn['choices'],
  ways: PictureWays,
  tell: (done: number, total: number) => void,
): BroughtIn & { isNothing: boolean } {
  const { db } = openYardFile(copy);
  try {
    // A large one was checked when it was copied.
    db.pragma('query_only = OFF');
    db.prepare('ATTACH ? AS theirs').run(theirs);
    const newestAct = actReads(db).newestId();
    const exceptions = new Set(others);
    const opposite = otherSide(rest);
    const records = inAct(db, what, () => merge(db, (id) => (exceptions.has(id) ? opposite : rest), tell));
    const { missing, found, noRoom } = bringTheirPictures(db, ways, tell);
    if (noRoom > 0) throw new Refusal(message('refusal.restore-no-room', { folder: dirname(copy) }));
    const merged = { ...records, missingPictures: missing, foundPictures: found };
    const changed = actHistory(db).counts(actReads(db).newestId() as number);
    db.exec('DETACH theirs');
    // One file again, without others beside it.
    db.pragma('journal_mode = DELETE');
    return { merged, newestAct, isNothing: changed.length + found + records.clashCount === 0 };
  } finally {
    db.close();
  }
}

function inAct(
  db: Db,
  { act, fileName }: Pick<BringingIn, 'act' | 'fileName'>,
  work: () => MergedRecords,
): MergedRecords {
  const acts = actWrites(db);
  return db.transaction(() => {
    acts.begin(act);
    const merged = work();
    correctAsChecked(db, act.at);
    // What was corrected of a reading in one file counts where it was moved to in the other.
    db.exec(MOVED_ARE_DUE);
    const { added, edited, deleted, leaveCount } = merged;
    acts.finish({ fileName, added, edited, deleted, left: leaveCount } satisfies MergedAct);
    return merged;
  })();
}
