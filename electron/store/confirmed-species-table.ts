import { randomUUID } from 'node:crypto';
import type { Db } from './yard-file.ts';

/** What a person said of a board after looking at it; it holds as long as the board is entered as that species. */
export function confirmedSpeciesWrites(db: Db) {
  const put = db.prepare(
    `INSERT INTO confirmed_species (board_id, uuid, species_id, confirmed_at)
     SELECT id, ?, species_id, ? FROM board WHERE id = ?
     ON CONFLICT (board_id) DO UPDATE SET
       species_id = excluded.species_id, confirmed_at = excluded.confirmed_at, version = version + 1`,
  );
  return {
    /** The species that the board is entered as is right. */
    confirm: (boardId: number, at: string): void => {
      put.run(randomUUID(), at, boardId);
    },
  };
}
