import {
  type Field,
  tableOf,
  type YardTableName,
  yardTableNames,
} from '../../shared-core/exchange/yard-tables.ts';
import type { Db } from '../store/yard-file.ts';
import { columnOfField } from '../store/yard-records.ts';
import { newActsOf, other, type Side } from './differences.ts';

/** Records of what they are of: editing one is work on that. */
const PARTS: ReadonlySet<YardTableName> = new Set([
  'boardOrigins',
  'moves',
  'plannedMoves',
  'reservations',
  'confirmedSpecies',
  'pictures',
]);

/** What is done to these is done to what they name as well; those that others here name come later. */
const PASSED_ON = [
  'sampleSections',
  'sampleWeights',
  'ovenWeights',
  'readings',
  'sampleCuts',
  'testBlocks',
] as const;

/** These are made without anybody's doing. */
const MADE_BY_PINTALLY: ReadonlySet<YardTableName> = new Set(['spotPlans', 'undoneRows']);

/** Where somebody went on with a record: how many records of which tables were added or edited that name it. */
export type Uses = ReadonlyMap<YardTableName, number>;

/** Columns that name a record: by its row id, or by the name that a species or a use has. */
function namingColumns(named: YardTableName): [column: string, table: string][] {
  const fields = Object.entries(tableOf(named).fields) as [string, Field][];
  return fields.flatMap(([field, of]): [string, string][] => {
    const column = columnOfField(field, of);
    if (field === 'speciesId') return [[column, 'species']];
    if (field === 'endUseId') return [[column, 'end_use']];
    const isNaming = typeof of.kind === 'object' && field !== 'meterProfile' && field !== 'lastBoard';
    return isNaming ? [[column, (of.kind as { of: string }).of]] : [];
  });
}

/**
 * What was done with records of one of two yards since they were the same, by whatever names them: a reading is work on its
 * board and its round, and so is its correction. It is worked out at the first question, in a table of the connection.
 */
export function usesOf(db: Db, side: Side): (table: string, uuid: string) => Uses {
  let find: ((table: string, uuid: string) => Uses) | null = null;
  return (table, uuid) => {
    find ??= workedOut(db, side);
    return find(table, uuid);
  };
}

function workedOut(db: Db, side: Side): (table: string, uuid: string) => Uses {
  const uses = `temp.uses_of_${side}`;
  /** Rows that the other file had and deleted: these are not new here. */
  const deleted = `temp.deleted_by_${other(side)}`;
  db.exec(`
    DROP TABLE IF EXISTS ${deleted};
    CREATE TABLE ${deleted} AS SELECT DISTINCT row_uuid AS uuid FROM ${other(side)}.act_change WHERE new_values IS NULL;
    DROP TABLE IF EXISTS ${uses};
    CREATE TABLE ${uses} (in_table TEXT, uuid TEXT, by_table TEXT, records INTEGER);
  `);
  for (const named of yardTableNames) {
    if (MADE_BY_PINTALLY.has(named)) continue;
    const { table: by, way } = tableOf(named);
    for (const [column, table] of namingColumns(named)) {
      const add = `INSERT INTO ${uses} SELECT '${table}', p.uuid, '${named}', count(*)`;
      db.exec(`${add} FROM ${side}.${by} t JOIN ${side}.${table} p ON p.id = t.${column}
        WHERE t.uuid NOT IN (SELECT uuid FROM ${other(side)}.${by}) AND t.uuid NOT IN (SELECT uuid FROM ${deleted})
          AND t.uuid NOT IN (SELECT uuid FROM ${side}.undone_row) GROUP BY p.uuid`);
      if (way !== 'edited') continue;
      const isAbout = PARTS.has(named) ? '' : `AND json_extract(c.new_values, '$.${column}') IS NOT NULL`;
      db.exec(`${add} FROM ${newActsOf(side)} a JOIN ${side}.act_change c ON c.act_id = a.id AND c.in_table = '${by}'
          JOIN ${side}.${by} t ON t.uuid = c.row_uuid JOIN ${side}.${table} p ON p.id = t.${column}
        WHERE c.old_values IS NOT NULL AND c.new_values IS NOT NULL ${isAbout}
          AND (t.uuid IN (SELECT uuid FROM ${other(side)}.${by}) OR t.uuid IN (SELECT uuid FROM ${deleted}))
        GROUP BY p.uuid`);
    }
  }
  // A meter is read with: that names a version of its profile.
  db.exec(`INSERT INTO ${uses} SELECT 'meter', m.uuid, 'readings', count(*) FROM ${side}.reading t
    JOIN ${side}.meter_profile v ON v.id = t.meter_profile_id JOIN ${side}.meter m ON m.id = v.meter_id
    WHERE t.uuid NOT IN (SELECT uuid FROM ${other(side)}.reading) AND t.uuid NOT IN (SELECT uuid FROM ${deleted})
      AND t.uuid NOT IN (SELECT uuid FROM ${side}.undone_row) GROUP BY m.uuid`);
  for (const named of PASSED_ON) {
    const { table: from } = tableOf(named);
    for (const [column, table] of namingColumns(named)) {
      db.exec(`INSERT INTO ${uses} SELECT '${table}', p.uuid, u.by_table, sum(u.records)
        FROM ${uses} u JOIN ${side}.${from} t ON t.uuid = u.uuid JOIN ${side}.${table} p ON p.id = t.${column}
        WHERE u.in_table = '${from}' GROUP BY p.uuid, u.by_table`);
    }
  }
  db.exec(`CREATE INDEX ${uses}_by_row ON uses_of_${side} (uuid)`);
  const found = db.prepare<[string, string], { named: YardTableName; records: number }>(
    `SELECT by_table AS named, sum(records) AS records FROM ${uses} WHERE uuid = ? AND in_table = ? GROUP BY 1`,
  );
  return (table, uuid) => new Map(found.all(uuid, table).map(({ named, records }) => [named, records]));
}
