import { actParts, quoted } from './act-parts.ts';
import { undoneInTurn } from './undone-rows.ts';
import type { Db } from './yard-file.ts';

/** An act as a list of them shows it. */
export interface ListedAct {
  /** Its place in the order of acts. */
  place: number;
  id: string;
  request: string;
  /** UTC instant. */
  at: string;
  isUndone: boolean;
}

/** How many rows of a table an act added, edited or deleted, or added to what is never edited. */
export interface ActCount {
  inTable: string;
  how: 'added' | 'edited' | 'deleted';
  rows: number;
}

/** One row that an act changed. */
export interface ActSample {
  inTable: string;
  how: ActCount['how'];
  /** All of an added or deleted row; of an edited one only what changed. */
  row: Record<string, unknown>;
  /** Of an edited one, what changed, as it was; of a reading that was corrected or excluded, the value that it had, and its unit. */
  before: Record<string, unknown>;
  /** By what the row is known, and whose it is. */
  of: Record<string, unknown>;
}

/** So many rows of each kind tell what an act on many did: it does the same to all. */
const SAMPLED = 12;
/** What the rows of a table that is only ever added to are of. */
const DETAILED = new Set([
  'reading',
  'amendment',
  'wood_temperature',
  'meter_profile',
  'meter_check',
  'check_exclusion',
  'check_correction',
  'oven_check',
  'oven_weight',
  'own_fit_choice',
  'sample_cut',
  'sample_section_dry',
  'sample_weight',
  'label_print',
  'air_log',
]);

/** What was done in the yard, the newest first. */
export function actHistory(db: Db) {
  const { appended } = actParts(db);
  const select = 'SELECT a.id AS place, a.uuid AS id, a.request, a.at FROM act a';
  // One that undid or redid another is not listed beside it, nor a meter that was kept as it was.
  const listed = `AND a.outcome IS NOT NULL AND (a.undone_by IS NULL OR a.undone_by <> a.id)
    AND NOT EXISTS (SELECT 1 FROM act d WHERE d.undone_by = a.id)
    AND (a.request <> 'meter.describe' OR EXISTS (SELECT 1 FROM meter_profile p WHERE p.act_id = a.id)
      OR EXISTS (SELECT 1 FROM act_change c WHERE c.act_id = a.id))`;
  const ofYard = db.prepare<[number, number], ListedAct>(
    `${select} WHERE a.id < ? ${listed} ORDER BY a.id DESC LIMIT ?`,
  );
  const ofBoard = db.prepare<{ boardId: number; before: number; limit: number }, ListedAct>(
    `${select} WHERE a.id < @before ${listed} AND a.id IN (
       SELECT act_id FROM act_change WHERE row_uuid IN (
         SELECT uuid FROM board WHERE id = @boardId
         UNION ALL SELECT uuid FROM move WHERE board_id = @boardId
         UNION ALL SELECT uuid FROM planned_move WHERE board_id = @boardId
         UNION ALL SELECT uuid FROM reservation WHERE board_id = @boardId
         UNION ALL SELECT uuid FROM picture WHERE board_id = @boardId
         UNION ALL SELECT uuid FROM confirmed_species WHERE board_id = @boardId
         UNION ALL SELECT row_uuid FROM act_change WHERE new_values IS NULL AND old_values ->> 'board_id' = @boardId)
       UNION SELECT act_id FROM reading WHERE board_id = @boardId
       UNION SELECT k.act_id FROM amendment k WHERE k.reading_id IN (SELECT id FROM reading WHERE board_id = @boardId)
       UNION SELECT act_id FROM label_print WHERE board_id = @boardId
       UNION SELECT act_id FROM sample_cut WHERE board_id = @boardId
       UNION SELECT act_id FROM sample_weight WHERE board_id = @boardId
       UNION SELECT d.act_id FROM sample_cut c JOIN sample_section s ON s.cut_id = c.id
         JOIN sample_section_dry d ON d.section_id = s.id WHERE c.board_id = @boardId
       UNION SELECT k.act_id FROM sample_cut c JOIN amendment k ON k.sample_cut_id = c.id WHERE c.board_id = @boardId
       UNION SELECT k.act_id FROM sample_weight w JOIN amendment k ON k.sample_weight_id = w.id
         WHERE w.board_id = @boardId)
     ORDER BY a.id DESC LIMIT @limit`,
  );
  const mergesOf = db.prepare<[number], { place: number; intoId: number }>(
    `SELECT a.id AS place, a.outcome ->> 'id' AS intoId FROM act_change c JOIN act a ON a.id = c.act_id
     WHERE c.row_uuid = (SELECT uuid FROM stack WHERE id = ?) AND a.request = 'stacks.merge'
       AND c.new_values ->> 'closed_at' IS NOT NULL ORDER BY c.id DESC`,
  );
  const one = db.prepare<[string], ListedAct>(`${select} WHERE a.uuid = ?`);
  const chainLength = db.prepare<[number], number>(`${undoneInTurn('?')} SELECT count(*) FROM chain`).pluck();
  const isUndone = (place: number): boolean => (chainLength.get(place) as number) % 2 === 0;
  const changes = db.prepare<[number], { inTable: string; added: 0 | 1; deleted: 0 | 1; rows: number }>(
    `SELECT in_table AS inTable, old_values IS NULL AS added, new_values IS NULL AS deleted, count(*) AS rows
     FROM act_change WHERE act_id = ? GROUP BY 1, 2, 3`,
  );
  const additions = db.prepare<{ place: number }, { inTable: string; rows: number }>(
    appended
      .map((table) => `SELECT '${table}' AS inTable, count(*) AS rows FROM ${table} WHERE act_id = @place`)
      .join(' UNION ALL '),
  );
  const sampleOf = db.prepare<
    [number, string, number, number],
    { uuid: string; before: string | null; after: string | null }
  >(
    `SELECT row_uuid AS uuid, old_values AS before, new_values AS after FROM act_change
     WHERE act_id = ? AND in_table = ? AND (old_values IS NULL) = ? AND (new_values IS NULL) = ? LIMIT ${SAMPLED}`,
  );
  const stacksOf = db
    .prepare<[number], number>(
      `SELECT count(DISTINCT json_extract(new_values, '$.stack_id')) FROM act_change
       WHERE act_id = ? AND in_table = 'board' AND old_values IS NULL`,
    )
    .pluck();
  const detailOf = new Map(
    appended
      .filter((table) => DETAILED.has(table))
      .map((table) => [
        table,
        db.prepare<[number], Record<string, unknown>>(
          `SELECT * FROM ${table} WHERE act_id = ? ORDER BY id LIMIT ${SAMPLED}`,
        ),
      ]),
  );
  const laterNames = db.prepare<[string, number], { before: string }>(
    `SELECT old_values AS before FROM act_change WHERE row_uuid = ? AND act_id > ? AND old_values IS NOT NULL ORDER BY id`,
  );
  const outcomeName = db
    .prepare<[number], string | null>("SELECT outcome ->> 'name' FROM act WHERE id = ?")
    .pluck();
  const outcomeId = db
    .prepare<[string, number], number | null>('SELECT outcome ->> ? FROM act WHERE id = ?')
    .pluck();
  const rowBy = new Map<string, ReturnType<typeof db.prepare>>();
  const rowOf = (table: string, column: 'id' | 'uuid', value: unknown) => {
    const sql = `SELECT * FROM ${quoted(table)} WHERE ${column} = ?`;
    const statement = rowBy.get(sql) ?? db.prepare(sql);
    rowBy.set(sql, statement);
    return statement.get(value) as Record<string, unknown> | undefined;
  };
  const lost = (which: string) =>
    db
      .prepare<{ table: string; value: unknown }, string>(
        `SELECT old_values FROM act_change WHERE in_table = @table AND ${which} = @value AND new_values IS NULL
         ORDER BY id DESC LIMIT 1`,
      )
      .pluck();
  const lostBy = { id: lost("old_values ->> 'id'"), uuid: lost('row_uuid') };
  const valueBefore = db
    .prepare<{ field: string; readingId: unknown; id: unknown; actId: unknown }, string>(
      `SELECT value FROM amendment k WHERE k.reading_id = @readingId AND k.field = @field AND k.id < @id
         AND NOT EXISTS (SELECT 1 FROM undone_row u WHERE u.uuid = k.uuid AND @actId > (SELECT max(c.act_id)
           FROM act_change c WHERE c.row_uuid = u.uuid AND c.in_table = 'undone_row'))
       ORDER BY k.id DESC LIMIT 1`,
    )
    .pluck();
  /** A reading before it was corrected or excluded: its value, unit and `>`, and the value that was saved first. */
  function beforeAmended(row: Record<string, unknown>): Record<string, unknown> {
    const { reading_id: readingId, field, id, act_id: actId } = row;
    if (readingId == null || !['raw', 'isAbove', 'excluded'].includes(String(field))) return {};
    const saved = rowOf('reading', 'id', readingId);
    const before = (which: string) => valueBefore.get({ field: which, readingId, id, actId });
    const [value = JSON.stringify(saved?.raw), isAbove = 'false'] = [before('raw'), before('isAbove')];
    return { value, unit: saved?.unit, isAbove, saved: saved?.raw };
  }
  /** A row as it is, or as it was when it was deleted. */
  function rowOrLost(
    table: string,
    column: 'id' | 'uuid',
    value: unknown,
  ): Record<string, unknown> | undefined {
    const was = () => lostBy[column].get({ table, value });
    return rowOf(table, column, value) ?? JSON.parse(was() ?? 'null') ?? undefined;
  }

  /** A row's own name after an act: as it is now, but for what later acts renamed. */
  function nameThen(row: Record<string, unknown> | undefined, place: number): string | null {
    if (row === undefined) return null;
    const column = 'code' in row ? 'code' : 'name';
    for (const { before } of laterNames.all(row.uuid as string, place)) {
      const was = JSON.parse(before) as Record<string, unknown>;
      if (typeof was[column] === 'string') return was[column];
    }
    return typeof row[column] === 'string' ? row[column] : null;
  }

  return {
    /**
     * Some acts, the newest first.
     * @param before  the place of the oldest that is shown; null for the first of them
     * @param boardId  null for all
     */
    page: (before: number | null, limit: number, boardId: number | null): ListedAct[] => {
      const from = before ?? Number.MAX_SAFE_INTEGER;
      const acts = boardId === null ? ofYard.all(from, limit) : ofBoard.all({ boardId, before: from, limit });
      return acts.map((act) => ({ ...act, isUndone: isUndone(act.place) }));
    },
    listed: (id: string): ListedAct | undefined => {
      const act = one.get(id);
      return act && { ...act, isUndone: isUndone(act.place) };
    },
    counts: (place: number): ActCount[] => [
      ...changes.all(place).map(({ inTable, added, deleted, rows }): ActCount => {
        const how = added === 1 ? 'added' : deleted === 1 ? 'deleted' : 'edited';
        return { inTable, how, rows };
      }),
      ...additions
        .all({ place })
        .filter(({ rows }) => rows > 0)
        .map(({ inTable, rows }): ActCount => ({ inTable, how: 'added', rows })),
    ],
    /** In how many stacks the boards are that an act added. */
    stacksOfAdded: (place: number): number => stacksOf.get(place) ?? 0,
    /** Some rows of one kind of an act's changes, in the order in which they were made. */
    samples: (place: number, { inTable, how }: Pick<ActCount, 'inTable' | 'how'>): ActSample[] => {
      const detail = detailOf.get(inTable);
      if (detail) {
        return detail.all(place).map((row) => {
          const before = inTable === 'amendment' ? beforeAmended(row) : {};
          return { inTable, how, row, before, of: row };
        });
      }
      if (appended.includes(inTable)) return [];
      return sampleOf
        .all(place, inTable, how === 'added' ? 1 : 0, how === 'deleted' ? 1 : 0)
        .map(({ uuid, before, after }) => {
          const was = JSON.parse(before ?? '{}') as Record<string, unknown>;
          if (how !== 'edited') {
            const whole = { ...was, ...JSON.parse(after ?? '{}') };
            return { inTable, how, row: whole, before: {}, of: whole };
          }
          const row = rowOrLost(inTable, 'uuid', uuid);
          const of = {
            shown_name: nameThen(row, place),
            id: row?.id,
            board_id: row?.board_id,
            stack_id: row?.stack_id,
            place_id: row?.place_id,
            sensor_id: row?.sensor_id,
            dated_by: row?.dated_by,
          };
          return { inTable, how, row: JSON.parse(after as string), before: was, of };
        });
    },
    /** What a record of a table was called after an act; null where no act deleted it, and it is gone. */
    nameThen: (table: string, id: unknown, place: number): string | null =>
      id == null ? null : nameThen(rowOrLost(table, 'id', id), place),
    /** The stack that another was last merged into, by its id; undefined where it never was. */
    stackMergedInto: (stackId: number): number | undefined =>
      mergesOf.all(stackId).find(({ place }) => !isUndone(place))?.intoId,
    /** What the record that an act came to was called then. */
    outcomeName: (place: number): string | null => outcomeName.get(place) ?? null,
    /** An id in what an act came to; null where it names none. */
    idOfOutcome: (place: number, name: 'meterId'): number | null => outcomeId.get(`$.${name}`, place) ?? null,
    /** What was measured, or the round of it, as it is; undefined where there is none. */
    measured: (table: string, id: unknown): Record<string, unknown> | undefined => rowOf(table, 'id', id),
  };
}
