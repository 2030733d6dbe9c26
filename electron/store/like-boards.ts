import { likeCodes } from '../../shared-core/contract/board-code.ts';
import type { Db } from './yard-file.ts';

/** Boards that may be another record of one: neither what it was cut from nor its pieces, which are other boards. */
export function likeBoardReads(db: Db) {
  const likeliest = (among: string) =>
    db
      .prepare<{ id: number; codes: string; like: string; limit: number }, number>(
        `SELECT o.id FROM board b CROSS JOIN board o WHERE b.id = @id AND o.id IN (${among}) AND o.id <> b.id
         AND NOT EXISTS (SELECT 1 FROM lineage WHERE board_id = b.id AND ancestor_id = o.id)
         AND NOT EXISTS (SELECT 1 FROM lineage WHERE board_id = o.id AND ancestor_id = b.id)
       ORDER BY 4 * (o.code IN (SELECT value FROM json_each(@codes))) + 2 * (o.stack_id = b.stack_id) + 2 * (o.species_id = b.species_id)
         + (o.thickness_mm = b.thickness_mm) + (o.width_mm IS b.width_mm) + (o.length_mm IS b.length_mm) DESC, o.id
       LIMIT @limit`,
      )
      .pluck();
  // Each by an index: a yard may have 100,000 boards.
  const atFirst =
    likeliest(`SELECT id FROM board WHERE archived_at IS NULL AND code IN (SELECT value FROM json_each(@codes))
    UNION SELECT id FROM board WHERE archived_at IS NULL AND stack_id = (SELECT stack_id FROM board WHERE id = @id)`);
  const found = likeliest(
    `SELECT id FROM board INDEXED BY board_by_code WHERE archived_at IS NULL AND code LIKE @like ESCAPE '\\'`,
  );
  const codeOf = db.prepare<[number], string>('SELECT code FROM board WHERE id = ?').pluck();
  return {
    /**
     * Their ids, the likeliest first.
     * @param search  part of their IDs; of an empty one, those of like IDs and of its stack
     */
    of: (id: number, search: string, limit: number): number[] => {
      const text = search.trim();
      const like = `%${text.replace(/[\\%_]/g, '\\$&')}%`;
      const codes = JSON.stringify(likeCodes(codeOf.get(id) ?? ''));
      return (text === '' ? atFirst : found).all({ id, codes, like, limit });
    },
  };
}
