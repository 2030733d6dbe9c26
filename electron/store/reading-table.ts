import { randomUUID } from 'node:crypto';
import { isMoreThan } from '../../shared-core/probing/readings/beyond-scale.ts';
import { type Exclusion, isSlip } from '../../shared-core/probing/readings/exclusion.ts';
import { typedUnit } from '../../shared-core/probing/readings/meter-profile.ts';
import {
  type Reading,
  readingSchema,
  type Spot,
  spotSchema,
} from '../../shared-core/probing/readings/reading.ts';
import { megohmsOf, ohmsOfMegohms } from '../../shared-core/units/typed-ohms.ts';
import { type Amendments, amended, amendmentsOf, exclusionOf } from './amendment-table.ts';
import { type Columns, rowAppender, selected } from './columns.ts';
import { keptRecord, roundsOfWood, sameBoard, sameWood } from './lineage.ts';
import { type meterReads, PROFILE_NOW, VERSIONS } from './meter-table.ts';
import { parsedOnce } from './parsed-once.ts';
import { readJson } from './read-json.ts';
import { type ReadingAsTaken, readingChecksum } from './reading-checksum.ts';
import { readingsOfDays } from './readings-of-days.ts';
import { holds } from './undone-rows.ts';
import type { Db } from './yard-file.ts';

const takenColumns: Columns<Omit<ReadingAsTaken, 'uuid'>> = {
  roundId: 'round_id',
  boardId: 'board_id',
  spotIndex: 'spot_index',
  spot: 'spot',
  raw: 'raw',
  unit: 'unit',
  how: 'how',
  settled: 'settled',
  woodTempC: 'wood_temp_c',
  meterProfileId: 'meter_profile_id',
  takenAt: 'taken_at',
};

/** SQL for a reading `g` as it was saved, with its checksum; to be read by `isAsSaved`. */
export const AS_SAVED = `g.id, ${selected({ ...takenColumns, uuid: 'uuid', checksum: 'checksum' }, 'g')}`;

/** SQL after which all boards are judged again that a reading was moved to. */
export const MOVED_ARE_DUE = `INSERT OR IGNORE INTO finding_due SELECT board_id, round_id FROM reading
  WHERE id IN (SELECT reading_id FROM amendment WHERE field = 'movedFrom')`;

export interface SavedReading extends ReadingAsTaken {
  id: number;
  checksum: number;
}

/** Whether the disk returns a reading as it was saved. */
export const isAsSaved = (row: SavedReading): boolean => readingChecksum(row) === row.checksum;

interface ReadingRecord extends SavedReading {
  /** What holds now: the newest given for the board in this round, else the newest given for the round. */
  givenTempC: number | null;
  /** Whether one was given for the board. */
  isTempOfBoard: 0 | 1;
  /** The temperature was given again, as it was: the person was asked about it. */
  isTempGivenAgain: 0 | 1;
  amendments: string;
  roundStartedAt: string;
}

/** Where a reading was taken. */
export interface ReadingOwnerRow {
  id: number;
  boardId: number;
  roundId: number;
}

interface IncludedReading {
  id: number;
  boardId: number;
  /** The board's; null where the yard has no such board. */
  code: string | null;
}

const spotOf = parsedOnce((text: string) => spotSchema.parse(JSON.parse(text)));

/** Of a row that the disk changed, what can still be shown; the rest is as usual. */
const damagedSchema = readingSchema.extend({
  spotIndex: readingSchema.shape.spotIndex.catch(null),
  raw: readingSchema.shape.raw.catch(0),
  unit: readingSchema.shape.unit.catch('pct'),
  how: readingSchema.shape.how.catch('typed'),
  woodTempC: readingSchema.shape.woodTempC.catch(null),
});
const USUAL_SPOT: Spot = { depth: 'shell', depthMm: null, fromEndMm: null, face: 'face' };

/** Pins in a face go no deeper than they are long, whatever was planned. */
export function asDeepAs(pinsMm: number | null, spot: Spot): Spot {
  if (pinsMm === null || spot.face !== 'face' || spot.depthMm === null) return spot;
  return { ...spot, depthMm: Math.min(spot.depthMm, pinsMm) };
}

const isFresh = ({ face }: Spot): boolean =>
  face === 'fresh-cut' || face === 'fresh-rip' || face === 'fresh-split';

type VersionOf = ReturnType<typeof meterReads>['version'];
type Amended = Pick<ReadingRecord, 'uuid' | 'amendments'>;

/** What readings that were moved to another board need to know of each other, by their UUIDs. */
interface MovedReadings {
  get(uuid: string): (Amended & { boardId: number; code: string }) | undefined;
}

const movedTo = (excluded: Exclusion | null | undefined): string | null =>
  excluded && 'code' in excluded && excluded.code === 'moved' ? excluded.to : null;

/** `isHere`: whether a reading that was moved is still where it went. */
type AmendmentsNow = ReturnType<typeof amendmentsOf> & { isHere: boolean };

/**
 * What holds of a reading now. What is not corrected of one that was moved is as on the board that it came from. It is here
 * while each board on its way says that it went on: the first of them may have it back.
 *
 * @param seen  those on the way so far: a file of another program may move them in a circle
 */
function amendmentsNow(
  { uuid, amendments }: Amended,
  moved: MovedReadings,
  seen: readonly string[] = [],
): AmendmentsNow {
  const own = amendmentsOf(amendments);
  const origin = own.movedFrom === undefined ? undefined : moved.get(own.movedFrom);
  if (origin === undefined || seen.includes(uuid)) return { ...own, isHere: true };
  const theirs = amendmentsNow(origin, moved, [...seen, uuid]);
  // Null is an answer, too: a temperature that nobody knows.
  const {
    raw = theirs.raw,
    isAbove = theirs.isAbove,
    woodTempC = theirs.woodTempC,
    probe = theirs.probe,
    depthMm = theirs.depthMm,
    note = theirs.note,
  } = own;
  // Never its own: it was taken when the other was, however often the date of their round changes.
  const { takenAt } = theirs;
  const isHere = theirs.isHere && movedTo(theirs.excluded) === uuid;
  const excluded = own.excluded ?? (isHere ? null : ({ code: 'unmoved' } as const));
  return { ...own, raw, isAbove, woodTempC, probe, depthMm, note, takenAt, excluded, isHere };
}

/**
 * Whether two yards moved a reading to the same board, each on its own, and the other one holds: a person moved it once, and
 * sees it there once.
 */
function isListedAsOther(row: ReadingRecord, moved: MovedReadings): boolean {
  const { movedFrom } = amendmentsOf(row.amendments);
  const origin = movedFrom === undefined ? undefined : moved.get(movedFrom);
  if (origin === undefined || !isAsSaved(row)) return false;
  const holding = movedTo(amendmentsNow(origin, moved).excluded);
  if (holding === null || holding === row.uuid || moved.get(holding)?.boardId !== row.boardId) return false;
  const { excluded } = amendmentsNow(row, moved);
  return excluded != null && 'code' in excluded && excluded.code === 'unmoved';
}

function toReading(row: ReadingRecord, versionOf: VersionOf, moved: MovedReadings): Reading {
  const isSound = isAsSaved(row) && !amendmentsOf(row.amendments).isDamaged;
  return isSound ? toSoundReading(row, versionOf, moved) : toDamagedReading(row);
}

function toDamagedReading(row: ReadingRecord): Reading {
  const { excluded = null, note } = amendmentsOf(row.amendments);
  return damagedSchema.parse({
    ...row,
    meterId: null,
    meterProfileId: null,
    // It may be years off, and the newest reading tells when a board was read.
    takenAt: row.roundStartedAt,
    spot: readJson(spotSchema, row.spot) ?? USUAL_SPOT,
    depthFrom: 'plan',
    settled: null,
    woodTempC: row.givenTempC,
    excluded,
    ...(note && { note }),
    isDamaged: true,
  });
}

function toSoundReading(row: ReadingRecord, versionOf: VersionOf, moved: MovedReadings): Reading {
  const amendments = amendmentsNow(row, moved);
  const boardOf = (uuid: string | null | undefined) => (uuid ? moved.get(uuid) : undefined);
  const [to, from] = [boardOf(movedTo(amendments.excluded)), boardOf(amendments.movedFrom)];
  const { excluded = null, takenAt, spot, depthMm, woodTempC, note, raw = row.raw, isAbove } = amendments;
  const { spotIndex = row.spotIndex } = amendments;
  const measured = woodTempC === undefined && row.isTempOfBoard === 0 ? amendments.probe : undefined;
  const where = spot ?? spotOf(row.spot);
  const isDepthGiven = depthMm !== undefined && depthMm !== 'as-saved';
  const { meterProfileId = row.meterProfileId } = amendments;
  const version = meterProfileId === null ? undefined : versionOf(meterProfileId);
  const pinsMm = version?.profile?.pins?.lengthMm ?? null;
  function depthFromOf(): Reading['depthFrom'] {
    // A person who says that nobody knows leaves it to the plan.
    if (isDepthGiven && depthMm === null) return 'plan';
    // In a fresh cut the person has put them where the plan says, and sees it.
    if (isDepthGiven || isFresh(where)) return 'person';
    return pinsMm === null ? 'plan' : 'pins';
  }
  // Typed before the meter had a name, which shows megohms: the number is what its display showed.
  const isMegohms =
    row.how === 'typed' && row.unit === 'pct' && typedUnit(version?.profile ?? null) === 'ohm';
  const inItsUnit = (value: number): number => (isMegohms ? ohmsOfMegohms(value) : value);
  return readingSchema.parse({
    ...row,
    raw: inItsUnit(raw),
    ...(raw !== row.raw && { savedRaw: inItsUnit(row.raw) }),
    ...(isMoreThan(raw, row.raw, isAbove ?? false) && { isAbove: true }),
    ...(isMegohms && { unit: 'ohm' }),
    meterId: version?.meterId ?? null,
    meterProfileId,
    takenAt: takenAt ?? row.takenAt,
    spotIndex,
    spot: isDepthGiven ? { ...where, depthMm } : asDeepAs(pinsMm, where),
    depthFrom: depthFromOf(),
    settled: row.settled === null ? null : row.settled === 1,
    woodTempC: measured?.tempC ?? (woodTempC === undefined ? row.givenTempC : woodTempC),
    ...(measured && { probeName: measured.name }),
    ...(row.isTempGivenAgain === 1 && woodTempC === undefined && !measured && { isTempRight: true }),
    excluded,
    ...(to && { movedTo: { boardId: to.boardId, code: to.code } }),
    ...(from && { movedFrom: { boardId: from.boardId, code: from.code } }),
    ...(note && { note }),
  });
}

/** Raw values as they were taken, with what was corrected about them since. */
export function readingReads(db: Db, { version, profileIdOf }: ReturnType<typeof meterReads>) {
  const select = `
    SELECT ${AS_SAVED},
      (SELECT t.temp_c FROM wood_temperature t
        WHERE t.round_id = g.round_id AND (t.board_id = g.board_id OR t.board_id IS NULL) AND ${holds('t')}
        ORDER BY t.board_id IS NULL, t.id DESC LIMIT 1) AS givenTempC,
      EXISTS (SELECT 1 FROM wood_temperature t
        WHERE t.round_id = g.round_id AND t.board_id = g.board_id AND ${holds('t')}) AS isTempOfBoard,
      (SELECT count(temp_c) = 2 AND min(temp_c) = max(temp_c) FROM (SELECT t.temp_c FROM wood_temperature t
        WHERE t.round_id = g.round_id AND (t.board_id = g.board_id OR t.board_id IS NULL) AND ${holds('t')}
        ORDER BY t.board_id IS NULL, t.id DESC LIMIT 2)) AS isTempGivenAgain,
      (SELECT r.started_at FROM round r WHERE r.id = g.round_id) AS roundStartedAt,
      ${amended('reading', 'g')} AS amendments
    FROM reading g`;
  const one = db.prepare<[number], ReadingRecord>(`${select} WHERE g.id = ?`);
  const moved = db.prepare<[string], Amended & { boardId: number; code: string }>(
    `SELECT g.uuid, b.id AS boardId, b.code, ${amended('reading', 'g')} AS amendments
     FROM reading g JOIN board b ON b.id = g.board_id WHERE g.uuid = ?`,
  );
  const ofBoard = db.prepare<{ boardId: number; roundId: number }, ReadingRecord>(
    // SQLite would rather go through all readings of the round.
    `${select} INDEXED BY reading_by_board WHERE g.board_id IN ${sameWood('@boardId', '@roundId')} AND g.round_id = @roundId AND ${holds('g')}
     ORDER BY g.id`,
  );
  const takenOn = db.prepare<[number, number], ReadingRecord>(
    `${select} WHERE g.board_id = ? AND g.round_id = ? AND ${holds('g')} ORDER BY g.id`,
  );
  const ownRounds = db
    .prepare<{ boardId: number }, number>(
      `SELECT DISTINCT round_id FROM reading g WHERE board_id IN ${sameBoard('@boardId')} AND ${holds('g')} ORDER BY round_id`,
    )
    .pluck();
  const rounds = db.prepare<{ boardId: number }, { roundId: number }>(
    `SELECT r.id AS roundId FROM round r WHERE r.id IN ${roundsOfWood('@boardId')} ORDER BY r.started_at, r.id`,
  );
  /** Those with a finding of the board, made or due: one read by slips alone has none. */
  const foundIn = `SELECT round_id FROM finding WHERE board_id = @boardId
       UNION ALL SELECT round_id FROM finding_due WHERE board_id = @boardId`;
  const roundBefore = db.prepare<{ boardId: number; roundId: number }, { roundId: number }>(
    `SELECT r.id AS roundId FROM round r
     WHERE r.id IN (${foundIn}) AND EXISTS (SELECT 1 FROM reading g
         WHERE g.board_id IN ${sameWood('@boardId', 'r.id')} AND g.round_id = r.id AND ${holds('g')})
       AND (r.started_at, r.id) < (SELECT started_at, id FROM round WHERE id = @roundId)
     ORDER BY r.started_at DESC, r.id DESC LIMIT 1`,
  );
  const included = db.prepare<[string], IncludedReading & { amendments: string }>(
    `SELECT g.id, g.board_id AS boardId, b.code, ${amended('reading', 'g')} AS amendments
     FROM reading g LEFT JOIN board b ON b.id = g.board_id
     WHERE g.id IN (SELECT value FROM json_each(?)) ORDER BY b.code, g.id`,
  );
  /** But for what a check corrects its values by, which each reading keeps. */
  const said = (record: string) => `iif(json_valid(${record}), json_remove(${record}, '$.off'), ${record})`;
  const andOfEarlier = `AND ${PROFILE_NOW} IN (${VERSIONS} AND ${said('record')} <>
    (SELECT ${said('n.record')} FROM meter_profile n WHERE n.id = @newestId))`;
  const ofEarlier = (where: string) =>
    db.prepare<{ meterId: number; newestId: number | null; after: number; upTo: number }, ReadingOwnerRow>(
      `SELECT g.id, g.board_id AS boardId, g.round_id AS roundId FROM reading g
       ${where} ${andOfEarlier} ORDER BY g.id`,
    );
  const newest = (sql: string) => db.prepare<[], number | null>(sql).pluck();
  /** Those that were taken with the meter, by their boards; then those that were moved to it, by their amendments. */
  const walksOfEarlier = [
    {
      some: ofEarlier(
        `WHERE g.meter_profile_id IN (${VERSIONS}) AND g.board_id > @after AND g.board_id <= @upTo`,
      ),
      last: newest('SELECT max(board_id) FROM reading'),
      atATime: 100,
    },
    {
      some: ofEarlier(
        `WHERE g.id IN (SELECT reading_id FROM amendment WHERE id > @after AND id <= @upTo
           AND field = 'meterProfileId' AND CAST(value AS INTEGER) IN (${VERSIONS}))`,
      ),
      last: newest('SELECT max(id) FROM amendment'),
      atATime: 1000,
    },
  ];
  const givenDepths = db
    .prepare<[number], number>(
      `SELECT g.id FROM reading g JOIN amendment k ON k.id =
         (SELECT max(h.id) FROM amendment h WHERE h.reading_id = g.id AND h.field = 'depthMm' AND ${holds('h')})
       JOIN act ON act.id = k.act_id
       WHERE g.round_id = ? AND act.request IN ('readings.setDepth', 'readings.undoDepth', 'pastRounds.save')
         AND k.value NOT IN ('"as-saved"', 'null')`,
    )
    .pluck();
  const lastBefore = db.prepare<{ boardId: number; at: string }, { roundId: number }>(
    `SELECT r.id AS roundId FROM round r
     WHERE r.id IN (${foundIn}) AND r.id IN ${roundsOfWood('@boardId')} AND r.started_at < @at
     ORDER BY r.started_at DESC, r.id DESC LIMIT 1`,
  );
  const valuesOn = db.prepare<[number, number], Amended & { raw: number }>(
    `SELECT g.uuid, g.raw, ${amended('reading', 'g')} AS amendments FROM reading g INDEXED BY reading_by_board
     WHERE g.board_id = ? AND g.round_id = ? AND ${holds('g')} ORDER BY g.id`,
  );
  const readAfter = db.prepare<{ boardIds: string; at: string }, { code: string; readAt: string }>(
    `SELECT b.code, max(r.started_at) AS readAt FROM json_each(@boardIds) e JOIN board b ON b.id = e.value
     JOIN reading g ON g.board_id IN ${sameBoard('b.id')} JOIN round r ON r.id = g.round_id WHERE ${holds('g')}
     GROUP BY b.id HAVING readAt > @at ORDER BY readAt DESC LIMIT 1`,
  );
  const lastMeter = db
    .prepare<[number], number>(
      `SELECT p.meter_id FROM reading g JOIN meter_profile p ON p.id = g.meter_profile_id
       WHERE g.round_id = ? AND ${holds('g')} ORDER BY g.id DESC LIMIT 1`,
    )
    .pluck();
  const walked = db.prepare<[number], { boardId: number }>(
    `SELECT board_id AS boardId FROM reading g WHERE round_id = ? AND ${holds('g')}
     GROUP BY board_id ORDER BY min(id)`,
  );
  const compared = db
    .prepare<[number], number>(
      `SELECT ${keptRecord('g.board_id')} AS boardId FROM reading g WHERE round_id = ? AND ${holds('g')}
       GROUP BY boardId ORDER BY min(id)`,
    )
    .pluck();
  /** The last on a way of readings. @param next  the UUID of the one that follows */
  function lastOf(uuid: string, next: (of: Amended) => string | null | undefined): string {
    const way = [uuid];
    for (;;) {
      const row = moved.get(way.at(-1)!);
      const following = row && next(row);
      // A file of another program may move them in a circle, or to what it lacks.
      if (!following || way.includes(following) || moved.get(following) === undefined) return way.at(-1)!;
      way.push(following);
    }
  }
  /** What a reading that was moved is now: from the board where it was saved first on to where that says that it went. */
  const nowOf = (uuid: string): string =>
    lastOf(
      lastOf(uuid, ({ amendments }) => amendmentsOf(amendments).movedFrom),
      ({ amendments }) => movedTo(amendmentsOf(amendments).excluded),
    );
  const ofDays = readingsOfDays(db, (row) => amendmentsNow(row, moved));
  const listed = (rows: readonly ReadingRecord[]): Reading[] =>
    rows.filter((row) => !isListedAsOther(row, moved)).map((row) => toReading(row, version, moved));
  return {
    get: (id: number): Reading | undefined => {
      const row = one.get(id);
      return row && toReading(row, version, moved);
    },
    /** What the file is to say of a reading that is corrected: what was typed in megohms before the meter had a name, in these. */
    valueAmended: (
      { id, unit, raw: rawNow }: Reading,
      { raw, isAbove }: { raw: number; isAbove: boolean },
    ): Pick<Amendments, 'raw' | 'isAbove'> => {
      const row = one.get(id)!;
      const saved = unit === 'ohm' && row.unit === 'pct' ? megohmsOf(raw) : raw;
      const isSo = isMoreThan(saved, row.raw, amendmentsNow(row, moved).isAbove ?? false) === isAbove;
      return { ...(raw !== rawNow && { raw: saved }), ...(!isSo && { isAbove: isAbove && saved }) };
    },
    ofDays,
    /** The ID of the board that a reading is on, wherever it was moved. */
    boardNow: (id: number): string => moved.get(nowOf(one.get(id)!.uuid))!.code,
    /**
     * Of one board's wood in one round, in the order they were taken: on itself, and before the cut on what it came from;
     * their `boardId` tells.
     */
    ofBoard: (boardId: number, roundId: number): Reading[] => listed(ofBoard.all({ boardId, roundId })),
    /** Taken on the board itself in one round, in the order they were taken. */
    takenOn: (boardId: number, roundId: number): Reading[] => listed(takenOn.all(boardId, roundId)),
    /**
     * What a paper page may say of the board itself in one round, in the units in which it was saved: what was saved for
     * the board, and what it has now that some was moved to another board or from one; each as saved and as corrected.
     */
    pagesOf: (boardId: number, roundId: number): number[][] => {
      const all = valuesOn.all(boardId, roundId).map((row) => {
        const { raw = row.raw, movedFrom, excluded = null } = amendmentsNow(row, moved);
        return { saved: row.raw, raw, isFromOther: movedFrom !== undefined, isSlip: isSlip(excluded) };
      });
      const first = all.filter(({ isFromOther }) => !isFromOther);
      const now = all.filter((each) => !each.isSlip);
      return [first, now].flatMap((page) => [page.map(({ saved }) => saved), page.map(({ raw }) => raw)]);
    },
    /** The rounds in which the board itself was read, under whichever record of it. */
    ownRounds: (boardId: number): number[] => ownRounds.all({ boardId }),
    /** Those of these readings that are not excluded. */
    included: (ids: readonly number[]): IncludedReading[] =>
      included.all(JSON.stringify(ids)).filter(({ amendments }) => exclusionOf(amendments) === null),
    /** Those whose version of a meter's profile differs from its newest, each once, in parts of about a millisecond. */
    *ofEarlierProfiles(meterId: number): Generator<ReadingOwnerRow[], void> {
      const of = { meterId, newestId: profileIdOf(meterId) };
      const seen = new Set<number>();
      for (const { some, last, atATime } of walksOfEarlier) {
        const lastId = last.get() ?? 0;
        for (let after = 0; after < lastId; after += atATime) {
          const found = some.all({ ...of, after, upTo: after + atATime }).filter(({ id }) => !seen.has(id));
          for (const { id } of found) seen.add(id);
          yield found;
        }
      }
    },
    /** Ids of those in a round whose depth a person gave, other than by reaching it as the plan says. */
    withGivenDepth: (roundId: number): Set<number> => new Set(givenDepths.all(roundId)),
    /** The meter of the round's newest reading that has one; null where none has. */
    lastMeterOf: (roundId: number): number | null => lastMeter.get(roundId) ?? null,
    /** Boards read in the round, in the order in which each was first read. */
    boardsWalked: (roundId: number): number[] => walked.all(roundId).map((row) => row.boardId),
    /** The same, each board once that was entered twice and merged. */
    boardsCompared: (roundId: number): number[] => compared.all(roundId),
    /** The round in which the board was last read before this one, but for slips. */
    roundBefore: (boardId: number, roundId: number): number | undefined =>
      roundBefore.get({ boardId, roundId })?.roundId,
    /** The round in which the board was last read before that instant, but for slips. */
    lastRoundBefore: (boardId: number, at: string): number | undefined =>
      lastBefore.get({ boardId, at })?.roundId,
    /** Of these boards, the one read last, where that was in a round begun after an instant. */
    lastReadAfter: (boardIds: readonly number[], at: string) =>
      readAfter.get({ boardIds: JSON.stringify(boardIds), at }),
    /** Rounds in which the board was read, or before the cut what it came from, oldest first. */
    roundsOfBoard: (boardId: number): number[] => rounds.all({ boardId }).map((row) => row.roundId),
  };
}

export function readingWrites(db: Db, { profileIdOf }: ReturnType<typeof meterReads>) {
  const append = rowAppender(db, 'reading', { ...takenColumns, checksum: 'checksum' });
  const asSaved = db.prepare<[number], ReadingAsTaken>(
    `SELECT ${selected({ ...takenColumns, uuid: 'uuid' }, 'g')} FROM reading g WHERE g.id = ?`,
  );
  return {
    /** Saves a reading once more, for another board: with the value and the time that were saved, and the meter that holds now. */
    saveOn: (
      { id, meterProfileId }: Pick<Reading, 'id' | 'meterProfileId'>,
      { boardId, spotIndex, spot }: Pick<Reading, 'boardId' | 'spotIndex' | 'spot'>,
    ): { id: number; uuid: string; fromUuid: string } => {
      const { uuid: fromUuid, ...saved } = asSaved.get(id)!;
      const uuid = randomUUID();
      const reading = { ...saved, meterProfileId, boardId, spotIndex, spot: JSON.stringify(spot) };
      return {
        id: append({ ...reading, checksum: readingChecksum({ ...reading, uuid }) }, uuid),
        uuid,
        fromUuid,
      };
    },
    /** Commits one reading, which refers to its meter's newest profile; it is on disk when this returns. */
    save: ({
      meterId,
      spot,
      settled,
      ...taken
    }: Omit<Reading, 'id' | 'excluded' | 'depthFrom' | 'meterProfileId'>): number => {
      const uuid = randomUUID();
      const reading = {
        ...taken,
        spot: JSON.stringify(spot),
        settled: settled === null ? null : Number(settled),
        meterProfileId: profileIdOf(meterId),
      };
      return append({ ...reading, checksum: readingChecksum({ ...reading, uuid }) }, uuid);
    },
  };
}
