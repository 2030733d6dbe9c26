import Database from 'better-sqlite3';

type Run = (this: Statement, ...parameters: unknown[]) => unknown;
interface Statement {
  readonly source: string;
  readonly readonly: boolean;
  run: Run;
}

/** How a write fails: `done` where it reached the file all the same. */
export interface Failure {
  code: 'SQLITE_FULL' | 'SQLITE_IOERR_FSYNC' | 'SQLITE_READONLY';
  isDone?: boolean;
}

let failure: Failure | null = null;
let writesLeft = 0;
let commitsOnly = false;
let hasRoomOnceBroughtIn = false;

const statements = Object.getPrototypeOf(new Database(':memory:').prepare('SELECT 1')) as Statement;
const run = statements.run;
statements.run = function (...parameters) {
  const isCommit = this.source === 'COMMIT';
  const isCounted = failure !== null && !/^(BEGIN|ROLLBACK|SAVEPOINT|RELEASE)/.test(this.source);
  if (!isCounted || (commitsOnly && !isCommit) || writesLeft-- > 0) return run.apply(this, parameters);
  const { code, isDone } = failure as Failure;
  if (isDone) run.apply(this, parameters);
  throw new Database.SqliteError('The disk of this test failed.', code);
};

const { pragma } = Database.prototype;
Database.prototype.pragma = function (source, options) {
  if (hasRoomOnceBroughtIn && source.startsWith('wal_checkpoint')) failure = null;
  return pragma.call(this, source, options);
};

/**
 * Every write through SQLite in this process fails from now on, once so many were done.
 * @param onlyCommits         of transactions alone, so that what they hold is written first
 * @param untilWalIsBroughtIn  there is room again once the WAL was brought into the file
 */
export function failWrites(
  how: Failure,
  { after = 0, onlyCommits = false, untilWalIsBroughtIn = false } = {},
): void {
  failure = how;
  writesLeft = after;
  commitsOnly = onlyCommits;
  hasRoomOnceBroughtIn = untilWalIsBroughtIn;
}

/** There is room again. @returns whether a write failed meanwhile */
export function letWrite(): boolean {
  const hasFailed = failure !== null && writesLeft < 0;
  failure = null;
  return hasFailed;
}
