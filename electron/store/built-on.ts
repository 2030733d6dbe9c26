import type { Change } from './act-changes.ts';
import type { Found, Row } from './act-parts.ts';
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
  return {
    /** The newest cut of a board, or of what it was merged into, since a change: with the board that was cut. */
    cutSince: (boardId: unknown, { id }: Change, acts: string) => cut.get({ boardId, id, acts }),
    /** Moves of the board to where this one already was, that are gone since a change: the newest loss first. */
    repeatedSince: ({ board_id: boardId, place_id: placeId, since }: Row, { id }: Change, acts: string) =>
      repeated.all({ boardId, placeId, since, id, acts }),
  };
}
