import type { NewTestBlock, TestBlock } from '../../shared-core/contract/meter-checks.ts';
import { type Exclusion, exclusionSchema } from '../../shared-core/probing/readings/exclusion.ts';
import { isNoSlip } from './amendment-table.ts';
import { type Columns, recordAdder, recordEditor, rowAppender, selected } from './columns.ts';
import { type meterReads, PROFILE_NOW, VERSIONS } from './meter-table.ts';
import { readJson } from './read-json.ts';
import type { ReadingOwnerRow } from './reading-table.ts';
import { holds } from './undone-rows.ts';
import type { Db } from './yard-file.ts';

const newColumns: Columns<NewTestBlock> = {
  meterId: 'meter_id',
  name: 'name',
  expected: 'expected',
  unit: 'unit',
  tolerance: 'tolerance',
  checkEvery: 'check_every',
};
const columns: Columns<TestBlock> = { id: 'id', version: 'version', ...newColumns };

interface NewCheck {
  blockId: number;
  meterProfileId: number | null;
  /** What the meter should have shown, in its unit. */
  right: number;
  tolerance: number;
  shown: number;
  tempC: number | null;
  at: string;
}
const checkColumns: Columns<NewCheck> = {
  blockId: 'test_block_id',
  meterProfileId: 'meter_profile_id',
  right: 'expected',
  tolerance: 'tolerance',
  shown: 'shown',
  tempC: 'temp_c',
  at: 'checked_at',
};
export interface CheckRow extends NewCheck {
  id: number;
  /** Null where its version is lost. */
  meterId: number | null;
  /** Why it is excluded; null where it is not. */
  excluded: Exclusion | null;
}
type CheckRecord = Omit<CheckRow, 'excluded'> & { excluded: string | null };

/** What the disk damaged is excluded, until a person decides. */
const toCheck = (row: CheckRecord): CheckRow => ({
  ...row,
  excluded:
    row.excluded === null
      ? null
      : (readJson(exclusionSchema.nullable(), row.excluded) ??
        (row.excluded === 'null' ? null : { code: 'damaged' })),
});

/** By the profile that holds for it. */
export interface ReadingSince extends ReadingOwnerRow {
  profileId: number;
}

/** So many checks of a block are listed. */
const MOST_LISTED = 200;

/** SQL for why a check is excluded, as JSON; null, of SQL or of JSON, where it is not. @param check  its alias */
const excludedNow = (check: string): string =>
  `(SELECT e.excluded FROM check_exclusion e WHERE e.meter_check_id = ${check}.id AND ${holds('e')}
    ORDER BY e.id DESC LIMIT 1)`;

/** SQL for when readings were corrected by a check; null where they are not. @param check  its alias */
const correctedAt = (check: string): string =>
  `(SELECT iif(d.corrects, d.at, NULL) FROM check_correction d WHERE d.meter_check_id = ${check}.id AND ${holds('d')}
    ORDER BY d.id DESC LIMIT 1)`;

/** SQL for whether a check counts. @param check  its alias */
const counts = (check: string): string => `coalesce(${excludedNow(check)}, 'null') = 'null'`;

/** SQL for the id of the newest check of the meter `meter` that is not excluded. */
const checksOfMeter = (meter: string, where = ''): string =>
  `(SELECT k.id FROM meter_check k JOIN meter_profile q ON q.id = k.meter_profile_id
    WHERE q.meter_id = ${meter} ${where} AND ${holds('k')} AND ${counts('k')} ORDER BY k.checked_at DESC, k.id DESC LIMIT 1)`;

/** Test blocks and resistors, and the checks of meters by them. */
export function meterCheckReads(db: Db) {
  const select = `SELECT ${selected(columns, 'b')} FROM test_block b`;
  const one = db.prepare<[number], TestBlock>(`${select} WHERE b.id = ?`);
  const all = db.prepare<[], TestBlock>(
    `${select} JOIN meter m ON m.id = b.meter_id
     WHERE b.closed_at IS NULL AND m.undone_at IS NULL AND m.closed_at IS NULL ORDER BY b.meter_id, b.id`,
  );
  const selectCheck = `SELECT c.id, ${selected(checkColumns, 'c')}, p.meter_id AS meterId, ${excludedNow('c')} AS excluded
    FROM meter_check c LEFT JOIN meter_profile p ON p.id = c.meter_profile_id`;
  const check = db.prepare<[number], CheckRecord>(`${selectCheck} WHERE c.id = ? AND ${holds('c')}`);
  const ofBlock = db.prepare<[number], CheckRecord>(
    `${selectCheck} WHERE c.test_block_id = ? AND ${holds('c')}
     ORDER BY c.checked_at DESC, c.id DESC LIMIT ${MOST_LISTED}`,
  );
  const newest = db.prepare<{ meterId: number; now: string }, CheckRecord>(
    `${selectCheck} WHERE c.id = ${checksOfMeter('@meterId', 'AND k.checked_at <= @now')}`,
  );
  const counting = db.prepare<{ meterId: number; now: string }, CheckRecord & { correctedAt: string | null }>(
    `SELECT k.*, ${correctedAt('k')} AS correctedAt FROM (${selectCheck}
       WHERE p.meter_id = @meterId AND c.checked_at <= @now AND ${holds('c')} AND ${counts('c')}) k
     ORDER BY k.at, k.id`,
  );
  const correctedMeters = db
    .prepare<[], number>(
      `SELECT DISTINCT p.meter_id FROM check_correction d JOIN meter_check c ON c.id = d.meter_check_id
       JOIN meter_profile p ON p.id = c.meter_profile_id ORDER BY 1`,
    )
    .pluck();
  const isCorrecting = db
    .prepare<[number], string | null>(`SELECT ${correctedAt('c')} FROM meter_check c WHERE c.id = ?`)
    .pluck();
  const inRound = db.prepare<[number], { checkId: number; profileId: number; readings: number }>(
    `SELECT ${checksOfMeter('p.meter_id', 'AND k.checked_at <= g.taken_at')} AS checkId,
       p.id AS profileId, COUNT(*) AS readings
     FROM reading g JOIN meter_profile p ON p.id = ${PROFILE_NOW}
     WHERE g.round_id = ? AND ${holds('g')} AND ${isNoSlip('g')}
     GROUP BY 1, 2 HAVING checkId IS NOT NULL ORDER BY 1, 2`,
  );
  const isAny = db.prepare<[], number>(`SELECT EXISTS (SELECT 1 FROM meter_check c)`).pluck();
  const since = db.prepare<{ checkId: number; meterId: number; at: string }, ReadingSince>(
    `SELECT g.id, g.board_id AS boardId, g.round_id AS roundId, ${PROFILE_NOW} AS profileId
     FROM round r JOIN reading g ON g.round_id = r.id
     WHERE coalesce(r.finished_at, @at) >= @at AND g.taken_at >= @at AND ${holds('g')} AND ${isNoSlip('g')}
       AND ${PROFILE_NOW} IN (${VERSIONS})
       AND ${checksOfMeter('@meterId', 'AND k.checked_at <= g.taken_at')} = @checkId
     ORDER BY g.id`,
  );
  const between = db.prepare<{ meterId: number; from: string; to: string | null }, ReadingSince>(
    `SELECT g.id, g.board_id AS boardId, g.round_id AS roundId, ${PROFILE_NOW} AS profileId
     FROM round r JOIN reading g ON g.round_id = r.id
     WHERE coalesce(r.finished_at, @from) >= @from AND g.taken_at >= @from AND (@to IS NULL OR g.taken_at < @to)
       AND ${holds('g')} AND ${isNoSlip('g')} AND ${PROFILE_NOW} IN (${VERSIONS}) ORDER BY g.id`,
  );
  const lastStart = db
    .prepare<[string], string | null>(
      'SELECT max(started_at) FROM round WHERE undone_at IS NULL AND started_at <= ?',
    )
    .pluck();
  const checkIn = (row: CheckRecord | undefined): CheckRow | undefined => row && toCheck(row);
  return {
    block: (id: number): TestBlock | undefined => one.get(id),
    /** Those in use, by meter. */
    blocks: (): TestBlock[] => all.all(),
    /** Excluded or not. */
    check: (id: number): CheckRow | undefined => checkIn(check.get(id)),
    /** Newest first, excluded ones too. */
    ofBlock: (blockId: number): CheckRow[] => ofBlock.all(blockId).map(toCheck),
    /** Of those until now: one that was made under a clock that was ahead says nothing of the time since. */
    newestOfMeter: (meterId: number, now: string): CheckRow | undefined =>
      checkIn(newest.get({ meterId, now })),
    /** Of a round's readings, how many were taken after which check of their meter, by the profile that holds for them. */
    inRound: (roundId: number) => (isAny.get() === 1 ? inRound.all(roundId) : []),
    /** Readings of the meter that were taken after a check, and before the next one. */
    readingsSince: (checkId: number, meterId: number, at: string): ReadingSince[] =>
      since.all({ checkId, meterId, at }),
    /** Those that count of the meter until now, the oldest first, and when readings were corrected by each. */
    counting: (meterId: number, now: string): (CheckRow & { correctedAt: string | null })[] =>
      counting.all({ meterId, now }).map((row) => ({ ...toCheck(row), correctedAt: row.correctedAt })),
    /** Meters by a check of which readings were ever corrected. */
    correctedMeters: (): number[] => correctedMeters.all(),
    /** Whether readings are corrected by a check, or were before it was excluded. */
    isCorrecting: (checkId: number): boolean => isCorrecting.get(checkId) != null,
    /** Readings of the meter from an instant on, and before another. */
    readingsBetween: (meterId: number, from: string, to: string | null): ReadingSince[] =>
      between.all({ meterId, from, to }),
    /** When the newest round until now began; null before the first. */
    lastRoundAt: (now: string): string | null => lastStart.get(now) ?? null,
  };
}

export function meterCheckWrites(
  db: Db,
  { block }: ReturnType<typeof meterCheckReads>,
  { profileIdOf }: ReturnType<typeof meterReads>,
) {
  const append = rowAppender(db, 'meter_check', checkColumns);
  const exclude = rowAppender(db, 'check_exclusion', {
    checkId: 'meter_check_id',
    excluded: 'excluded',
    at: 'at',
  });
  const correct = rowAppender(db, 'check_correction', {
    checkId: 'meter_check_id',
    corrects: 'corrects',
    at: 'at',
  });
  const edit = recordEditor<NewTestBlock & { closedAt: string }, TestBlock>(
    db,
    'test_block',
    { ...newColumns, closedAt: 'closed_at' },
    block,
  );
  return {
    addBlock: recordAdder(db, 'test_block', newColumns),
    editBlock: edit,
    /** Leaves a check out, or includes it again where `why` is null. */
    excludeCheck: (checkId: number, why: Exclusion | null, at: string): void => {
      exclude({ checkId, excluded: JSON.stringify(why), at });
    },
    /** Says that readings are corrected by a check, or that they are no longer. */
    correctBy: (checkId: number, corrects: boolean, at: string): void => {
      correct({ checkId, corrects: Number(corrects), at });
    },
    addCheck: (check: Omit<NewCheck, 'meterProfileId'>, meterId: number): number =>
      append({ ...check, meterProfileId: profileIdOf(meterId) }),
  };
}
