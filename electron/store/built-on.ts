import type { Change } from './act-changes.ts';
import type { Found, Row } from './act-parts.ts';
import { sameBoard } from './lineage.ts';
import type { Db } from './yard-file.ts';

const CUT = `o.how <> 'merged'`;
/** SQL for the newest change that added a row. */
const cameBy = (uuid: string): string =>
  `(SELECT max(h.id) FROM act_change h WHERE h.row_uuid = ${uuid} AND h.old_values IS NULL)`;

/** Later acts that were built on a record without naming it: they would be wrong without it. */
export function builtOn(db: Db) {
  // Pieces have copies of the moves and the readings of their board, whichever record of it was cut.
  const cut = db.prepare<{ boardId: unknown; id: number; acts: string }, Found & { boardId: number }>(
    `WITH RECURSIVE kept (id) AS (SELECT @boardId
       UNION SELECT o.child_id FROM kept k JOIN board_origin o ON o.parent_id = k.id AND NOT (${CUT}))
     SELECT o.uuid, o.parent_id AS boardId, h.act_id AS actId FROM kept k
       JOIN board_origin o ON o.parent_id = k.id AND ${CUT} JOIN act_change h ON h.id = ${cameBy('o.uuid')}
     WHERE h.id > @id AND h.act_id NOT IN (SELECT value FROM json_each(@acts)) ORDER BY h.id DESC LIMIT 1`,
  );
  const repeated = db.prepare<
    { boardId: unknown; placeId: unknown; since: unknown; id: number; acts: string },
    Found
  >(
    `SELECT h.row_uuid AS uuid, h.act_id AS actId FROM act_change h
     WHERE h.old_values ->> 'board_id' = @boardId AND h.new_values IS NULL AND h.in_table = 'move'
       AND h.old_values ->> 'place_id' = @placeId AND h.old_values ->> 'since' >= @since AND h.id > @id
       AND h.act_id NOT IN (SELECT value FROM json_each(@acts))
       AND NOT EXISTS (SELECT 1 FROM move m WHERE m.uuid = h.row_uuid) ORDER BY h.id DESC`,
  );
  const differs = db
    .prepare<{ pieceId: unknown; boardId: unknown }, 0 | 1>(
      `SELECT (SELECT stack_id FROM board WHERE id = @pieceId) <> (SELECT stack_id FROM board WHERE id = @boardId)
         OR EXISTS (SELECT place_id, since FROM move WHERE board_id = @boardId
              EXCEPT SELECT place_id, since FROM move WHERE board_id = @pieceId)
         OR EXISTS (SELECT place_id, since FROM move WHERE board_id = @pieceId
              EXCEPT SELECT place_id, since FROM move WHERE board_id = @boardId)`,
    )
    .pluck();
  const putElsewhere = db
    .prepare<{ boardId: unknown; id: number; acts: string }, number>(
      `SELECT h.act_id FROM act_change h WHERE h.id > @id AND h.act_id NOT IN (SELECT value FROM json_each(@acts)) AND (
         h.in_table = 'board' AND h.row_uuid = (SELECT uuid FROM board WHERE id = @boardId) AND h.new_values ->> 'stack_id' IS NOT NULL
         OR h.in_table = 'move' AND (h.old_values ->> 'board_id' = @boardId
           OR h.row_uuid IN (SELECT uuid FROM move WHERE board_id = @boardId)))
       ORDER BY h.id DESC LIMIT 1`,
    )
    .pluck();
  const readSince = db.prepare<[number], number>('SELECT 1 FROM reading WHERE act_id > ? LIMIT 1').pluck();
  const readAgain = db.prepare<{ act: number; undoneBy: number }, { boardId: number; actId: number }>(
    `WITH later AS (SELECT g.board_id, g.round_id, max(g.act_id) AS act_id, group_concat(g.raw || g.unit, ' ' ORDER BY g.id) AS raws FROM reading g
         WHERE g.act_id > @undoneBy AND g.uuid NOT IN (SELECT uuid FROM undone_row) GROUP BY 1, 2)
     SELECT l.board_id AS boardId, l.act_id AS actId FROM later l JOIN round r ON r.id = l.round_id
     WHERE EXISTS (SELECT 1 FROM reading g JOIN round f ON f.id = g.round_id
       WHERE g.board_id IN ${sameBoard('l.board_id')} AND g.act_id = @act AND f.id <> r.id AND f.stack_id = r.stack_id
         AND abs(julianday(f.started_at) - julianday(r.started_at)) < 0.5
       GROUP BY g.round_id HAVING group_concat(g.raw || g.unit, ' ' ORDER BY g.id) = l.raws) LIMIT 1`,
  );
  return {
    /** Whether a piece stands, or stood, elsewhere than the board that it was cut from. */
    differs: (pieceId: unknown, boardId: unknown): boolean => differs.get({ pieceId, boardId }) === 1,
    /** The newest act since a change that put the board elsewhere. */
    putElsewhereSince: (boardId: unknown, { id }: Change, acts: string) =>
      putElsewhere.get({ boardId, id, acts }) ?? null,
    /** Who saved the readings of an act of one day again after it was undone, and for which board. */
    readAgainSince: (act: number, undoneBy: number) =>
      readSince.get(undoneBy) === undefined ? undefined : readAgain.get({ act, undoneBy }),
    /** The newest cut of a board, or of what it was merged into, since a change: with the board that was cut. */
    cutSince: (boardId: unknown, { id }: Change, acts: string) => cut.get({ boardId, id, acts }),
    /** Moves of the board to where this one already was, that are gone since a change: the newest loss first. */
    repeatedSince: ({ board_id: boardId, place_id: placeId, since }: Row, { id }: Change, acts: string) =>
      repeated.all({ boardId, placeId, since, id, acts }),
  };
}
