import type { Db } from './yard-file.ts';

/** An ID without what is easily left out of one. */
const plain = (code: string) => `replace(replace(${code}, '-', ''), '0', '')`;

/** Boards that may be another record of one: neither what it was cut from nor its pieces, which are other boards. */
export function likeBoardReads(db: Db) {
  const like = db
    .prepare<{ id: number; like: string; limit: number }, number>(
      `SELECT o.id FROM board b CROSS JOIN board o WHERE b.id = @id AND o.archived_at IS NULL AND o.id <> b.id
         AND o.code LIKE @like ESCAPE '\\'
         AND NOT EXISTS (SELECT 1 FROM lineage WHERE board_id = b.id AND ancestor_id = o.id)
         AND NOT EXISTS (SELECT 1 FROM lineage WHERE board_id = o.id AND ancestor_id = b.id)
       ORDER BY 3 * (${plain('o.code')} = ${plain('b.code')}) + 2 * (o.stack_id = b.stack_id) + 2 * (o.species_id = b.species_id)
         + (o.thickness_mm = b.thickness_mm) + (o.width_mm IS b.width_mm) + (o.length_mm IS b.length_mm) DESC, o.id
       LIMIT @limit`,
    )
    .pluck();
  return {
    /**
     * Their ids, the likeliest first.
     * @param search  part of their IDs
     */
    of: (id: number, search: string, limit: number): number[] =>
      like.all({ id, like: `%${search.trim().replace(/[\\%_]/g, '\\$&')}%`, limit }),
  };
}
