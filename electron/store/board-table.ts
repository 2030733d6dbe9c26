import { type RoundFinding, roundFindingSchema } from '../../shared-core/contract/round.ts';
import {
  type Board,
  type BoardRow,
  boardSchema,
  type LatestFinding,
  latestFindingSchema,
  type Move,
  type SharedBoardFields,
} from '../../shared-core/contract/yard.ts';
import type { Db } from './yard-file.ts';

interface BoardRecord extends Board {
  stackName: string;
  speciesName: string;
  placeId: number;
  placeName: string;
  placeSince: string;
  finding: string | null;
}

/** What a board's volume and mass are made from; `averagePct` null where it was never soundly probed. */
interface BoardSizes extends Pick<Board, 'speciesId' | 'thicknessMm' | 'widthMm' | 'lengthMm'> {
  averagePct: number | null;
}

/** What a round shows of a board before it is read. */
export interface BoardToProbe extends Pick<Board, 'id' | 'code' | 'thicknessMm' | 'lengthMm'> {
  speciesName: string;
}

interface JudgedBy<Flag> extends Pick<Board, 'code' | 'speciesId' | 'thicknessMm' | 'lengthMm'> {
  endUseId: string;
  /** Whether a person looked and says that it is of this wood. */
  isSpeciesConfirmed: Flag;
}

const select = `
  SELECT b.id, b.code, b.stack_id AS stackId, b.species_id AS speciesId, b.thickness_mm AS thicknessMm,
    b.width_mm AS widthMm, b.length_mm AS lengthMm, b.sawn_on AS sawnOn, b.sawing,
    b.ring_radius_mm AS ringRadiusMm, b.bark_side AS barkSide, b.bark_off_on AS barkOffOn,
    b.log, b.course AS layer, b.stack_column AS "column", b.note,
    s.name AS stackName, w.record ->> 'name' AS speciesName,
    m.place_id AS placeId, p.name AS placeName, m.since AS placeSince, f.record AS finding
  FROM board b
  JOIN stack s ON s.id = b.stack_id
  JOIN species w ON w.id = b.species_id
  JOIN move m ON m.id = (SELECT id FROM move WHERE board_id = b.id ORDER BY since DESC, id DESC LIMIT 1)
  JOIN place p ON p.id = m.place_id
  LEFT JOIN finding f ON f.board_id = b.id AND f.round_id = b.latest_round_id`;

const toRow = ({ finding, ...row }: BoardRecord): BoardRow => ({
  ...boardSchema.parse(row),
  stackName: row.stackName,
  speciesName: row.speciesName,
  placeId: row.placeId,
  placeName: row.placeName,
  placeSince: row.placeSince,
  latest: finding === null ? null : (latestFindingSchema.safeParse(JSON.parse(finding)).data ?? null),
});

const values = (board: Omit<Board, 'id'>) => [
  board.code,
  board.stackId,
  board.speciesId,
  board.thicknessMm,
  board.widthMm,
  board.lengthMm,
  board.sawnOn,
  board.sawing,
  board.ringRadiusMm,
  board.barkSide,
  board.barkOffOn,
  board.log,
  board.layer,
  board.column,
  board.note,
];

export function boardTable(db: Db) {
  const one = db.prepare<[number], BoardRecord>(`${select} WHERE b.id = ?`);
  const filter = `
    WHERE (@stackId IS NULL OR b.stack_id = @stackId)
      AND (@like = '%%' OR b.code LIKE @like ESCAPE '\\' OR b.log LIKE @like ESCAPE '\\'
        OR b.species_id IN (SELECT id FROM species WHERE record ->> 'name' LIKE @like ESCAPE '\\'))`;
  const page = db.prepare<[object], BoardRecord>(
    // The page's ids first: the joins are then made for its boards only, however far down it lies.
    `${select} WHERE b.id IN (SELECT b.id FROM board b ${filter} ORDER BY b.id LIMIT @limit OFFSET @offset)
     ORDER BY b.id`,
  );
  const count = db.prepare<[object], { n: number }>(`SELECT count(*) AS n FROM board b ${filter}`);
  const idsOf = db.prepare<[number], { id: number }>('SELECT id FROM board WHERE stack_id = ? ORDER BY id');
  const toProbe = db.prepare<[number], BoardToProbe>(
    `SELECT b.id, b.code, b.thickness_mm AS thicknessMm, b.length_mm AS lengthMm, w.record ->> 'name' AS speciesName
     FROM board b JOIN species w ON w.id = b.species_id WHERE b.stack_id = ? ORDER BY b.id`,
  );
  const codesOf = db.prepare<[number], { code: string }>(
    'SELECT code FROM board WHERE stack_id = ? ORDER BY id DESC',
  );
  const byCode = db.prepare<[string], { id: number }>('SELECT id FROM board WHERE code = ?');
  const total = db.prepare<[], { n: number }>('SELECT count(*) AS n FROM board');
  const sizes = db.prepare<[number], BoardSizes>(
    `SELECT b.species_id AS speciesId, b.thickness_mm AS thicknessMm, b.width_mm AS widthMm, b.length_mm AS lengthMm,
       f.record ->> 'averagePct' AS averagePct
     FROM board b LEFT JOIN finding f ON f.board_id = b.id AND f.round_id = b.latest_round_id
     WHERE b.stack_id = ?`,
  );
  const add = db.prepare(
    `INSERT INTO board (code, stack_id, species_id, thickness_mm, width_mm, length_mm, sawn_on, sawing,
       ring_radius_mm, bark_side, bark_off_on, log, course, stack_column, note)
     VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)`,
  );
  const change = db.prepare(
    `UPDATE board SET code = ?, stack_id = ?, species_id = ?, thickness_mm = ?, width_mm = ?, length_mm = ?,
       sawn_on = ?, sawing = ?, ring_radius_mm = ?, bark_side = ?, bark_off_on = ?, log = ?, course = ?, stack_column = ?,
       note = ? WHERE id = ?`,
  );
  const say = db.prepare(
    `UPDATE board SET sawing = coalesce(@sawing, sawing),
       bark_side = coalesce(@barkSide, bark_side), bark_off_on = iif(@barkSide IS NULL, bark_off_on, @barkOffOn),
       ring_radius_mm = iif(@hasRadius, @ringRadiusMm, ring_radius_mm) WHERE id = @boardId`,
  );
  const lay = db.prepare('UPDATE board SET course = ?, stack_column = ? WHERE id = ?');
  const topLayer = db.prepare<[number], { layer: number | null }>(
    'SELECT max(course) AS layer FROM board WHERE stack_id = ?',
  );
  const addMove = db.prepare('INSERT INTO move (board_id, place_id, since) VALUES (?, ?, ?)');
  const moves = db.prepare<[number], Move>(
    `SELECT m.id, m.board_id AS boardId, m.place_id AS placeId, p.name AS placeName, m.since
     FROM move m JOIN place p ON p.id = m.place_id WHERE m.board_id = ? ORDER BY m.since, m.id`,
  );
  const findings = db.prepare<[number], { record: string }>(
    'SELECT record FROM finding WHERE board_id = ? ORDER BY round_id',
  );
  const findingsInRound = db.prepare<
    { roundId: number; rules: number },
    { boardId: number; record: string | null }
  >(
    `SELECT g.board_id AS boardId, f.record FROM (SELECT DISTINCT board_id FROM reading WHERE round_id = @roundId) g
     LEFT JOIN finding f ON f.board_id = g.board_id AND f.round_id = @roundId AND f.rules_version = @rules
       AND NOT EXISTS (SELECT 1 FROM finding_due d WHERE d.board_id = g.board_id AND d.round_id = @roundId)`,
  );
  const putFinding = db.prepare(
    `INSERT INTO finding (board_id, round_id, at, verdict, record, rules_version) VALUES (?, ?, ?, ?, ?, ?)
     ON CONFLICT (board_id, round_id) DO UPDATE SET
       at = excluded.at, verdict = excluded.verdict, record = excluded.record, rules_version = excluded.rules_version`,
  );
  const markLatest = db.prepare(
    `UPDATE board SET (latest_round_id, latest_verdict) =
       (SELECT max(round_id), verdict FROM finding WHERE board_id = board.id) WHERE id = ?`,
  );
  const dropFinding = db.prepare('DELETE FROM finding WHERE board_id = ? AND round_id = ?');
  const idsOfSpecies = db.prepare<[string], { id: number }>('SELECT id FROM board WHERE species_id = ?');
  const idsForEndUse = db.prepare<[string], { id: number }>(
    'SELECT b.id FROM board b JOIN stack s ON s.id = b.stack_id WHERE s.use_id = ?',
  );
  const idsEverAt = db.prepare<[number], { id: number }>(
    'SELECT DISTINCT board_id AS id FROM move WHERE place_id = ?',
  );
  const idsReadWith = db.prepare<[number], { id: number }>(
    'SELECT DISTINCT board_id AS id FROM reading WHERE meter_id = ?',
  );
  const idsDueForJudging = db.prepare<{ rules: number }, { id: number }>(
    `SELECT board_id AS id FROM finding_due
     UNION SELECT board_id FROM finding WHERE rules_version < @rules
     UNION SELECT board_id FROM finding WHERE rules_version > @rules`,
  );
  const putDue = db.prepare<{ boardIds: string }>(
    `INSERT OR IGNORE INTO finding_due SELECT board_id, round_id FROM finding
     WHERE board_id IN (SELECT value FROM json_each(@boardIds))`,
  );
  const unsettleRounds = db.prepare<{ boardIds: string }>(
    `UPDATE round SET compared_by_rules = NULL WHERE id IN (SELECT round_id FROM finding
     WHERE board_id IN (SELECT value FROM json_each(@boardIds)))`,
  );
  const confirmSpecies = db.prepare(
    `INSERT OR REPLACE INTO confirmed_wood (board_id, species_id, confirmed_at)
     SELECT id, species_id, ? FROM board WHERE id = ?`,
  );
  const judgedBy = db.prepare<[number], JudgedBy<number>>(
    `SELECT b.code, b.species_id AS speciesId, s.use_id AS endUseId, b.thickness_mm AS thicknessMm, b.length_mm AS lengthMm,
       c.board_id IS NOT NULL AS isSpeciesConfirmed
     FROM board b JOIN stack s ON s.id = b.stack_id
     LEFT JOIN confirmed_wood c ON c.board_id = b.id AND c.species_id = b.species_id WHERE b.id = ?`,
  );

  const ids = (rows: { id: number }[]): number[] => rows.map((row) => row.id);

  return {
    get: (id: number): BoardRow | undefined => {
      const row = one.get(id);
      return row && toRow(row);
    },
    page: (wanted: { stackId: number | null; search: string; offset: number; limit: number }) => {
      const like = `%${wanted.search.trim().replace(/[\\%_]/g, '\\$&')}%`;
      const parameters = { stackId: wanted.stackId, like, limit: wanted.limit, offset: wanted.offset };
      return { total: count.get(parameters)?.n ?? 0, rows: page.all(parameters).map(toRow) };
    },
    total: (): number => total.get()?.n ?? 0,
    sizesOfStack: (stackId: number): BoardSizes[] => sizes.all(stackId),
    /** In the order of their ids, as they are walked. */
    toProbe: (stackId: number): BoardToProbe[] => toProbe.all(stackId),
    idsOfStack: (stackId: number): number[] => ids(idsOf.all(stackId)),
    idsOfSpecies: (speciesId: string): number[] => ids(idsOfSpecies.all(speciesId)),
    idsForEndUse: (endUseId: string): number[] => ids(idsForEndUse.all(endUseId)),
    idsEverAt: (placeId: number): number[] => ids(idsEverAt.all(placeId)),
    /** Boards with a reading of that meter's. */
    idsReadWith: (meterId: number): number[] => ids(idsReadWith.all(meterId)),
    /** Boards with readings that no finding of these rules covers, or whose finding is older than what was said of them. */
    idsDueForJudging: (rulesVersion: number): number[] => ids(idsDueForJudging.all({ rules: rulesVersion })),
    /** Something that all findings of these boards, and the comparisons of their rounds, rest on is another now. */
    outdateFindings: (boardIds: readonly number[]): void => {
      const of = { boardIds: JSON.stringify(boardIds) };
      putDue.run(of);
      unsettleRounds.run(of);
    },
    /** Codes of a stack's boards, the newest board first. */
    codesOfStack: (stackId: number): string[] => codesOf.all(stackId).map((row) => row.code),
    idByCode: (code: string): number | undefined => byCode.get(code)?.id,
    add: (board: Omit<Board, 'id'>, placeId: number, since: string): number => {
      const id = Number(add.run(...values(board)).lastInsertRowid);
      addMove.run(id, placeId, since);
      return id;
    },
    change: (board: Board): void => {
      change.run(...values(board), board.id);
    },
    /** Changes only what is said. */
    say: (boardId: number, { sawing, barkSide, barkOffOn, ringRadiusMm }: SharedBoardFields): void => {
      say.run({
        boardId,
        sawing: sawing ?? null,
        barkSide: barkSide ?? null,
        barkOffOn: barkOffOn ?? null,
        hasRadius: ringRadiusMm === undefined ? 0 : 1,
        ringRadiusMm: ringRadiusMm ?? null,
      });
    },
    lay: (boardId: number, layer: number, column: number): void => {
      lay.run(layer, column, boardId);
    },
    topLayer: (stackId: number): number | null => topLayer.get(stackId)?.layer ?? null,
    /** A person says that the wood it is entered as is right. */
    confirmSpecies: (boardId: number, at: string): void => {
      confirmSpecies.run(at, boardId);
    },
    /** The little of a board that judging it rests on; asked for a thousand boards at a time. */
    judgedBy: (boardId: number): JudgedBy<boolean> | undefined => {
      const row = judgedBy.get(boardId);
      return row && { ...row, isSpeciesConfirmed: row.isSpeciesConfirmed === 1 };
    },
    addMove: (boardId: number, placeId: number, since: string): void => {
      addMove.run(boardId, placeId, since);
    },
    /** Oldest first. */
    moves: (boardId: number): Move[] => moves.all(boardId),
    /** Oldest first. */
    findings: (boardId: number): LatestFinding[] =>
      findings
        .all(boardId)
        .flatMap((row) => latestFindingSchema.safeParse(JSON.parse(row.record)).data ?? []),
    /** Of every board read in the round; null where its readings are still to be judged by these rules. */
    findingsInRound: (roundId: number, rulesVersion: number): Map<number, RoundFinding | null> =>
      new Map(
        findingsInRound.all({ roundId, rules: rulesVersion }).map(({ boardId, record }) => {
          // One kept before a finding said as much as today is as good as none.
          const saved = roundFindingSchema.safeParse(record === null ? null : JSON.parse(record));
          return [boardId, saved.success ? saved.data : null];
        }),
      ),
    putFinding: (boardId: number, finding: RoundFinding, rulesVersion: number): void => {
      putFinding.run(
        boardId,
        finding.roundId,
        finding.at,
        finding.call,
        JSON.stringify(finding),
        rulesVersion,
      );
      markLatest.run(boardId);
    },
    dropFinding: (boardId: number, roundId: number): void => {
      dropFinding.run(boardId, roundId);
      markLatest.run(boardId);
    },
  };
}
