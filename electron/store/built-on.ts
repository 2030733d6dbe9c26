import { z } from 'zod';
import type { Change } from './act-changes.ts';
import type { Found, Row } from './act-parts.ts';
import { sameBoard } from './lineage.ts';
import { readJson } from './read-json.ts';
import { holds } from './undone-rows.ts';
import type { Db } from './yard-file.ts';

const describedSchema = z.looseObject({ description: z.looseObject({}).nullable() });

/** What a profile says, but for what the device said of itself. */
function said(record: string): string {
  const read = readJson(describedSchema, record);
  if (!read) return record;
  const { description, ...rest } = read;
  return JSON.stringify({ ...rest, description: description && { ...description, identity: undefined } });
}
const saysTheSame = (a: string, b: string): boolean => said(a) === said(b);

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
  const isThereBefore = db
    .prepare<{ boardId: unknown; placeId: unknown; since: unknown; id: unknown }, 0 | 1>(
      `SELECT (SELECT place_id FROM move WHERE board_id = @boardId AND (since, id) < (@since, @id)
         ORDER BY since DESC, id DESC LIMIT 1) IS @placeId`,
    )
    .pluck();
  const mergedMovesLost = db.prepare<
    { tip: number; last: number; acts: string },
    Found & { boardId: number }
  >(
    `WITH both (id) AS (SELECT b.value FROM act_change o,
           json_each(json_array(o.old_values ->> 'parent_id', o.old_values ->> 'child_id')) b
         WHERE o.act_id = @tip AND o.in_table = 'board_origin' AND o.old_values ->> 'how' = 'merged'),
       later AS (SELECT h.* FROM act_change h WHERE h.in_table = 'move' AND h.id > @last
         AND h.act_id NOT IN (SELECT value FROM json_each(@acts))
         AND (h.row_uuid IN (SELECT uuid FROM move WHERE board_id IN both) OR h.old_values ->> 'board_id' IN both)),
       was AS (SELECT row_uuid, old_values, min(id) FROM later GROUP BY row_uuid)
     SELECT w.row_uuid AS uuid, (SELECT act_id FROM later WHERE row_uuid = w.row_uuid ORDER BY id DESC LIMIT 1) AS actId,
       coalesce(m.board_id, w.old_values ->> 'board_id') AS boardId
     FROM was w LEFT JOIN move m ON m.uuid = w.row_uuid
     WHERE w.old_values IS NOT NULL AND (m.id IS NULL
       OR m.place_id <> coalesce(w.old_values ->> 'place_id', m.place_id)
       OR m.since <> coalesce(w.old_values ->> 'since', m.since)) LIMIT 1`,
  );
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
  const seen = db.prepare<{ id: unknown; meterId: unknown }, Row>(
    `SELECT v.* FROM meter_profile v WHERE v.meter_id = @meterId AND v.id > @id AND v.act_id IS NULL AND ${holds('v')}
     ORDER BY v.id DESC`,
  );
  return {
    /** Versions of a meter's profile that say what this one does, and were saved by no act, as at the next connection. */
    seenSince: ({ id, meter_id: meterId, record }: Row): Row[] =>
      seen.all({ id, meterId }).filter((later) => saysTheSame(String(record), String(later.record))),
    /** Whether a piece stands, or stood, elsewhere than the board that it was cut from. */
    differs: (pieceId: unknown, boardId: unknown): boolean => differs.get({ pieceId, boardId }) === 1,
    /** The newest act since a change that put the board elsewhere. */
    putElsewhereSince: (boardId: unknown, { id }: Change, acts: string) =>
      putElsewhere.get({ boardId, id, acts }) ?? null,
    /** Who saved the readings of an act of one day again after it was undone, and for which board. */
    readAgainSince: (act: number, undoneBy: number) =>
      readSince.get(undoneBy) === undefined ? undefined : readAgain.get({ act, undoneBy }),
    /** Whether the board was already at the place of a move when it came there. */
    isThereBefore: ({ board_id: boardId, place_id: placeId, since, id }: Row): boolean =>
      isThereBefore.get({ boardId, placeId, since, id }) === 1,
    /**
     * A move of boards that were two again, which is gone or another now: with its board, and the newest act that did that.
     * Which moves count for one board was worked out from all of both.
     * @param tip  the act that parted them
     * @param last  the id of its last change
     */
    mergedMovesLostSince: (tip: number, last: number, acts: string) =>
      mergedMovesLost.get({ tip, last, acts }),
    /** The newest cut of a board, or of what it was merged into, since a change: with the board that was cut. */
    cutSince: (boardId: unknown, { id }: Change, acts: string) => cut.get({ boardId, id, acts }),
    /** Moves of the board to where this one already was, that are gone since a change: the newest loss first. */
    repeatedSince: ({ board_id: boardId, place_id: placeId, since }: Row, { id }: Change, acts: string) =>
      repeated.all({ boardId, placeId, since, id, acts }),
  };
}
