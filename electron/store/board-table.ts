import type { Statement } from 'better-sqlite3';
import { type Archived, type ArchivedWhy, archivedWhySchema } from '../../shared-core/contract/archive.ts';
import { nameKey } from '../../shared-core/contract/import.ts';
import {
  type Board,
  type BoardRow,
  boardSchema,
  latestFindingSchema,
  type Move,
  type NewBoard,
} from '../../shared-core/contract/yard.ts';
import type { Call } from '../../shared-core/probing/calls/assessment.ts';
import { asJudged, judgeByFinding } from '../../shared-core/probing/calls/judgement.ts';
import type { SizesOfBoard } from '../../shared-core/wood/movement/volume.ts';
import type { BadCacheCollector } from './bad-caches.ts';
import {
  type BoardPage,
  conditionOf,
  countedFrom,
  IS_CUT,
  LEFT_NOTE,
  orderOf,
  SHOWN_ARCHIVED,
  WHY_LEFT,
  WITH_STACK,
} from './board-page.ts';
import { type Columns, recordAdder, recordEditor, selected } from './columns.ts';
import { countOnce } from './count-once.ts';
import { earlierCodes } from './earlier-codes.ts';
import { keptRecord, sameBoard } from './lineage.ts';
import { moveReads, moveWrites } from './move-table.ts';
import { outlookFrom } from './outlook-table.ts';
import { parsedOnce } from './parsed-once.ts';
import { readJson, valueIn } from './read-json.ts';
import { hasEffect, holds } from './undone-rows.ts';
import type { Db } from './yard-file.ts';

const columns: Columns<NewBoard> = {
  code: 'code',
  stackId: 'stack_id',
  speciesId: 'species_id',
  thicknessMm: 'thickness_mm',
  thicknessQuarters: 'thickness_quarters',
  widthMm: 'width_mm',
  lengthMm: 'length_mm',
  sawnOn: 'sawn_on',
  driedBy: 'dried_by',
  sawing: 'sawing',
  ringRadiusMm: 'ring_radius_mm',
  barkSide: 'bark_side',
  barkOffOn: 'bark_off_on',
  log: 'log',
  layer: 'layer',
  column: 'stack_column',
  note: 'note',
};
const recordColumns: Columns<Board & { version: number }> = { id: 'id', version: 'version', ...columns };

interface BoardRecord
  extends Omit<BoardRow, 'latest' | 'outlook' | 'judgement' | 'isElsewhere' | 'archived'> {
  finding: string | null;
  outlook: string | null;
  archivedAt: string | null;
  archivedWhy: string | null;
  mergedInto: string | null;
  isElsewhere: 0 | 1;
}

/** What a tally is made from; `averagePct` null where it was never soundly probed. */
interface BoardToTally
  extends Pick<Board, 'id' | 'speciesId' | 'thicknessMm' | 'thicknessQuarters' | 'widthMm' | 'lengthMm'> {
  /** Null where none can be relied on. */
  averagePct: number | null;
  call: Call | null;
  stackName: string;
  endUseId: string;
}

/** What a round shows of a board before it is read. */
export interface BoardToProbe
  extends Pick<Board, 'id' | 'code' | 'thicknessMm' | 'thicknessQuarters' | 'lengthMm'> {
  speciesName: string;
}

interface BoardOnPage extends BoardToProbe, Pick<Board, 'sawnOn'> {
  stackId: number;
  stackName: string;
  /** When it left the yard or was cut; null where it did not. */
  leftAt: string | null;
  /** How, as a code; '' where it did not. */
  why: string;
  /** JSON. */
  came: string | null;
  /** JSON: the IDs of other records of it. */
  otherCodes: string;
  /** JSON: what it was cut from, and when. */
  cut: string | null;
}

/** What an edit of many boards rests on. */
export interface BoardVersion {
  id: number;
  code: string;
  version: number;
  stackId: number;
}

interface JudgedBy<Flag>
  extends Pick<
    Board,
    | 'code'
    | 'speciesId'
    | 'thicknessMm'
    | 'thicknessQuarters'
    | 'lengthMm'
    | 'widthMm'
    | 'sawing'
    | 'sawnOn'
    | 'driedBy'
    | 'barkSide'
    | 'barkOffOn'
  > {
  endUseId: string;
  /** Whether a person looked and says that it is of this species. */
  isSpeciesConfirmed: Flag;
}

const select = `
  SELECT ${selected(recordColumns, 'b')}, s.name AS stackName, coalesce(w.name, w.id) AS speciesName,
    m.place_id AS placeId, p.name AS placeName, m.since AS placeSince, b.place_id <> s.place_id AS isElsewhere,
    f.record AS finding, o.record AS outlook, best.name AS bestPlaceName,
    b.archived_at AS archivedAt, b.archived_why AS archivedWhy,
    (SELECT k.code FROM board k WHERE b.archived_at IS NOT NULL AND k.id = ${keptRecord('b.id')} AND k.id <> b.id) AS mergedInto
  FROM board b
  JOIN stack s ON s.id = b.stack_id
  JOIN species w ON w.id = b.species_id
  JOIN move m ON m.id = (SELECT id FROM move WHERE board_id = b.id ORDER BY since DESC, id DESC LIMIT 1)
  JOIN place p ON p.id = m.place_id
  LEFT JOIN finding f ON f.board_id = b.id AND f.round_id = b.latest_round_id
  LEFT JOIN outlook o ON o.board_id = b.id
  LEFT JOIN place best ON best.id = ${valueIn('o.record', '$.judgement.bestPlaceId')}`;

/** SQL for a board \`s\` that left and was read as what it is: its readings teach as before. */
const TEACHES_STILL = `${valueIn('s.archived_why', '$.code')} IN ('sold', 'used', 'scrapped', 'ripped', 'crosscut')`;

/** A page is asked for again at each change, and most of its boards are as they were. */
const latestOf = parsedOnce((record: string) => readJson(latestFindingSchema, record) ?? null);

function latestFrom(record: string | null, boardId: number, badCaches: BadCacheCollector) {
  if (record === null) return null;
  const latest = latestOf(record);
  if (latest === null) badCaches.add('findings', boardId);
  return latest;
}

/** From when until before when a local year is. */
const yearOf = (year: number | null) =>
  year === null
    ? {}
    : { leftFrom: new Date(year, 0, 1).toISOString(), leftBefore: new Date(year + 1, 0, 1).toISOString() };

function archivedFrom({ archivedAt: at, archivedWhy, mergedInto }: BoardRecord): Archived | null {
  if (at === null) return null;
  const why = readJson(archivedWhySchema, archivedWhy ?? '') ?? { code: 'unknown', note: '' };
  return { ...why, at, ...(mergedInto !== null && { into: mergedInto }) };
}

const toRowBy =
  (badCaches: BadCacheCollector) =>
  (record: BoardRecord): BoardRow => {
    const { finding, outlook: saved, isElsewhere, ...row } = record;
    const latest = latestFrom(finding, row.id, badCaches);
    const outlook = outlookFrom(saved, row.id, badCaches);
    const judgement = outlook?.judgement ?? judgeByFinding(latest);
    return {
      ...boardSchema.parse(row),
      version: row.version,
      stackName: row.stackName,
      speciesName: row.speciesName,
      placeId: row.placeId,
      placeName: row.placeName,
      placeSince: row.placeSince,
      isElsewhere: isElsewhere === 1,
      outlook,
      judgement,
      bestPlaceName: row.bestPlaceName,
      latest: latest && asJudged(latest, judgement),
      archived: archivedFrom(record),
    };
  };

/** One that was sold, used, scrapped or cut. */
interface LeftBoard {
  id: number;
  code: string;
  speciesId: string;
  sawnOn: string | null;
  thicknessMm: number;
  thicknessQuarters: number | null;
  leftAt: string;
  isCut: 0 | 1;
}

/** Boards; archived ones only by their id. */
export function boardReads(db: Db, badCaches: BadCacheCollector) {
  const toRow = toRowBy(badCaches);
  const one = db.prepare<[number], BoardRecord>(`${select} WHERE b.id = ?`);
  const speciesOf = db.prepare<[number], { name: string }>(
    `SELECT DISTINCT coalesce(w.name, w.id) AS name FROM board b JOIN species w ON w.id = b.species_id
     WHERE b.stack_id = ? AND b.archived_at IS NULL ORDER BY 1`,
  );
  /** Each list its own statements, so that each finds its index. */
  const lists = new Map<
    string,
    {
      condition: string;
      page: Statement<[object], BoardRecord>;
      count: Statement<[object], { n: number }>;
    }
  >();
  function listOf(wanted: BoardPage) {
    const condition = conditionOf(wanted);
    const { order, from } = orderOf(wanted);
    const key = `${condition} ${order}`;
    const known = lists.get(key);
    if (known) return known;
    const made = {
      condition,
      // The page's ids first: the joins are then made for its boards only, however far down it lies.
      page: db.prepare<[object], BoardRecord>(
        `${select} WHERE b.id IN (SELECT b.id ${from} ${condition} ${order} LIMIT @limit OFFSET @offset)
         ${order}`,
      ),
      count: db.prepare<[object], { n: number }>(`SELECT count(*) AS n ${countedFrom(wanted)} ${condition}`),
    };
    lists.set(key, made);
    return made;
  }
  const countedOnce = countOnce(db);
  const inStackOf = (stackId: string) => `b.stack_id = ${stackId} AND b.archived_at IS NULL`;
  const inStack = inStackOf('?');
  const withStack = `${inStack} ${WITH_STACK}`;
  const idsOf = db.prepare<[number], { id: number }>(
    `SELECT b.id FROM board b WHERE ${inStack} ORDER BY b.id`,
  );
  const idsWith = db.prepare<[number], { id: number }>(
    `SELECT b.id FROM board b WHERE ${withStack} ORDER BY b.id`,
  );
  const siblings = db.prepare<[number, number], { id: number }>(
    `SELECT s.id FROM board b JOIN board s ON s.stack_id = b.stack_id AND s.species_id = b.species_id
       AND s.log = b.log COLLATE NOCASE AND s.id <> b.id
       AND EXISTS (SELECT 1 FROM reading g WHERE g.board_id IN ${sameBoard('s.id')})
       AND NOT EXISTS (SELECT 1 FROM lineage l WHERE l.board_id = b.id AND l.ancestor_id = s.id)
     WHERE b.id = ? AND b.log <> '' AND (s.archived_at IS NULL OR ${TEACHES_STILL}) AND s.latest_call IS NOT NULL ORDER BY s.id LIMIT ?`,
  );
  const toProbe = `SELECT b.id, b.code, b.thickness_mm AS thicknessMm, b.thickness_quarters AS thicknessQuarters,
    b.length_mm AS lengthMm, coalesce(w.name, w.id) AS speciesName FROM board b JOIN species w ON w.id = b.species_id`;
  /** At a place; with the stack where that is null. */
  const atPlace = `b.stack_id = @stackId AND b.archived_at IS NULL
    AND b.place_id = coalesce(@placeId, (SELECT place_id FROM stack WHERE id = @stackId))`;
  const walked = db.prepare<{ stackId: number; placeId: number | null; lastId: number | null }, BoardToProbe>(
    `${toProbe} WHERE ${atPlace} AND (@lastId IS NULL OR b.id <= @lastId) ORDER BY b.id`,
  );
  const leftBehind = db.prepare<[string], { id: number; version: number; placeId: number }>(
    `SELECT s.id, s.version, (SELECT b.place_id FROM board b INDEXED BY board_by_standing WHERE ${inStackOf('s.id')}
       GROUP BY b.place_id ORDER BY count(*) DESC, b.place_id LIMIT 1) AS placeId
     FROM stack s WHERE s.id IN (SELECT value FROM json_each(?))
       AND NOT EXISTS (SELECT 1 FROM board b INDEXED BY board_by_standing
         WHERE ${inStackOf('s.id')} AND b.place_id = s.place_id)
       AND EXISTS (SELECT 1 FROM board b INDEXED BY board_by_standing WHERE ${inStackOf('s.id')})`,
  );
  const firstAdded = db.prepare<[number], { at: string | null }>(
    'SELECT min(m.since) AS at FROM board b JOIN move m ON m.board_id = b.id WHERE b.stack_id = ?',
  );
  // Of its first boards: more tell the same, and a stack of 100,000 would keep others waiting.
  const hereSince = db
    .prepare<[number], string>(
      `SELECT since FROM
         (SELECT (SELECT max(m.since) FROM move m WHERE m.board_id = b.id) AS since FROM board b
          JOIN stack s ON s.id = b.stack_id WHERE ${withStack} ORDER BY b.id LIMIT 500)
       GROUP BY since ORDER BY count(*) DESC, since LIMIT 1`,
    )
    .pluck();
  const sawnBy = db.prepare<{ stackId: number; placeId: number | null; day: string }, { n: number }>(
    `SELECT count(*) AS n FROM board b WHERE ${atPlace} AND (b.sawn_on IS NULL OR b.sawn_on <= @day)`,
  );
  const readInRound = db.prepare<[number], BoardToProbe>(
    `${toProbe} WHERE b.id IN (SELECT ${keptRecord('g.board_id')} FROM reading g WHERE round_id = ? AND ${holds('g')}) ORDER BY b.id`,
  );
  /** Of one that was sold, used or scrapped, a person gave the day alone. */
  const LEFT_YARD = `${WHY_LEFT} IN ('sold', 'used', 'scrapped')`;
  const goneBy = db.prepare<{ stackId: number; dayFrom: string }, { code: string }>(
    `SELECT b.code FROM board b
     WHERE b.stack_id = @stackId AND b.archived_at < @dayFrom AND ${LEFT_YARD} ORDER BY b.code`,
  );
  const leftYard = db.prepare<[], LeftBoard>(
    `SELECT b.id, b.code, b.species_id AS speciesId, b.sawn_on AS sawnOn, b.thickness_mm AS thicknessMm,
       b.thickness_quarters AS thicknessQuarters, b.archived_at AS leftAt, ${IS_CUT} AS isCut FROM board b
     WHERE b.archived_at IS NOT NULL AND (${LEFT_YARD} OR ${IS_CUT}) ORDER BY b.archived_at, b.id`,
  );
  const leftAfter = db.prepare<
    [number, number],
    { id: number; code: string; note: string; leftAt: string } & SizesOfBoard
  >(
    `SELECT b.id, ${WHY_LEFT} AS code, ${LEFT_NOTE} AS note, b.archived_at AS leftAt, b.thickness_mm AS thicknessMm,
       b.width_mm AS widthMm, b.length_mm AS lengthMm FROM board b
     WHERE b.archived_at IS NOT NULL AND b.id > ? ORDER BY b.id LIMIT ?`,
  );
  const buyers = db
    .prepare<[], string>(
      `SELECT DISTINCT ${LEFT_NOTE} FROM board b WHERE b.archived_at IS NOT NULL AND ${WHY_LEFT} = 'sold'`,
    )
    .pluck();
  /** One buyer may be written with capitals and spaces, or without. */
  const spellingsOf = (name: string): string[] =>
    buyers.all().filter((each) => nameKey(each) === nameKey(name));
  const onPage = db.prepare<{ stackId: number; at: string; more: string }, BoardOnPage>(
    `WITH put AS MATERIALIZED (
       SELECT c.id, c.row_uuid, c.old_values ->> 'stack_id' AS stack_id, a.at
       FROM act a JOIN act_change c ON c.act_id = a.id
       WHERE a.at > @at AND c.in_table = 'board' AND c.old_values ->> 'stack_id' IS NOT NULL
         AND c.new_values ->> 'stack_id' IS NOT NULL AND ${hasEffect('a')})
     SELECT b.id, b.code, b.thickness_mm AS thicknessMm, b.thickness_quarters AS thicknessQuarters,
       b.length_mm AS lengthMm, coalesce(w.name, w.id) AS speciesName, b.sawn_on AS sawnOn,
       b.stack_id AS stackId, t.name AS stackName, b.archived_at AS leftAt, ${WHY_LEFT} AS why,
       (SELECT json_group_array(m.code) FROM board m
         WHERE m.id IN ${sameBoard('b.id')} AND m.id <> b.id AND m.code <> b.code) AS otherCodes,
       (SELECT json_object('fromCode', p.code, 'cutOn', o.at) FROM board_origin o JOIN board p ON p.id = o.parent_id
         WHERE o.child_id = b.id AND o.how <> 'merged' LIMIT 1) AS cut,
       (SELECT json_object('stackId', s.id, 'stackName', s.name, 'cameAt', p.at) FROM put p
         JOIN stack s ON s.id = p.stack_id WHERE p.row_uuid = b.uuid ORDER BY p.id LIMIT 1) AS came
     FROM board b JOIN species w ON w.id = b.species_id JOIN stack t ON t.id = b.stack_id
     WHERE b.id IN (SELECT ${keptRecord('m.id')} FROM board m WHERE m.stack_id = @stackId
         UNION SELECT m.id FROM put p JOIN board m ON m.uuid = p.row_uuid WHERE p.stack_id = @stackId
         UNION SELECT value FROM json_each(@more)) ${SHOWN_ARCHIVED} AND ${WHY_LEFT} <> 'merged'
     ORDER BY b.stack_id <> @stackId AND b.id IN (SELECT value FROM json_each(@more)), b.id`,
  );
  const codesOf = db.prepare<[number], { code: string }>(
    `SELECT b.code FROM board b WHERE b.stack_id = ?
       AND NOT EXISTS (SELECT 1 FROM board_origin o WHERE o.child_id = b.id AND o.how <> 'merged') ORDER BY b.id DESC`,
  );
  const byCode = db.prepare<[string], { id: number }>(
    'SELECT id FROM board WHERE code = ? AND archived_at IS NULL',
  );
  const withCodes = db.prepare<[string], { code: string; stackName: string }>(
    `SELECT b.code, s.name AS stackName FROM board b JOIN stack s ON s.id = b.stack_id
     WHERE b.archived_at IS NULL AND b.code IN (SELECT value FROM json_each(?)) ORDER BY b.id`,
  );
  const leftWith = db.prepare<[string], { id: number }>(
    `SELECT id FROM board b WHERE code = ? AND b.archived_at IS NOT NULL ${SHOWN_ARCHIVED} ORDER BY b.id DESC LIMIT 1`,
  );
  const mergedWith = db
    .prepare<[string], number>(
      `SELECT id FROM board b WHERE code = ? AND b.archived_at IS NOT NULL AND ${WHY_LEFT} = 'merged'
       ORDER BY id DESC LIMIT 1`,
    )
    .pluck();
  const merged = db.prepare<[], { code: string; intoId: number }>(
    `SELECT b.code, ${keptRecord('b.id')} AS intoId FROM board b
     WHERE b.archived_at IS NOT NULL AND ${WHY_LEFT} = 'merged' ORDER BY b.id`,
  );
  const total = db.prepare<[], { n: number }>('SELECT count(*) AS n FROM board WHERE archived_at IS NULL');
  const toTally = `SELECT b.id, b.species_id AS speciesId, b.thickness_mm AS thicknessMm,
       b.thickness_quarters AS thicknessQuarters, b.width_mm AS widthMm, b.length_mm AS lengthMm,
       b.latest_average_pct AS averagePct, b.latest_call AS call, s.name AS stackName, s.end_use_id AS endUseId
     FROM board b JOIN stack s ON s.id = b.stack_id`;
  const tallied = db.prepare<[number, number], BoardToTally>(
    `${toTally} WHERE b.archived_at IS NULL AND b.id > ? ORDER BY b.id LIMIT ?`,
  );
  const talliedInStack = db.prepare<[number, number, number], BoardToTally>(
    `${toTally} WHERE ${withStack} AND b.id > ? ORDER BY b.id LIMIT ?`,
  );
  const topLayer = db.prepare<[number], { layer: number | null }>(
    `SELECT max(b.layer) AS layer FROM board b WHERE ${withStack}`,
  );
  const everOf = db.prepare<[number], { id: number }>('SELECT id FROM board WHERE stack_id = ? ORDER BY id');
  const idsOfSpecies = db.prepare<[string], { id: number }>('SELECT id FROM board WHERE species_id = ?');
  const idsForEndUse = db.prepare<[string], { id: number }>(
    'SELECT b.id FROM board b JOIN stack s ON s.id = b.stack_id WHERE s.end_use_id = ?',
  );
  const judgedBy = db.prepare<[number], JudgedBy<number>>(
    `SELECT b.code, b.species_id AS speciesId, s.end_use_id AS endUseId, b.thickness_mm AS thicknessMm,
       b.thickness_quarters AS thicknessQuarters, b.length_mm AS lengthMm, b.width_mm AS widthMm, b.sawing, b.sawn_on AS sawnOn, b.dried_by AS driedBy,
       b.bark_side AS barkSide, b.bark_off_on AS barkOffOn, c.board_id IS NOT NULL AS isSpeciesConfirmed
     FROM board b JOIN stack s ON s.id = b.stack_id
     LEFT JOIN confirmed_species c ON c.board_id = b.id AND c.species_id = b.species_id WHERE b.id = ?`,
  );

  const calls = db.prepare<[string], { id: number; code: string; call: Call | null }>(
    `SELECT id, code, latest_call AS call FROM board WHERE id IN (SELECT value FROM json_each(?)) ORDER BY id`,
  );
  const versions = db.prepare<[string], BoardVersion>(
    `SELECT id, code, version, stack_id AS stackId FROM board WHERE id IN (SELECT value FROM json_each(?)) ORDER BY id`,
  );
  const archived = db.prepare<[string], { id: number; code: string }>(
    `SELECT id, code FROM board WHERE archived_at IS NOT NULL AND id IN (SELECT value FROM json_each(?)) ORDER BY id`,
  );
  const ids = (rows: { id: number }[]): number[] => rows.map((row) => row.id);

  return {
    get: (id: number): BoardRow | undefined => {
      const row = one.get(id);
      return row && toRow(row);
    },
    page: (wanted: BoardPage) => {
      const { stackId, offset, limit } = wanted;
      const search = wanted.search.trim();
      const like = `%${search.replace(/[\\%_]/g, '\\$&')}%`;
      const { year = null, soldTo = null } = wanted.left ?? {};
      const buyer = soldTo === null ? null : JSON.stringify(spellingsOf(soldTo));
      const those = { stackId, like, soldTo: buyer, ...yearOf(year) };
      const { condition, count, page } = listOf({ ...wanted, search });
      const rows = page.all({ ...those, limit, offset }).map(toRow);
      // A search looks through all boards for a page that is not full: no need to do so twice.
      const isLast = rows.length < limit && (rows.length > 0 || offset === 0);
      const total = isLast
        ? offset + rows.length
        : countedOnce(JSON.stringify([condition, those]), () => count.get(those)?.n ?? 0);
      return { total, rows };
    },
    total: (): number => total.get()?.n ?? 0,
    /** Those that are with a stack, or all of the yard where it is null; in the order of their ids. */
    toTally: (stackId: number | null, afterId: number, limit: number): BoardToTally[] =>
      stackId === null ? tallied.all(afterId, limit) : talliedInStack.all(stackId, afterId, limit),
    /**
     * Those of a stack that are at a place, or with the stack where that is null, in the order of their ids, as they are
     * walked; up to the one of that id.
     */
    toProbe: (stackId: number, placeId: number | null, lastId: number | null = null): BoardToProbe[] =>
      walked.all({ stackId, placeId, lastId }),
    /** Of those that left the yard, in the order of their ids. */
    leftAfter: (afterId: number, limit: number) => leftAfter.all(afterId, limit),
    /** Those sold, used, scrapped or cut, in the order in which they were. */
    leftYard: (): LeftBoard[] => leftYard.all(),
    /** The IDs of those of a stack that were sold, used or scrapped before a day. */
    goneBy: (stackId: number, dayFrom: string): string[] =>
      goneBy.all({ stackId, dayFrom }).map(({ code }) => code),
    /**
     * All that are of a stack or were of it at an instant, as the acts tell that hold, and then those of `more`, each in the
     * order of their ids; of a board that was entered twice, the record that stayed.
     */
    onPage: (stackId: number, at: string, more: readonly number[]) =>
      onPage
        .all({ stackId, at, more: JSON.stringify(more) })
        .map(({ came: put, otherCodes, cut, ...board }) => {
          const came =
            put === null ? null : (JSON.parse(put) as { stackId: number; stackName: string; cameAt: string });
          return {
            ...board,
            otherCodes: JSON.parse(otherCodes) as string[],
            /** What it is a piece of, and since when; null for a whole board. */
            cut: cut === null ? null : (JSON.parse(cut) as { fromCode: string; cutOn: string }),
            /** The stack that it was in then. */
            stackIdThen: came?.stackId ?? board.stackId,
            /** Which other stack it was in then, and until when; null where it was in this one, as far as is known. */
            came: came?.stackId === stackId ? null : came,
          };
        })
        .filter(
          ({ id, ...board }) => [board.stackId, board.stackIdThen].includes(stackId) || more.includes(id),
        ),
    /** When the first board of a stack was added; null where it has none. */
    firstAddedAt: (stackId: number): string | null => firstAdded.get(stackId)?.at ?? null,
    /** Whether one of those of `toProbe` may have been sawn by that day. */
    isAnySawnBy: (stackId: number, placeId: number | null, day: string): boolean =>
      sawnBy.get({ stackId, placeId, day })!.n > 0,
    /** Wherever they are now; of what was merged, the board that stays. */
    readInRound: (roundId: number): BoardToProbe[] => readInRound.all(roundId),
    /** Those that are where the stack is. */
    idsWithStack: (stackId: number): number[] => ids(idsWith.all(stackId)),
    /**
     * Boards of the same stack, species and log that were probed themselves: what they teach helps to forecast this one. Not
     * what it was cut from: those readings are its own.
     */
    probedSiblings: (boardId: number, most: number): number[] => ids(siblings.all(boardId, most)),
    idsOfStack: (stackId: number): number[] => ids(idsOf.all(stackId)),
    /** Of these stacks, those that none of their boards is with, and where most of these are. */
    stacksLeftBehind: (stackIds: readonly number[]) => leftBehind.all(JSON.stringify(stackIds)),
    /** Archived ones too. */
    idsEverOfStack: (stackId: number): number[] => ids(everOf.all(stackId)),
    idsOfSpecies: (speciesId: string): number[] => ids(idsOfSpecies.all(speciesId)),
    idsForEndUse: (endUseId: string): number[] => ids(idsForEndUse.all(endUseId)),
    /** Codes of a stack's boards, the newest board first; archived ones too, but none of pieces, whose numbers are of their own. */
    codesOfStack: (stackId: number): string[] => codesOf.all(stackId).map((row) => row.code),
    /** By name, each once. */
    speciesOfStack: (stackId: number): string[] => speciesOf.all(stackId).map(({ name }) => name),
    /** Whether a board has it, or had it when it left: its label, and what a person wrote down, still name it. */
    isCodeKnown: (code: string): boolean => (byCode.get(code) ?? leftWith.get(code)) !== undefined,
    /** Those of these codes that boards have, with their stacks. */
    withCodes: (codes: readonly string[]) => withCodes.all(JSON.stringify(codes)),
    idByCode: (code: string): number | undefined => byCode.get(code)?.id,
    /** The newest record with that code that left the yard, was cut, or was merged into another. */
    leftByCode: (code: string): number | undefined => leftWith.get(code)?.id,
    /** The newest record with that code that was merged into another. */
    mergedByCode: (code: string): number | undefined => mergedWith.get(code),
    /** Records that were merged into others, with the rows of these; the newest comes last. */
    merged: () => merged.all(),
    /** IDs that boards had before they were given others; the latest change comes last. */
    earlierCodes: earlierCodes(db),
    /** Of their latest rounds, in the order of their ids; null of a board that was not probed. */
    callsOf: (boardIds: readonly number[]) => calls.all(JSON.stringify(boardIds)),
    /** In the order of their ids; archived ones too. */
    versionsOf: (boardIds: readonly number[]): BoardVersion[] => versions.all(JSON.stringify(boardIds)),
    /** Of these boards, those that are archived, in the order of their ids. */
    archivedOf: (boardIds: readonly number[]): Pick<Board, 'id' | 'code'>[] =>
      archived.all(JSON.stringify(boardIds)),
    /** Since when most of a stack's boards have been at its place; null where none is there. */
    hereSince: (stackId: number): string | null => hereSince.get(stackId) ?? null,
    topLayer: (stackId: number): number | null => topLayer.get(stackId)?.layer ?? null,
    /** The little of a board that judging it rests on; asked for a thousand boards at a time. */
    judgedBy: (boardId: number): JudgedBy<boolean> | undefined => {
      const row = judgedBy.get(boardId);
      return row && { ...row, isSpeciesConfirmed: row.isSpeciesConfirmed === 1 };
    },
  };
}

export function boardWrites(db: Db, { get }: ReturnType<typeof boardReads>) {
  const add = recordAdder(db, 'board', columns);
  const moves = moveWrites(db, moveReads(db));
  const archive = db.prepare(
    `UPDATE board SET archived_at = ?, archived_why = ?, version = version + 1
     WHERE id IN (SELECT value FROM json_each(?)) AND archived_at IS NULL`,
  );
  const putAll = db.prepare(
    `UPDATE board SET stack_id = ?, layer = NULL, stack_column = NULL, version = version + 1
     WHERE id IN (SELECT value FROM json_each(?))`,
  );
  const bringBack = db.prepare(
    `UPDATE board SET archived_at = NULL, archived_why = NULL, code = coalesce(?, code), version = version + 1
     WHERE id = ? AND archived_at IS NOT NULL`,
  );
  return {
    /** A board, and that it stands at a place since an instant. */
    add: (board: NewBoard, placeId: number, since: string, datedBy: Move['datedBy'] = 'clock'): number => {
      const boardId = add(board);
      moves.add({ boardId, placeId, since, datedBy });
      return boardId;
    },
    edit: recordEditor(db, 'board', columns, get),
    /** They are in no list from then on. @param at  UTC, ISO 8601 */
    archive: (boardIds: readonly number[], at: string, why: ArchivedWhy): void => {
      archive.run(at, JSON.stringify(why), JSON.stringify(boardIds));
    },
    /** All are in another stack, where nobody knows how they lie. */
    putIn: (boardIds: readonly number[], stackId: number): void => {
      putAll.run(stackId, JSON.stringify(boardIds));
    },
    /** @param code  null where it keeps its own; one that another board has is refused by the file */
    bringBack: (boardId: number, code: string | null): void => {
      bringBack.run(code, boardId);
    },
  };
}
