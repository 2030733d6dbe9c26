import { tableOf, type YardTableName, yardTableNames } from '../../shared-core/exchange/yard-tables.ts';
import type { Db } from '../store/yard-file.ts';
import { newActsOf, other, type Side } from './differences.ts';

/** The table of UUIDs of acts that came into a side from other files, and were not undone with the act that brought them. */
const knownTo = (side: Side): string => `temp.acts_known_to_${side}`;
const undoneIn = (side: Side): string => `temp.undone_merges_of_${side}`;

/**
 * Works out which acts of each file are news to the other, in tables of the connection. What was brought in by an act that
 * is undone is news again; that act, and what undid it, did nothing.
 */
export function findNewActs(db: Db): void {
  const sides = ['main', 'theirs'] as const;
  for (const side of sides) {
    db.exec(`
      DROP TABLE IF EXISTS ${undoneIn(side)};
      CREATE TABLE ${undoneIn(side)} AS
        WITH RECURSIVE chain (root, id, n) AS (
          SELECT id, id, 0 FROM ${side}.act WHERE request = 'exchange.merge'
          UNION ALL SELECT c.root, a.undone_by, n + 1 FROM chain c JOIN ${side}.act a ON a.id = c.id
            WHERE a.undone_by IS NOT NULL AND a.undone_by <> a.id)
        SELECT root, id FROM chain
        WHERE root IN (SELECT root FROM chain GROUP BY root HAVING max(n) % 2 = 1);
      DROP TABLE IF EXISTS ${knownTo(side)};
      CREATE TABLE ${knownTo(side)} (uuid TEXT PRIMARY KEY);
      INSERT OR IGNORE INTO ${knownTo(side)} SELECT uuid FROM ${side}.merged_act
        WHERE by_act NOT IN (SELECT a.uuid FROM ${undoneIn(side)} u JOIN ${side}.act a ON a.id = u.root);
    `);
  }
  for (const side of sides) {
    db.exec(`
      DROP TABLE IF EXISTS ${newActsOf(side)};
      CREATE TABLE ${newActsOf(side)} (id INTEGER PRIMARY KEY);
      INSERT INTO ${newActsOf(side)} SELECT id FROM ${side}.act
        WHERE uuid NOT IN (SELECT uuid FROM ${other(side)}.act)
          AND uuid NOT IN (SELECT uuid FROM ${knownTo(other(side))})
          AND id IS NOT (SELECT act_id FROM ${side}.act_now)
          AND id NOT IN (SELECT id FROM ${undoneIn(side)});
    `);
  }
}

/** Writes down that the own file knows the acts of the other from here on, by the act under way. */
export function rememberActs(db: Db): void {
  db.prepare(
    `INSERT INTO main.merged_act (uuid, by_act)
     SELECT uuid, (SELECT uuid FROM main.act WHERE id = (SELECT act_id FROM main.act_now))
     FROM (SELECT uuid FROM theirs.act UNION SELECT uuid FROM ${knownTo('theirs')})
     WHERE uuid NOT IN (SELECT uuid FROM main.act) AND uuid NOT IN (SELECT uuid FROM ${knownTo('main')})`,
  ).run();
}

/**
 * Rows that are never deleted, came from the other file, and hold no longer here because the act that brought them was
 * undone: they come in again. To be called after `findNewActs`.
 */
export function rowsBroughtAgain(db: Db) {
  const uuids = new Map<YardTableName, string[]>();
  for (const named of yardTableNames) {
    const { table, way } = tableOf(named);
    if (way === 'edited' || named === 'undoneRows') continue;
    const found = db
      .prepare<[], string>(
        `SELECT t.uuid FROM ${undoneIn('main')} u JOIN main.${table} m ON m.act_id = u.root
           JOIN theirs.${table} t ON t.uuid = m.uuid
         WHERE u.id = u.root AND m.uuid IN (SELECT uuid FROM main.undone_row)
           AND m.uuid NOT IN (SELECT uuid FROM theirs.undone_row) ORDER BY t.id`,
      )
      .pluck()
      .all();
    if (found.length > 0) uuids.set(named, found);
  }
  const all = new Set([...uuids.values()].flat());
  return {
    of: (named: YardTableName): readonly string[] => uuids.get(named) ?? [],
    has: (uuid: string): boolean => all.has(uuid),
  };
}
