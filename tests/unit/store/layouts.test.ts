import { readFileSync } from 'node:fs';
import Database from 'better-sqlite3';
import { afterEach, describe, expect, test } from 'vitest';
import { settingsOf } from '../../../electron/app/yard/settings.ts';
import { migrations } from '../../../electron/store/migrations.ts';
import { type ReadingAsTaken, readingChecksum } from '../../../electron/store/reading-checksum.ts';
import { digestOfNewest, NEWEST_SCHEMA } from '../../../electron/store/schema-repair.ts';
import { openYard } from '../../../electron/store/yard.ts';
import { openYardFile, YardFileProblem } from '../../../electron/store/yard-file.ts';
import { usualSettings } from '../../../shared-core/contract/settings.ts';
import { plainDescription } from '../../../shared-core/gatt/meter-description.ts';
import { papersOfEarlier } from '../../../shared-core/labels/paper.ts';
import { basisNow } from '../../../shared-core/probing/readings/plan-basis.ts';
import { isReadAt, planSpots } from '../../../shared-core/probing/readings/spots.ts';
import { message } from '../../../shared-core/words/message.ts';
import { copyOfLayout } from './layout-copy.ts';

/** The same made-up yard as each earlier layout held it: `make-layouts.ts`. */
const earlier = Array.from({ length: 9 }, (_, index) => index + 1);

let open: { close(): void }[] = [];
afterEach(() => {
  for (const each of open.reverse()) each.close();
  open = [];
});
function closedLater<T extends { close(): void }>(each: T): T {
  open.push(each);
  return each;
}

const everyBoard = {
  stackId: null,
  search: '',
  offset: 0,
  limit: 100,
} as const;

type Row = Record<string, unknown>;
const rows = (db: Database.Database, sql: string): Row[] => db.prepare(sql).all() as Row[];
const columnsOf = (db: Database.Database, table: string): string[] =>
  rows(db, `SELECT name FROM pragma_table_info('${table}')`).map((column) => String(column.name));
/** A finding's call is in its record since layout 19. */
const keptColumnsOf = (db: Database.Database, table: string): string[] =>
  columnsOf(db, table).filter((name) => table !== 'finding' || name !== 'call');
/** Nothing ever wrote to the air log of earlier layouts, and layout 38 has another. */
const tablesOf = (db: Database.Database): string[] =>
  rows(db, "SELECT name FROM sqlite_schema WHERE type = 'table' AND name <> 'air_log'").map((table) =>
    String(table.name),
  );

/** A file of that layout before and after it is opened. */
function migrated(layout: number) {
  const before = closedLater(new Database(copyOfLayout(layout)));
  const file = copyOfLayout(layout);
  const { db: after } = openYardFile(file);
  closedLater(after);
  return { before, after, file };
}

test('what the newest layout comes to is known, so that no start has to make it', { tags: 'core' }, () => {
  expect(NEWEST_SCHEMA).toBe(digestOfNewest());
});

/** Where the rows of an earlier table are now. Columns of the same name hold the same. */
const isNow: Record<string, { table: string; renamed?: Record<string, string>; elsewhere?: string[] }> = {
  species: { table: 'species' },
  use: { table: 'end_use' },
  place: { table: 'place' },
  stack: { table: 'stack', renamed: { use_id: 'end_use_id' } },
  // The call is a cache: it is made again from the readings.
  board: { table: 'board', renamed: { course: 'layer' }, elsewhere: ['latest_round_id', 'latest_verdict'] },
  move: { table: 'move' },
  meter: { table: 'meter', elsewhere: ['description'] },
  // As above.
  round: { table: 'round', elsewhere: ['compared_by_rules'] },
  wood_temperature: { table: 'wood_temperature', renamed: { said_at: 'given_at' } },
  reading: { table: 'reading', elsewhere: ['meter_id'] },
  // Compared by themselves: a name within the value was changed.
  setting: { table: 'setting', elsewhere: ['value'] },
  oven_check: { table: 'oven_check', elsewhere: ['meter_id'] },
  oven_mass: { table: 'oven_weight' },
  own_fit_choice: { table: 'own_fit_choice' },
  sample_cut: { table: 'sample_cut' },
  sample_section: { table: 'sample_section' },
  sample_section_dry: { table: 'sample_section_dry' },
  sample_mass: { table: 'sample_weight' },
  confirmed_wood: { table: 'confirmed_species' },
};
/** Exclusions, compared by themselves, and caches. */
const notAsRows = ['reading_mark', 'oven_mark', 'sample_mark', 'finding', 'finding_due', 'round_doubt'];

const exclusion = (why: unknown) =>
  why === null ? null : why === 'Taken back during the round.' ? { code: 'undone-in-round' } : { text: why };

describe.each(earlier)('a yard file of layout %i', (layout) => {
  test('keeps every row as it was: values, instants, names and references', () => {
    const { before, after } = migrated(layout);
    const tables = tablesOf(before);
    expect(tables.filter((table) => isNow[table] === undefined && !notAsRows.includes(table))).toEqual([]);
    let compared = 0;
    for (const table of tables) {
      const now = isNow[table];
      if (now === undefined) continue;
      const names = columnsOf(before, table).filter((name) => !now.elsewhere?.includes(name));
      const was = rows(before, `SELECT ${names} FROM ${table} ORDER BY 1`);
      const list = names.map((name) => `${now.renamed?.[name] ?? name} AS ${name}`);
      expect(rows(after, `SELECT ${list} FROM ${now.table} ORDER BY 1`)).toEqual(was);
      compared += was.length;
    }
    expect(compared).toBeGreaterThan(100);
  });

  test('keeps which meter a value came from, and how that meter is read', () => {
    const { before, after } = migrated(layout);
    const fromMeter = (table: string, join: string) =>
      `SELECT g.id, m.kind, m.device_id, m.name, ${join} ORDER BY g.id`.replaceAll('TABLE', table);
    const was = 'm.description FROM TABLE g LEFT JOIN meter m ON m.id = g.meter_id';
    const is =
      "nullif(p.record, 'null') AS description FROM TABLE g LEFT JOIN meter_profile p ON p.id = g.meter_profile_id LEFT JOIN meter m ON m.id = p.meter_id";
    for (const table of ['reading', 'oven_check'].filter((each) => tablesOf(before).includes(each))) {
      const old = rows(before, fromMeter(table, was));
      expect(old.some((row) => row.kind !== null)).toBe(true);
      expect(rows(after, fromMeter(table, is))).toEqual(old);
    }
    const described = 'SELECT id, description FROM meter WHERE description IS NOT NULL ORDER BY id';
    expect(
      rows(
        after,
        'SELECT meter_id AS id, record AS description FROM meter_profile WHERE version = 1 ORDER BY meter_id',
      ),
    ).toEqual(rows(before, described));
  });

  test('keeps every exclusion and inclusion, in order, with its instant and reason', () => {
    const { before, after } = migrated(layout);
    const marks = [
      ['reading_mark', 'reading_id AS id, why, marked_at FROM reading_mark', 'reading_id'],
      ['oven_mark', 'check_id AS id, why, marked_at FROM oven_mark WHERE mass_id IS NULL', 'oven_check_id'],
      [
        'oven_mark',
        'mass_id AS id, why, marked_at FROM oven_mark WHERE mass_id IS NOT NULL',
        'oven_weight_id',
      ],
      [
        'sample_mark',
        'cut_id AS id, why, marked_at FROM sample_mark WHERE cut_id IS NOT NULL',
        'sample_cut_id',
      ],
      [
        'sample_mark',
        'mass_id AS id, why, marked_at FROM sample_mark WHERE mass_id IS NOT NULL',
        'sample_weight_id',
      ],
    ].filter(([table]) => tablesOf(before).includes(table as string));
    let kept = 0;
    for (const [table, was, column] of marks) {
      const old = rows(before, `SELECT ${was} ORDER BY ${table}.id`);
      const now = rows(
        after,
        `SELECT ${column} AS id, value, at FROM amendment WHERE ${column} IS NOT NULL AND field = 'excluded' ORDER BY amendment.id`,
      );
      expect(now.map(({ id, value, at }) => ({ id, why: JSON.parse(String(value)), marked_at: at }))).toEqual(
        old.map((row) => ({ ...row, why: exclusion(row.why) })),
      );
      kept += old.length;
    }
    expect(rows(after, 'SELECT count(*) AS n FROM amendment')).toEqual([{ n: kept }]);
  });

  test('keeps units, sound, saving when settled and label layouts', () => {
    const file = copyOfLayout(layout);
    const db = new Database(file);
    db.exec(`UPDATE setting SET value = json_set(value, '$.sound', json('false'), '$.keepWhenSettled', json('false'),
      '$.labelLayouts.single.labelWidthMm', 50.8)`);
    const { keepWhenSettled, ...old } = JSON.parse(String(rows(db, 'SELECT value FROM setting')[0]?.value));
    db.close();
    const yard = closedLater(openYard(file));
    const settings = yard.settings.get('settings');
    expect(old).toMatchObject({ units: 'imperial', sound: false });
    expect(settings).toEqual({ ...old, saveWhenSettled: keepWhenSettled });
    // What came since is as usual.
    const { labelLayouts, ...others } = old;
    const labelPapers = papersOfEarlier(labelLayouts);
    expect(settingsOf(yard)).toEqual({
      ...usualSettings,
      ...others,
      saveWhenSettled: keepWhenSettled,
      labelPapers,
    });
    // 60 × 30 mm of a page, of which the person's label had 50.8 mm.
    expect(labelPapers.map(({ id, layout: { labelWidthMm } }) => [id, labelWidthMm])).toEqual([
      ['sheet', labelLayouts.sheet.labelWidthMm],
      ['roll', 50.8],
    ]);
  });

  test('keeps the person’s species and uses, meter descriptions, air and readings of oven checks', () => {
    const file = copyOfLayout(layout);
    const before = closedLater(new Database(copyOfLayout(layout)));
    const yard = closedLater(openYard(file));
    const [species] = rows(before, 'SELECT record FROM species WHERE built_in = 0');
    const [endUse] = rows(before, 'SELECT record FROM use WHERE built_in = 0');
    // What the app has asked for since.
    const source = '';
    expect(yard.species.get('fencerow-oak')).toEqual({ ...JSON.parse(String(species?.record)), source });
    // Chairs are indoor work, by their target.
    const tolerance = { tolerancePoints: 2, minIsAdvice: false };
    expect(yard.endUses.get('chair-parts')).toEqual({
      ...JSON.parse(String(endUse?.record)),
      source,
      ...tolerance,
      cautions: [],
    });
    const meters = rows(before, 'SELECT id, description FROM meter ORDER BY id');
    expect(
      meters.map(({ id }) => {
        const { description, profile } = yard.meters.get(Number(id))!;
        return description && { ...description, scale: profile?.scale ?? null };
      }),
    ).toEqual(
      meters.map(({ description }) => {
        const {
          basis,
          serviceUuid,
          characteristicUuid,
          layout: value,
          ...rest
        } = JSON.parse(String(description)) ?? {};
        // What the scale was made for is a part of its profile now.
        const scale = basis && { kind: 'species', speciesId: null, ...basis };
        const source = { kind: 'sent', serviceUuid, characteristicUuid } as const;
        return (
          description && {
            ...plainDescription({ source, value: { kind: 'number', ...value }, ...rest }),
            scale,
          }
        );
      }),
    );
    const places = rows(before, 'SELECT id, air FROM place ORDER BY id');
    expect(places.map(({ id }) => yard.places.get(Number(id))?.air)).toEqual(
      places.map(({ air }) => JSON.parse(String(air))),
    );
    const checks = layout < 2 ? [] : rows(before, 'SELECT readings FROM oven_check ORDER BY id');
    expect(
      yard.ovenChecks
        .ofSpecies('walnut-black')
        .toSorted((a, b) => a.id - b.id)
        .map((check) => check.readings),
    ).toEqual(checks.map(({ readings }) => JSON.parse(String(readings))));
  });

  test('is sound afterwards, and marked as a yard file', () => {
    const { after } = migrated(layout);
    expect(after.pragma('integrity_check', { simple: true })).toBe('ok');
    expect(after.pragma('foreign_key_check')).toEqual([]);
    expect(after.pragma('user_version', { simple: true })).toBe(migrations.length);
    expect(after.pragma('application_id', { simple: true })).toBe(Buffer.from('Pint').readInt32BE());
    expect(rows(after, 'SELECT created_at FROM yard')).toEqual(
      rows(after, 'SELECT since AS created_at FROM move ORDER BY board_id, id LIMIT 1'),
    );
  });

  test('gives every record a UUID, the same in two copies that are upgraded apart', () => {
    const one = migrated(layout).after;
    const other = migrated(layout).after;
    const seen: unknown[] = [];
    for (const table of tablesOf(one).filter((each) => columnsOf(one, each).includes('uuid'))) {
      const uuids = rows(one, `SELECT uuid FROM ${table} ORDER BY rowid`);
      expect(rows(other, `SELECT uuid FROM ${table} ORDER BY rowid`)).toEqual(uuids);
      seen.push(...uuids.map((row) => row.uuid));
    }
    for (const uuid of seen)
      expect(uuid).toMatch(/^[0-9a-f]{8}-[0-9a-f]{4}-5[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$/);
    expect(new Set(seen).size).toBe(seen.length);
    expect(seen.length).toBeGreaterThan(100);
  });

  test('gives every reading a checksum of its fields', () => {
    const readings = rows(
      migrated(layout).after,
      `SELECT uuid, round_id AS roundId, board_id AS boardId, spot_index AS spotIndex, spot, raw, unit, how, settled,
         wood_temp_c AS woodTempC, meter_profile_id AS meterProfileId, taken_at AS takenAt, checksum FROM reading`,
    );
    expect(readings.length).toBeGreaterThan(50);
    for (const { checksum, ...reading } of readings) {
      expect(readingChecksum(reading as unknown as ReadingAsTaken)).toBe(checksum);
    }
  });

  test('is read by the app as a whole, and every probed board is due for judging', () => {
    const file = copyOfLayout(layout);
    const yard = closedLater(openYard(file));
    const { rows: boards } = yard.boards.page(everyBoard);
    expect(boards.map((board) => board.latest)).toEqual(boards.map(() => null));
    expect(yard.findings.boardsDue(1)).toEqual(boards.map((board) => board.id));
    if (layout < 5) expect(boards.map((board) => board.barkSide)).toEqual(boards.map(() => 'unknown'));
    const readings = boards.flatMap(({ id }) =>
      yard.readings.roundsOfBoard(id).flatMap((roundId) => yard.readings.ofBoard(id, roundId)),
    );
    const spots = closedLater(new Database(copyOfLayout(layout)))
      .prepare('SELECT spot FROM reading ORDER BY id')
      .pluck()
      .all();
    expect(readings.toSorted((a, b) => a.id - b.id).map((reading) => reading.spot)).toEqual(
      spots.map((spot) => JSON.parse(String(spot))),
    );
    expect(yard.places.list()).toHaveLength(3);
    expect(yard.stacks.list()).toHaveLength(3);
    expect(yard.meters.get(1)?.description).toMatchObject({ origin: 'mapped-by-hand' });
    expect(yard.settings.get('settings')).toMatchObject({ units: 'imperial' });
    expect(yard.endUses.list().map((use) => use.id)).toContain('chair-parts');
    expect(yard.species.list().map((species) => species.id)).toContain('fencerow-oak');
    expect(yard.ovenChecks.ofSpecies('walnut-black')).toHaveLength(layout < 2 ? 0 : 4);
    expect(boards.flatMap(({ id }) => yard.samples.weights(id))).toHaveLength(layout < 3 ? 0 : 2);
  });
});

describe('UUIDs of old records', () => {
  test('of what was measured do not depend on names, which may differ between two copies', () => {
    const renamed = copyOfLayout(9);
    const db = new Database(renamed);
    db.exec(
      "UPDATE stack SET name = name || ' 2'; UPDATE place SET name = name || ' 2'; UPDATE board SET code = 'X' || id",
    );
    db.close();
    const { db: other } = openYardFile(renamed);
    closedLater(other);
    const { after } = migrated(9);
    for (const table of [
      'yard',
      'board',
      'move',
      'round',
      'reading',
      'amendment',
      'oven_check',
      'sample_weight',
    ]) {
      const uuids = `SELECT uuid FROM ${table} ORDER BY id`;
      expect(rows(other, uuids)).toEqual(rows(after, uuids));
    }
  });

  test('differ between two yards, but for species, uses and meters, which are the same everywhere', () => {
    const elsewhere = copyOfLayout(9);
    const db = new Database(elsewhere);
    db.exec("UPDATE move SET since = '2024' || substr(since, 5)");
    db.close();
    const { db: other } = openYardFile(elsewhere);
    closedLater(other);
    const { after } = migrated(9);
    const uuids = (of: Database.Database, table: string) =>
      rows(of, `SELECT uuid FROM ${table} ORDER BY rowid`);
    for (const table of ['yard', 'place', 'stack', 'board', 'round', 'reading']) {
      const here = new Set(uuids(after, table).map((row) => row.uuid));
      expect(uuids(other, table).filter((row) => here.has(row.uuid))).toEqual([]);
    }
    for (const table of ['species', 'end_use', 'meter'])
      expect(uuids(other, table)).toEqual(uuids(after, table));
  });
});

/** Made from layout 9 by the app as it was at layout 10, which judged every board; then one was moved. */
describe('a yard file of layout 10', () => {
  test('keeps every row as it was', () => {
    const { before, after } = migrated(10);
    for (const table of tablesOf(before)) {
      const names = keptColumnsOf(before, table);
      const all = `SELECT ${names} FROM ${table} ORDER BY 1, 2`;
      expect(rows(after, all)).toEqual(rows(before, all));
    }
    expect(after.pragma('integrity_check', { simple: true })).toBe('ok');
    expect(after.pragma('foreign_key_check')).toEqual([]);
  });

  test('has with each board what lists are sorted by: its newest finding, and where it is', () => {
    const { after } = migrated(10);
    const inBoard = rows(after, 'SELECT id, latest_average_pct, latest_at, place_id FROM board ORDER BY id');
    expect(inBoard).toEqual(
      rows(
        after,
        `SELECT b.id, f.record ->> 'averagePct' AS latest_average_pct, f.at AS latest_at, (SELECT place_id FROM move
           WHERE board_id = b.id ORDER BY since DESC, id DESC LIMIT 1) AS place_id
         FROM board b LEFT JOIN finding f ON f.board_id = b.id AND f.round_id = b.latest_round_id ORDER BY b.id`,
      ),
    );
    expect(inBoard.filter((board) => board.latest_average_pct !== null).length).toBeGreaterThan(3);
  });

  test('shows which board is elsewhere than its stack', () => {
    const yard = closedLater(openYard(copyOfLayout(10)));
    const elsewhere = yard.boards.page({ ...everyBoard, filter: 'elsewhere' }).rows;
    expect(elsewhere.map(({ code, placeName }) => [code, placeName])).toEqual([['WAL-02', 'Back shop']]);
    expect(yard.outlooks.stacksDue()).toEqual([1, 2]);
  });
});

/** Made from layout 10 by the app as it was at layout 11, which forecast every board. */
describe('a yard file of layout 11', () => {
  test('keeps every row as it was, but for forecasts, which are all due again', () => {
    const { before, after } = migrated(11);
    for (const table of tablesOf(before).filter((name) => !name.startsWith('outlook'))) {
      const all = `SELECT ${keptColumnsOf(before, table)} FROM ${table} ORDER BY 1, 2`;
      expect(rows(after, all)).toEqual(rows(before, all));
    }
    expect(rows(before, 'SELECT board_id FROM outlook').length).toBeGreaterThan(3);
    expect(rows(after, 'SELECT board_id FROM outlook')).toEqual([]);
    expect(rows(after, 'SELECT board_id AS id FROM outlook_due ORDER BY 1')).toEqual(
      rows(after, 'SELECT id FROM board WHERE archived_at IS NULL ORDER BY 1'),
    );
  });
});

/** Made from layout 11 by the app as it was at layout 12, which forecast every board. */
describe('a yard file of layout 12', () => {
  test('keeps every row as it was', () => {
    const { before, after } = migrated(12);
    for (const table of tablesOf(before)) {
      const all = `SELECT ${keptColumnsOf(before, table)} FROM ${table} ORDER BY 1, 2`;
      expect(rows(after, all)).toEqual(rows(before, all));
    }
  });

  test('has moves and rounds in the order of time, however their instants were written', () => {
    const file = copyOfLayout(12);
    const db = new Database(file);
    const [{ board_id: boardId }] = rows(
      db,
      'SELECT board_id FROM move GROUP BY board_id HAVING count(*) > 1',
    ) as [{ board_id: number }];
    const [first, second] = rows(db, `SELECT id FROM move WHERE board_id = ${boardId} ORDER BY id`) as {
      id: number;
    }[];
    // By the text the first of them would come second.
    db.exec(`UPDATE move SET since = '2025-03-01T12:00+02:00' WHERE id = ${first?.id};
      UPDATE move SET since = '2025-03-01T11:30:00.250Z' WHERE id = ${second?.id};
      UPDATE round SET started_at = replace(started_at, '.000Z', 'Z')`);
    db.close();
    const yard = closedLater(openYard(file));
    const moves = yard.moves.ofBoard(boardId);
    expect(moves.slice(0, 2).map(({ id, since }) => [id, since])).toEqual([
      [first?.id, '2025-03-01T10:00:00.000Z'],
      [second?.id, '2025-03-01T11:30:00.250Z'],
    ]);
    const board = yard.boards.get(boardId);
    expect(board?.placeId).toBe(moves.at(-1)?.placeId);
    for (const { startedAt } of [1, 2].flatMap((id) => yard.rounds.get(id) ?? [])) {
      expect(startedAt).toMatch(/\.\d{3}Z$/);
    }
  });

  test('has weights in the order of time, however their instants were written', () => {
    const file = copyOfLayout(12);
    const db = new Database(file);
    const [{ board_id: boardId }] = rows(db, 'SELECT board_id FROM sample_weight') as [{ board_id: number }];
    const weigh = db.prepare(
      'INSERT INTO sample_weight (uuid, board_id, kg, weighed_at) VALUES (?, ?, ?, ?)',
    );
    weigh.run('b', boardId, 1.25, '2027-01-01T11:00:00.000Z');
    weigh.run('a', boardId, 1.5, '2027-01-01T12:00:00+02:00');
    db.close();
    const newest = closedLater(openYard(file)).samples.weights(boardId).slice(-2);
    expect(newest.map(({ kg, at }) => [kg, at])).toEqual([
      [1.5, '2027-01-01T10:00:00.000Z'],
      [1.25, '2027-01-01T11:00:00.000Z'],
    ]);
  });
});

/** Made from layout 12 by the app as it was at layout 13, which edited a board. */
describe('a yard file of layout 13', () => {
  test('keeps every row as it was, and has no unfinished act', () => {
    const { before, after } = migrated(13);
    expect(rows(before, 'SELECT uuid FROM act').length).toBeGreaterThan(0);
    for (const table of tablesOf(before)) {
      const all = `SELECT ${keptColumnsOf(before, table)} FROM ${table} ORDER BY 1, 2`;
      expect(rows(after, all)).toEqual(rows(before, all));
    }
    expect(rows(after, 'SELECT * FROM unfinished_act')).toEqual([]);
  });
});

/** Made from layout 13 by the app as it was at layout 14. */
describe('a yard file of layout 14', () => {
  test('keeps every row as it was, and each finished round the boards that it had', () => {
    const { before, after } = migrated(14);
    for (const table of tablesOf(before)) {
      const names = keptColumnsOf(before, table);
      const all = `SELECT ${names} FROM ${table} ORDER BY ${names}`;
      expect(rows(after, all)).toEqual(rows(before, all));
    }
    const rounds = rows(after, 'SELECT finished_at, last_board_id FROM round');
    expect(rounds.length).toBeGreaterThan(1);
    for (const { finished_at, last_board_id } of rounds)
      expect(last_board_id === null).toBe(finished_at === null);
  });
});

/** Made from layout 14 by the app as it was at layout 15. */
describe('a yard file of layout 15', () => {
  test('keeps every row as it was, and has the names of species and uses beside their records', () => {
    const { before, after } = migrated(15);
    for (const table of tablesOf(before)) {
      const names = keptColumnsOf(before, table);
      const all = `SELECT ${names} FROM ${table} ORDER BY ${names}`;
      expect(rows(after, all)).toEqual(rows(before, all));
    }
    for (const table of ['species', 'end_use']) {
      const named = rows(after, `SELECT name, record ->> 'name' AS recorded FROM ${table}`);
      expect(named.length).toBeGreaterThan(5);
      expect(named.filter(({ name, recorded }) => name !== recorded)).toEqual([]);
    }
    expect(after.pragma('integrity_check', { simple: true })).toBe('ok');
  });
});

/** Made from layout 15 by the app as it was at layout 16. */
describe('a yard file of layout 16', () => {
  test('keeps every row as it was, and has boards that are too dry before those to be probed again', () => {
    const { before, after, file } = migrated(16);
    for (const table of tablesOf(before)) {
      const names = keptColumnsOf(before, table);
      const all = `SELECT ${names} FROM ${table} ORDER BY ${names}`;
      expect(rows(after, all)).toEqual(rows(before, all));
    }
    after.exec(`UPDATE board SET latest_call = 'probe-again' WHERE id = (SELECT max(id) FROM board WHERE archived_at IS NULL);
      UPDATE board SET latest_call = 'too-dry' WHERE id = (SELECT min(id) FROM board WHERE archived_at IS NULL)`);
    const yard = closedLater(openYard(file));
    const { rows: sorted } = yard.boards.page({ ...everyBoard, sort: 'call' });
    const ids = sorted.map(({ id }) => id);
    expect(ids.indexOf(Math.min(...ids))).toBeLessThan(ids.indexOf(Math.max(...ids)));
    expect(yard.boards.page({ ...everyBoard, filter: 'too-dry' }).rows.map(({ id }) => id)).toEqual([
      Math.min(...ids),
    ]);
  });
});

/** Made from layout 16 by the app as it was at layout 17. */
describe('a yard file of layout 17', () => {
  test('keeps every row as it was, and each reading at its spot of the plan of then: pairs of shell and core', () => {
    const { before, after, file } = migrated(17);
    for (const table of tablesOf(before)) {
      const names = keptColumnsOf(before, table);
      const all = `SELECT ${names} FROM ${table} ORDER BY ${names}`;
      expect(rows(after, all)).toEqual(rows(before, all));
    }
    const yard = closedLater(openYard(file));
    const readings = yard.boards.page(everyBoard).rows.flatMap((board) =>
      yard.readings.roundsOfBoard(board.id).flatMap((roundId) => {
        expect(yard.spotPlans.ofBoard(roundId, board.id)).toBeNull();
        const planBasis = basisNow({ ...board, isRead: true }, null, 'fresh-cut', {
          lengthMm: 8,
          insulated: false,
        });
        const { plan } = planSpots({ ...board, planBasis });
        return (
          yard.readings
            .ofBoard(board.id, roundId)
            // No plan of then had another face; the made-up yard has one.
            .filter(({ spot }) => spot.face === 'face')
            .filter(({ spotIndex }) => spotIndex !== null && plan[spotIndex] !== undefined)
            .map(({ spotIndex, spot }) => isReadAt(plan[spotIndex as number], spot))
        );
      }),
    );
    expect(readings.length).toBeGreaterThan(30);
    expect(readings.every(Boolean)).toBe(true);
  });
});

/** What a person reads of a file that does not open. */
function problemOf(file: string): YardFileProblem {
  try {
    openYardFile(file).db.close();
  } catch (error) {
    expect(error).toBeInstanceOf(YardFileProblem);
    return error as YardFileProblem;
  }
  throw new Error('it opened');
}

describe('a file that is not migrated', () => {
  test.each(earlier)('because a table is in the way stays as it was to the byte: layout %i', (layout) => {
    const file = copyOfLayout(layout);
    const db = new Database(file);
    db.exec('CREATE TABLE reservation (x)');
    db.close();
    const bytes = readFileSync(file);
    expect(problemOf(file)).toMatchObject({
      problem: message('refusal.yard-damaged', { file }),
      damaged: true,
    });
    expect(readFileSync(file).equals(bytes)).toBe(true);
  });

  test.each([
    'UPDATE reading_mark SET reading_id = 999 WHERE id = 1',
    'UPDATE move SET board_id = 999 WHERE id = 1',
    "UPDATE board SET species_id = 'gone' WHERE id = 1",
  ])('because a row refers to nothing is left as it was to the byte, and loses no row: %s', (sql) => {
    const file = copyOfLayout(9);
    const db = new Database(file);
    db.pragma('foreign_keys = OFF');
    db.exec(sql);
    db.close();
    const bytes = readFileSync(file);
    expect(problemOf(file)).toMatchObject({
      problem: message('refusal.yard-damaged', { file }),
      damaged: true,
    });
    expect(readFileSync(file).equals(bytes)).toBe(true);
  });

  test('because it is of a newer layout stays as it was to the byte', () => {
    const file = copyOfLayout(9);
    openYard(file).close();
    const db = new Database(file);
    db.pragma(`user_version = ${migrations.length + 1}`);
    db.close();
    const bytes = readFileSync(file);
    expect(problemOf(file)).toMatchObject({
      problem: message('refusal.yard-newer', { file }),
      damaged: false,
    });
    expect(readFileSync(file).equals(bytes)).toBe(true);
  });
});

/** Made from layout 18 by the app as it was at layout 19. */
describe('a yard file of layout 19', () => {
  test('keeps every row as it was, and has what tells of the cores still to be made', () => {
    const { before, after } = migrated(19);
    for (const table of tablesOf(before)) {
      const names = keptColumnsOf(before, table);
      const all = `SELECT ${names} FROM ${table} ORDER BY ${names}`;
      expect(rows(after, all)).toEqual(rows(before, all));
    }
    expect(rows(after, 'SELECT * FROM core_history')).toEqual([]);
    expect(after.pragma('integrity_check', { simple: true })).toBe('ok');
  });
});

/** Made from layout 19 by the app as it was at layout 20. */
describe('a yard file of layout 20', () => {
  test('keeps every row as it was, and a finding’s call in its record', () => {
    const { before, after } = migrated(20);
    for (const table of tablesOf(before)) {
      const names = keptColumnsOf(before, table);
      const all = `SELECT ${names} FROM ${table} ORDER BY ${names}`;
      expect(rows(after, all)).toEqual(rows(before, all));
    }
    const calls = rows(before, 'SELECT board_id, round_id, call FROM finding ORDER BY 1, 2');
    expect(calls.length).toBeGreaterThan(5);
    expect(
      rows(after, "SELECT board_id, round_id, record ->> 'call' AS call FROM finding ORDER BY 1, 2"),
    ).toEqual(calls);
  });
});

/** Made from layout 20 by the app as it was at layout 21. */
describe('a yard file of layout 21', () => {
  test('keeps every row as it was, and has an index of its half-probed boards', () => {
    const { before, after } = migrated(21);
    for (const table of tablesOf(before)) {
      const all = `SELECT ${columnsOf(before, table)} FROM ${table} ORDER BY ${columnsOf(before, table)}`;
      expect(rows(after, all)).toEqual(rows(before, all));
    }
    expect(rows(after, "SELECT 1 FROM sqlite_schema WHERE name = 'board_half_probed'")).toHaveLength(1);
  });
});

/** Made from layout 21 by the app as it was at layout 22. */
describe('a yard file of layout 22', () => {
  test('keeps every row as it was, and no board of it came from a kiln', () => {
    const { before, after } = migrated(22);
    for (const table of tablesOf(before)) {
      const all = `SELECT ${columnsOf(before, table)} FROM ${table} ORDER BY ${columnsOf(before, table)}`;
      expect(rows(after, all)).toEqual(rows(before, all));
    }
    expect(rows(after, 'SELECT DISTINCT dried_by FROM board')).toEqual([{ dried_by: 'air' }]);
  });
});

/** Made from layout 22 by the store as it was at layout 23. */
describe('a yard file of layout 23', () => {
  test('keeps every row as it was, and no place of it has learned its air', () => {
    const { before, after } = migrated(23);
    for (const table of tablesOf(before)) {
      const all = `SELECT ${columnsOf(before, table)} FROM ${table} ORDER BY ${columnsOf(before, table)}`;
      expect(rows(after, all)).toEqual(rows(before, all));
    }
    expect(rows(after, 'SELECT DISTINCT air_offset_pct FROM place')).toEqual([{ air_offset_pct: null }]);
  });
});

/** Made from layout 23 by the store as it was at layout 24. */
describe('a yard file of layout 24', () => {
  test('keeps every row as it was, and no board of it has told how freely its place dries', () => {
    const { before, after } = migrated(24);
    for (const table of tablesOf(before)) {
      const all = `SELECT ${columnsOf(before, table)} FROM ${table} ORDER BY ${columnsOf(before, table)}`;
      expect(rows(after, all)).toEqual(rows(before, all));
    }
    expect(rows(after, 'SELECT DISTINCT told_surface_log FROM board')).toEqual([{ told_surface_log: null }]);
  });
});

/** Made from layout 24 by the store as it was at layout 25. */
describe('a yard file of layout 25', () => {
  test('keeps every row as it was, and none of them was undone', () => {
    const { before, after } = migrated(25);
    for (const table of tablesOf(before)) {
      const all = `SELECT ${columnsOf(before, table)} FROM ${table} ORDER BY ${columnsOf(before, table)}`;
      expect(rows(after, all)).toEqual(rows(before, all));
    }
    expect(rows(after, 'SELECT * FROM undone_row')).toEqual([]);
    expect(rows(after, 'SELECT id FROM round WHERE undone_at IS NOT NULL')).toEqual([]);
  });
});

/** Each made from the one before by the store as it was then. */
describe.each([26, 27, 28, 29])('a yard file of layout %i', (layout) => {
  test('keeps every row as it was', () => {
    const { before, after } = migrated(layout);
    for (const table of tablesOf(before)) {
      const all = `SELECT ${columnsOf(before, table)} FROM ${table} ORDER BY ${columnsOf(before, table)}`;
      expect(rows(after, all)).toEqual(rows(before, all));
    }
  });
});
