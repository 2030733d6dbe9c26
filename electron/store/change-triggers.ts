import type { Db } from './yard-file.ts';

/**
 * Tables whose rows a person edits or deletes, each with its columns that are only a cache. How to undo a change of them
 * is written down by the file itself, so that no use case has to remember it. Whatever else a person enters goes to
 * tables that are only ever added to, and bears the number of its act.
 */
const recordedTables: Record<string, readonly string[]> = {
  species: [],
  end_use: [],
  place: ['air_offset_pct', 'air_act'],
  stack: [],
  board: [
    'latest_round_id',
    'latest_call',
    'latest_average_pct',
    'latest_at',
    'place_id',
    'ready_on',
    'probe_why',
    'probe_ms',
    'air_offset_pct',
    'air_precision',
    'told_offset_pct',
    'told_precision',
    'surface_log',
    'surface_precision',
    'told_surface_log',
    'told_surface_precision',
  ],
  board_origin: [],
  move: [],
  planned_move: [],
  meter: [],
  round: ['compared_by_rules'],
  confirmed_species: [],
  setting: [],
  project: [],
  reservation: [],
  test_block: [],
  picture: [],
  air_sensor: [],
  air_sensor_stay: [],
  air_exclusion: [],
  undone_row: [],
};

/** The names of those tables. */
export const recorded: readonly string[] = Object.keys(recordedTables);

/** Of a table's columns, those that are made again from the rest. */
export const cacheColumns = (table: string): readonly string[] => recordedTables[table] ?? [];

/** Their ids are names, which a person gives again. */
const textIds = ['species', 'end_use'];

const rememberId = (table: string): string => `
         INSERT INTO used_id VALUES ('${table}', old.id)
           ON CONFLICT (in_table) DO UPDATE SET id = max(id, excluded.id);`;

/**
 * Makes the triggers that write to `act_change` what an act does to the recorded tables, by the columns that these now
 * have. To be called after every migration; a column added by one is then recorded too.
 */
export function recordChanges(db: Db): void {
  for (const [table, caches] of Object.entries(recordedTables)) {
    const columns = (db.pragma(`table_info(${table})`) as { name: string }[])
      .map((column) => column.name)
      .filter((name) => !caches.includes(name));
    const remember = columns.includes('id') && !textIds.includes(table) ? rememberId(table) : '';
    const row = (which: 'old' | 'new') =>
      `json_object(${columns.map((name) => `'${name}', ${which}.${name}`).join(', ')})`;
    const changed = (value: 'was' | 'becomes') =>
      `(SELECT json_group_object(name, ${value}) FROM (${columns
        .map((name) => `SELECT '${name}' AS name, old.${name} AS was, new.${name} AS becomes`)
        .join(' UNION ALL ')}) WHERE was IS NOT becomes)`;
    const record = (uuid: string, oldValues: string, newValues: string, after = '') =>
      `WHEN (SELECT act_id FROM act_now) IS NOT NULL
       BEGIN INSERT INTO act_change (act_id, in_table, row_uuid, old_values, new_values)
         SELECT act_id, '${table}', ${uuid}, ${oldValues}, ${newValues} FROM act_now;${after} END;`;
    db.exec(`
      DROP TRIGGER IF EXISTS ${table}_added;
      DROP TRIGGER IF EXISTS ${table}_edited;
      DROP TRIGGER IF EXISTS ${table}_deleted;
      CREATE TRIGGER ${table}_added AFTER INSERT ON ${table} ${record('new.uuid', 'NULL', row('new'))}
      CREATE TRIGGER ${table}_edited AFTER UPDATE OF ${columns} ON ${table}
        ${record('new.uuid', changed('was'), changed('becomes'))}
      CREATE TRIGGER ${table}_deleted AFTER DELETE ON ${table} ${record('old.uuid', row('old'), 'NULL', remember)}
    `);
  }
}
