import { existsSync, renameSync, statSync } from 'node:fs';
import { dirname } from 'node:path';
import Database from 'better-sqlite3';
import { Refusal } from '../../shared-core/contract/answer.ts';
import { type Message, message } from '../../shared-core/words/message.ts';
import { recordChanges } from './change-triggers.ts';
import { syncFile, syncFolder } from './durable-files.ts';
import { type Migration, migrations } from './migrations.ts';
import { giveModeOf, makePrivateFile, makePrivateFolder } from './private-files.ts';
import { canRepair, repairSchema, schemaFaults } from './schema-repair.ts';
import { repairWal, type WalState } from './wal-repair.ts';
import { APPLICATION_ID, identify } from './yard-identity.ts';

export type Db = Database.Database;

/** A file that cannot be used as a yard as it is; `damaged` when putting it beside would help. */
export class YardFileProblem extends Refusal {
  override name = 'YardFileProblem';
  readonly damaged: boolean;
  constructor(problem: Message, damaged: boolean) {
    super(problem);
    this.damaged = damaged;
  }
}

/** Above this a file is not looked through before it is opened: that takes some 6 ms a megabyte. */
const LARGE_BYTES = 16 * 1024 * 1024;

/**
 * Opens a yard file, creating it when there is none, and brings it to the newest layout.
 *
 * WAL with synchronous=FULL: a reading that was committed survives a power cut. Nothing is written to a file that was
 * not looked through for damage. A large one that needs nothing written is opened before that: `db` then refuses to
 * write (`SQLITE_READONLY`) until `allowWriting` is called, once `damageIn` found none.
 * @param beforeMigrating  is given a sound file of an earlier layout before anything is written to it
 * @throws YardFileProblem with a sentence for a person; the file is then left as it was
 */
export function openYardFile(
  file: string,
  beforeMigrating?: (db: Db) => void,
): { db: Db; integrityChecked: boolean; wal: WalState; repaired: number } {
  let db: Db | undefined;
  try {
    makePrivateFolder(dirname(file));
    refuseNotOurs(file);
    for (const suffix of ['-wal', '-shm']) refuseTaken(file + suffix, file);
    makePrivateFile(file);
    for (const suffix of ['-wal', '-shm']) giveModeOf(file, file + suffix);
    // Before SQLite opens the file: it drops what follows a bad place in the WAL.
    const wal = repairWal(file);
    if (wal.kind === 'cut') {
      throw new YardFileProblem(
        message('refusal.yard-changes-unreadable', { file, changes: wal.laterCommits }),
        true,
      );
    }
    db = new Database(file, { timeout: 2000 });
    // Before any other pragma: SQLite may not be able to read the list of tables.
    const repaired = layoutOf(db) === migrations.length ? makeSchemaRight(db, file) : 0;
    db.pragma('synchronous = FULL');
    // On a Mac only these put on the disk itself what was written; elsewhere they change nothing.
    db.pragma('fullfsync = ON');
    db.pragma('checkpoint_fullfsync = ON');
    const integrityChecked = !isLarge(file) || needsWriting(db);
    if (integrityChecked) {
      const damage = damageOf(db);
      if (damage !== null) throw damagedFile(file);
      if (layoutOf(db) < migrations.length) beforeMigrating?.(db);
      migrate(db, file);
      // Only now: a file that could not be migrated is left as it was to the byte.
      db.pragma('journal_mode = WAL');
    } else {
      db.pragma('query_only = ON');
    }
    db.pragma('foreign_keys = ON');
    return { db, integrityChecked, wal, repaired };
  } catch (error) {
    if (db) closeUntouched(db, file);
    throw asProblem(error, file);
  }
}

/** The last connection to be closed brings the WAL into the file, unless it cannot write. */
export function closeUntouched(db: Db, file: string): void {
  let reader: Db | undefined;
  try {
    reader = new Database(file, { readonly: true });
    // A connection holds a file open from its first read on.
    reader.prepare('SELECT count(*) FROM sqlite_schema').get();
  } catch {
    // Where nothing can be read, nothing can be brought in.
  }
  db.close();
  reader?.close();
}

/** A large file was looked through by `damageIn`, which found nothing. */
export function allowWriting(db: Db): void {
  db.pragma('query_only = OFF');
}

/** Nothing is written to it until `allowWriting`. */
export function forbidWriting(db: Db): void {
  db.pragma('query_only = ON');
}

/**
 * What is damaged in a yard file, in SQLite's words; null where it is sound. Takes seconds for a large file.
 * @param isThorough  whether its indexes are compared with what they are of, too; of a large file that takes 20 s that
 *   nothing can stop, so it is left to its backups, and nothing is checked here
 */
export function damageIn(file: string, isThorough = false): string | null {
  if (isThorough && isLarge(file)) return null;
  const db = new Database(file, { readonly: true, timeout: 2000 });
  try {
    return damageOf(db, isThorough);
  } finally {
    db.close();
  }
}

/**
 * A row with a text that is no JSON, or a value that its table refuses, where whoever reads it gets on without: a cache is
 * made again (`bad-caches.ts`), an entry has a stand-in (`stand-ins.ts`), a reading is not used (`reading-checksum.ts`).
 */
const IN_A_ROW =
  /^CHECK constraint failed in (finding|outlook|core_history|round_suspicion|species|end_use|place|setting|meter_profile|amendment|reading|oven_check)$/;

/** The same of an open file, of any size. */
export function damageOf(db: Db, isThorough = false): string | null {
  try {
    const found = checked(db, isThorough ? 'integrity_check' : 'quick_check').find(
      (each) => each !== 'ok' && !IN_A_ROW.test(each),
    );
    return found === undefined ? null : found.replace(/^\*\*\* in database main \*\*\*\s*/, '');
  } catch (error) {
    if (isDamage(error)) return (error as Error).message;
    throw error;
  }
}

/** What a check of SQLite's says. */
function checked(db: Db, check: 'integrity_check' | 'quick_check'): string[] {
  const said = () => (db.pragma(check) as Record<string, string>[]).flatMap((row) => Object.values(row));
  try {
    return said();
  } catch (error) {
    if (isDamage(error)) throw error;
    // A rule of a table could not read a damaged text: without these rules, the rest is checked.
    db.pragma('ignore_check_constraints = ON');
    try {
      return said();
    } finally {
      db.pragma('ignore_check_constraints = OFF');
    }
  }
}

function isLarge(file: string): boolean {
  return (statSync(file, { throwIfNoEntry: false })?.size ?? 0) > LARGE_BYTES;
}

function needsWriting(db: Db): boolean {
  const isWal = db.pragma('journal_mode', { simple: true }) === 'wal';
  return !isWal || !isMarked(db) || layoutOf(db) < migrations.length || hasUnfinishedAct(db);
}

/** What such an act did is taken back before anybody sees it. */
const hasUnfinishedAct = (db: Db): boolean =>
  db.prepare('SELECT 1 FROM unfinished_act LIMIT 1').get() !== undefined;

/** How many migrations a file has had. */
export const layoutOf = (db: Db): number => Number(db.pragma('user_version', { simple: true }));

const isMarked = (db: Db): boolean => db.pragma('application_id', { simple: true }) === APPLICATION_ID;

function refuseNotOurs(file: string): void {
  const found = isFileOrFree(file) ? identify(file) : 'foreign';
  if (found === 'newer') throw new YardFileProblem(message('refusal.yard-newer', { file }), false);
  if (found === 'foreign') throw new YardFileProblem(message('refusal.yard-foreign', { file }), false);
  if (found === 'cut') throw damagedFile(file);
  if (found === 'without-file') throw new YardFileProblem(message('refusal.yard-missing', { file }), true);
}

/** Refuses a folder, say, or what would never answer, at a name that a yard file needs beside it. */
export function refuseTaken(name: string, file: string): void {
  if (!isFileOrFree(name)) throw nameTaken(name, file);
}

/** False for a folder, or a pipe: whoever opens one waits for as long as nobody has its other end. */
export const isFileOrFree = (path: string): boolean =>
  statSync(path, { throwIfNoEntry: false })?.isFile() ?? true;

/** Something else has a name that a yard file needs beside it. */
export function nameTaken(name: string, file: string): YardFileProblem {
  return new YardFileProblem(message('refusal.yard-name-taken', { name, file }), false);
}

function migrate(db: Db, file: string): void {
  // A table that others refer to can only be made again while nobody checks the references.
  db.pragma('foreign_keys = OFF');
  // One transaction for all: a file is at one version or another, never between. IMMEDIATE, so that a second
  // process that opens the same file waits and then finds nothing left to do.
  db.transaction(() => {
    if (!isMarked(db)) db.pragma(`application_id = ${APPLICATION_ID}`);
    const before = layoutOf(db);
    if (before === migrations.length) return;
    // A row whose parent is gone would be lost on the way.
    refuseDangling(db, file);
    for (let version = before; version < migrations.length; version++) {
      const { sql, prepare } = migrations[version] as Migration;
      prepare?.(db);
      db.exec(sql);
      db.pragma(`user_version = ${version + 1}`);
    }
    recordChanges(db);
    makeSchemaRight(db, file);
    refuseDangling(db, file);
  }).immediate();
}

/**
 * Puts indexes and triggers right that the disk changed. Nothing is written where the rest of the file is damaged.
 * @returns how many
 */
function makeSchemaRight(db: Db, file: string): number {
  const faults = schemaFaults(db);
  if (faults.length === 0) return 0;
  if (!canRepair(faults)) throw damagedFile(file);
  db.transaction(() => {
    repairSchema(db, faults);
    if (damageOf(db) !== null || schemaFaults(db).length > 0) throw damagedFile(file);
  }).immediate();
  return faults.length;
}

function refuseDangling(db: Db, file: string): void {
  if ((db.pragma('foreign_key_check') as unknown[]).length > 0) throw damagedFile(file);
}

/** Whether an error of SQLite's says that the file is damaged. */
export function isDamage(error: unknown): boolean {
  const code = String((error as { code?: unknown })?.code ?? '');
  return code.startsWith('SQLITE_NOTADB') || code.startsWith('SQLITE_CORRUPT');
}

/** Errors of SQLite's that say nothing of what is in the file. */
const OF_DISK_OR_RIGHTS = /^SQLITE_(CANTOPEN|IOERR|FULL|NOMEM|NOLFS|PERM|READONLY|AUTH|PROTOCOL|INTERRUPT)/;

/** Whether an error at opening one of our own files says that it is not as Pintally left it. */
function isDamageAtOpening(error: unknown): boolean {
  const code = String((error as { code?: unknown })?.code ?? '');
  return code.startsWith('SQLITE_') && !OF_DISK_OR_RIGHTS.test(code);
}

/** Whether an error of SQLite's says that the disk failed, or that part of the file is not there. */
export function isDiskFault(error: unknown): boolean {
  return String((error as { code?: unknown })?.code ?? '').startsWith('SQLITE_IOERR');
}

/** Whether an error of SQLite's says that the file was not looked through yet. */
export function isRefusedWriting(error: unknown): boolean {
  return String((error as { code?: unknown })?.code ?? '').startsWith('SQLITE_READONLY');
}

export function damagedFile(file: string): YardFileProblem {
  return new YardFileProblem(message('refusal.yard-damaged', { file }), true);
}

/** What an error at opening a file means to a person. */
export function asProblem(error: unknown, file: string): YardFileProblem {
  if (error instanceof YardFileProblem) return error;
  const code = String((error as { code?: unknown }).code ?? '');
  if (code.startsWith('SQLITE_BUSY') || code.startsWith('SQLITE_LOCKED')) {
    return new YardFileProblem(message('refusal.yard-in-use', { file }), false);
  }
  if (isDamageAtOpening(error)) return damagedFile(file);
  const unreadable = new YardFileProblem(message('refusal.yard-unreadable', { file }), false);
  unreadable.cause = error;
  return unreadable;
}

/**
 * Renames a yard file that is damaged, or took another's place, to a name that no file has yet. It stays in its folder,
 * with the files that SQLite keeps next to it: these first, because a new file that finds an older one's there would
 * take what is in them for its own.
 * @returns its new path
 */
export function renameDamaged(file: string, day: string, why: 'damaged' | 'replaced' = 'damaged'): string {
  let target = `${file}.${why}-${day}`;
  for (let n = 2; suffixes.some((suffix) => existsSync(target + suffix)); n++) {
    target = `${file}.${why}-${day}-${n}`;
  }
  for (const suffix of suffixes.filter((each) => existsSync(file + each))) {
    try {
      syncFile(file + suffix);
      renameSync(file + suffix, target + suffix);
    } catch (error) {
      // A thread that read the file just closed it: SQLite then takes away what it kept next to it.
      if (suffix === '' || existsSync(file + suffix)) throw error;
    }
    syncFolder(dirname(file));
  }
  return target;
}
const suffixes = ['-wal', '-shm', ''];
