import { statSync } from 'node:fs';
import { setTimeout } from 'node:timers/promises';
import Database from 'better-sqlite3';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { recordChanges } from '../../../electron/store/change-triggers.ts';
import { openYard, type Yard } from '../../../electron/store/yard.ts';
import { message } from '../../../shared-core/words/message.ts';
import { copyOfLayout } from './layout-copy.ts';

let file: string;
let yard: Yard;
/** Looks at the file from outside. */
let outside: Database.Database;

beforeEach(() => {
  file = copyOfLayout(9);
  yard = openYard(file);
  outside = new Database(file);
});
afterEach(() => {
  outside.close();
  yard.close();
});

const act = (id = 'f81d4fae-7dec-41d0-a765-00a0c91e6bf6') => ({
  id,
  request: 'boards.edit',
  inputHash: 'abc',
  at: '2026-03-01T09:00:00.000Z',
  who: 'window 1',
});

/** Does something as an act. */
function acting<T>(work: () => T): T {
  return yard.transaction(() => {
    yard.acts.begin(act());
    const result = work();
    yard.acts.finish({ done: true });
    return result;
  });
}

const changes = () =>
  outside
    .prepare('SELECT in_table, row_uuid, old_values, new_values FROM act_change ORDER BY id')
    .all()
    .map((row) => {
      const { old_values, new_values, ...which } = row as Record<string, string | null>;
      return { ...which, was: JSON.parse(old_values ?? 'null'), is: JSON.parse(new_values ?? 'null') };
    });
const uuidOf = (table: string, id: number) =>
  outside.prepare(`SELECT uuid FROM ${table} WHERE id = ?`).pluck().get(id);

describe('an act', () => {
  test('is found by its id, with what was answered', () => {
    acting(() => undefined);
    expect(yard.acts.find(act().id)).toEqual({ ...act(), outcome: { done: true } });
    expect(yard.reader.acts.find(act().id)).toEqual({ ...act(), outcome: { done: true } });
    expect(yard.acts.find('another')).toBeUndefined();
  });

  test('cannot be done a second time under the same id', () => {
    acting(() => undefined);
    expect(() => acting(() => undefined)).toThrow(/UNIQUE/);
  });

  test('that is refused leaves nothing behind, itself included', () => {
    expect(() =>
      acting(() => {
        yard.boards.edit({ id: 1, basedOn: 1, changed: { note: 'x' } });
        throw new Error('refused');
      }),
    ).toThrow('refused');
    expect(yard.acts.find(act().id)).toBeUndefined();
    expect(yard.boards.get(1)).toMatchObject({ note: '', version: 1 });
    yard.boards.edit({ id: 1, basedOn: 1, changed: { note: 'y' } });
    expect(changes()).toEqual([]);
  });

  test('begins only within a transaction', () => {
    expect(() => yard.acts.begin(act())).toThrow(RangeError);
  });

  test('records of an edit only the fields that changed, as they were and as they are', () => {
    acting(() =>
      yard.boards.edit({ id: 1, basedOn: 1, changed: { code: 'WAL-01', note: 'Cup', layer: null } }),
    );
    expect(changes()).toEqual([
      {
        in_table: 'board',
        row_uuid: uuidOf('board', 1),
        was: { note: '', layer: 1, version: 1 },
        is: { note: 'Cup', layer: null, version: 2 },
      },
    ]);
  });

  test('records all of a row that it adds or deletes', () => {
    const id = acting(() =>
      yard.moves.add({ boardId: 1, placeId: 1, since: '2026-03-01T09:00:00.000Z', datedBy: 'time' }),
    );
    const row = outside.prepare('SELECT * FROM move WHERE id = ?').get(id);
    expect(changes()).toEqual([{ in_table: 'move', row_uuid: uuidOf('move', id), was: null, is: row }]);
    outside.exec('UPDATE act_now SET act_id = 1');
    outside.prepare('DELETE FROM move WHERE id = ?').run(id);
    expect(changes()[1]).toMatchObject({ in_table: 'move', was: row, is: null });
  });

  test('is named in every row that it adds to an append-only table', () => {
    const readingId = acting(() => {
      yard.amendments.exclude('reading', 1, { text: 'a knot' }, act().at);
      yard.woodTemperatures.give({ roundId: 5, boardId: null, tempC: 4, givenAt: act().at });
      return yard.readings.save({
        roundId: 5,
        boardId: 5,
        spotIndex: 0,
        spot: { depth: 'shell', depthMm: 5, fromEndMm: 700, face: 'face' },
        raw: 21.4,
        unit: 'pct',
        how: 'typed',
        settled: null,
        woodTempC: null,
        meterId: null,
        takenAt: act().at,
      });
    });
    const newest = (table: string) =>
      outside.prepare(`SELECT act_id FROM ${table} ORDER BY id DESC`).pluck().get();
    expect(outside.prepare('SELECT act_id FROM reading WHERE id = ?').pluck().get(readingId)).toBe(1);
    expect([newest('amendment'), newest('wood_temperature')]).toEqual([1, 1]);
    expect(changes()).toEqual([]);
  });

  test('does not count a cache as a change', () => {
    const finding = {
      roundId: 1,
      at: act().at,
      averagePct: 12,
      averageIs: 'read' as const,
      lowPct: 11,
      highPct: 13,
      shellPct: 12,
      corePct: 12,
      isQuestionable: false,
      spotsRead: null,
      call: 'keep-drying' as const,
      reason: message('call.none-left'),
      openSpot: null,
      filledSpots: 4,
      spotPcts: [7, 7.4, 7, 7.4],
    };
    acting(() => {
      yard.findings.put(1, finding, 1);
      yard.comparisons.begin(1);
    });
    expect(changes()).toEqual([]);
  });

  test('records a column that a later migration adds', () => {
    outside.exec('ALTER TABLE place ADD COLUMN roof TEXT');
    recordChanges(outside);
    outside.exec(
      "INSERT INTO act VALUES (1, 'u', 'r', 'h', 'now', 'w', NULL, NULL); UPDATE act_now SET act_id = 1",
    );
    outside.exec("UPDATE place SET roof = 'tin' WHERE id = 1");
    expect(changes()).toMatchObject([{ was: { roof: null }, is: { roof: 'tin' } }]);
  });
});

test('every table is recorded, only added to, or a cache', () => {
  const names = (sql: string) => outside.prepare(sql).pluck().all() as string[];
  const triggers = names("SELECT name FROM sqlite_schema WHERE type = 'trigger'");
  const caches = [
    'finding',
    'finding_due',
    'round_suspicion',
    'outlook',
    'outlook_due',
    'core_history',
    'lineage',
    'thumbnail',
    'packed_picture',
  ];
  const ofActs = ['act', 'act_now', 'act_change', 'unfinished_act', 'used_id', 'merged_act', 'yard'];
  for (const table of names("SELECT name FROM sqlite_schema WHERE type = 'table'")) {
    if (caches.includes(table) || ofActs.includes(table)) continue;
    const columns = names(`SELECT name FROM pragma_table_info('${table}')`);
    if (triggers.includes(`${table}_is_never_edited`)) {
      expect(triggers).toContain(`${table}_is_never_deleted`);
      expect(columns).toEqual(expect.arrayContaining(['uuid', 'act_id']));
    } else {
      expect(columns).toEqual(expect.arrayContaining(['uuid', 'version']));
      for (const what of ['added', 'edited', 'deleted']) expect(triggers).toContain(`${table}_${what}`);
    }
  }
});

describe('an edit', () => {
  test('changes only the fields given', () => {
    const before = yard.boards.get(2)!;
    expect(yard.boards.edit({ id: 2, basedOn: 1, changed: { widthMm: 333 } })).toBeNull();
    expect(yard.boards.get(2)).toEqual({ ...before, widthMm: 333, version: 2 });
  });

  test('based on another version changes nothing, and gives the record as it is', () => {
    yard.places.edit({ id: 1, basedOn: 1, changed: { name: 'Long shed' } });
    const current = yard.places.edit({ id: 1, basedOn: 1, changed: { name: 'Short shed' } });
    expect(current).toMatchObject({ name: 'Long shed', version: 2 });
    expect(yard.places.get(1)).toEqual(current);
  });

  test('of a record that is not there is a fault', () => {
    expect(() => yard.stacks.edit({ id: 999, basedOn: 1, changed: { note: 'x' } })).toThrow(RangeError);
  });
});

describe('a name', () => {
  test('is free again once its board is archived or its stack or place closed', () => {
    const code = yard.boards.get(1)!.code;
    outside.exec(
      `UPDATE board SET archived_at = '2026-03-01', archived_why = '{"code":"sold"}' WHERE id = 1`,
    );
    outside.exec("UPDATE stack SET closed_at = '2026-03-01' WHERE id = 1");
    outside.exec("UPDATE place SET closed_at = '2026-03-01' WHERE id = 3");
    yard.boards.edit({ id: 2, basedOn: 1, changed: { code } });
    yard.stacks.edit({ id: 2, basedOn: 1, changed: { name: yard.stacks.get(1)!.name } });
    yard.places.edit({ id: 2, basedOn: 1, changed: { name: yard.places.get(3)!.name } });
    expect(yard.boards.idByCode(code)).toBe(2);
  });
});

describe('the reader', () => {
  test('sees what is committed, and not what is under way', () => {
    yard.transaction(() => {
      yard.boards.edit({ id: 1, basedOn: 1, changed: { note: 'Cup' } });
      expect(yard.boards.get(1)?.note).toBe('Cup');
      expect(yard.reader.boards.get(1)?.note).toBe('');
    });
    expect(yard.reader.boards.get(1)?.note).toBe('Cup');
  });
});

test('a depth that no person confirmed, with pins of unknown length, is only the plan’s', () => {
  expect(yard.readings.get(1)?.depthFrom).toBe('plan');
});

describe('an amendment of a reading', () => {
  test('holds in place of what was taken, the newest of each field, and the value stays', () => {
    const before = yard.readings.get(1)!;
    const at = act().at;
    yard.amendments.amendReading(1, 'takenAt', '2025-10-01T10:00:00.000Z', at);
    yard.amendments.amendReading(1, 'depthMm', 8, at);
    yard.amendments.amendReading(1, 'depthMm', 9, at);
    yard.amendments.amendReading(1, 'woodTempC', null, at);
    expect(yard.readings.get(1)).toEqual({
      ...before,
      takenAt: '2025-10-01T10:00:00.000Z',
      spot: { ...before.spot, depthMm: 9 },
      depthFrom: 'person',
      woodTempC: null,
    });
    const spot = { depth: 'core' as const, depthMm: 20, fromEndMm: 100, face: 'fresh-cut' as const };
    yard.amendments.amendReading(1, 'spot', spot, at);
    expect(yard.readings.get(1)?.spot).toEqual({ ...spot, depthMm: 9 });
  });

  test('has its board judged again', () => {
    outside.exec('DELETE FROM finding_due; UPDATE round SET compared_by_rules = 1');
    yard.amendments.amendReading(1, 'depthMm', 8, act().at);
    const { boardId, roundId } = yard.readings.get(1)!;
    expect(yard.findings.boardsDue(1)).toEqual([boardId]);
    expect(yard.comparisons.unsettled(1)).toEqual([roundId]);
  });
});

describe('a meter', () => {
  test('that is read in another way gets a new profile, and its readings keep theirs', () => {
    const meter = yard.meters.get(1)!;
    const profiles = () =>
      outside.prepare('SELECT version FROM meter_profile WHERE meter_id = 1').pluck().all();
    yard.meters.put(meter, act().at);
    expect(profiles()).toEqual([1]);
    yard.meters.put(
      { ...meter, description: { ...meter.description!, range: { min: 5, max: 40 } } },
      act().at,
    );
    expect(profiles()).toEqual([1, 2]);
    expect(yard.meters.get(1)?.description?.range).toEqual({ min: 5, max: 40 });
    expect(
      outside
        .prepare(
          'SELECT DISTINCT p.version FROM reading g JOIN meter_profile p ON p.id = g.meter_profile_id WHERE p.meter_id = 1',
        )
        .pluck()
        .all(),
    ).toEqual([1]);
    const earlier = [...yard.readings.ofEarlierProfiles(1)].flat();
    expect(new Set(earlier.map(({ boardId }) => boardId)).size).toBeGreaterThan(1);
    const [moved] = earlier;
    yard.amendments.amendReading(moved!.id, 'meterProfileId', yard.meters.profileIdOf(1), act().at);
    expect(yard.readings.get(moved!.id)).toMatchObject({
      meterId: 1,
      meterProfileId: yard.meters.profileIdOf(1),
    });
    expect([...yard.readings.ofEarlierProfiles(1)].flat()).toEqual(earlier.slice(1));
  });
});

test('of an unfinished act that is taken back, no reading is deleted, and a board that it read is hidden', () => {
  const { id: _, excluded: __, depthFrom: ___, meterProfileId: ____, ...reading } = yard.readings.get(1)!;
  const before = yard.boards.get(1)!;
  const readingIds = () => outside.prepare('SELECT id FROM reading ORDER BY id').pluck().all();
  const boardId = yard.transaction(() => {
    yard.acts.begin(act());
    const { id: _____, ...place } = yard.places.get(before.placeId)!;
    const placeId = yard.places.add({ ...place, name: 'New shed' });
    const added = yard.boards.add({ ...before, code: 'NEW-1' }, placeId, act().at);
    yard.readings.save({ ...reading, boardId: added });
    yard.acts.pause();
    return added;
  });
  const withIt = readingIds();
  while (!yard.transaction(() => yard.acts.takeBack(act().id, 100, act().at)).isDone);
  expect(readingIds()).toEqual(withIt);
  expect(yard.readings.ofBoard(boardId, reading.roundId)).toEqual([]);
  expect(yard.boards.idByCode('NEW-1')).toBeUndefined();
  expect(outside.prepare('SELECT archived_why FROM board WHERE id = ?').pluck().get(boardId)).toBe(
    '{"code":"undone"}',
  );
  // The board was there: so the place is hidden as well, and nobody closed it.
  const closedAt = outside.prepare("SELECT closed_at FROM place WHERE name = 'New shed'").pluck().get();
  expect(closedAt).toBe(act().at);
  expect(yard.places.closed()).toEqual([]);
});

describe('a long WAL', () => {
  const MIB = 1024 * 1024;
  const walBytes = () => statSync(`${file}-wal`).size;
  // It would keep the WAL from being emptied.
  beforeEach(() => outside.close());
  const slice = (text: string) =>
    yard.transaction(() => {
      yard.acts.resume(act().id);
      yard.settings.put('long', text.repeat(MIB));
      yard.acts.pause();
    });

  test('is brought into the file between the slices of an act and after the last, never within one', async () => {
    yard.transaction(() => {
      yard.acts.begin(act());
      yard.acts.pause();
    });
    for (const text of '012') slice(text);
    expect(walBytes()).toBeGreaterThan(4 * MIB);
    // Whoever writes beside it leaves that to the act.
    await setTimeout(20);
    expect(walBytes()).toBeGreaterThan(4 * MIB);
    expect(yard.checkpointInSlices()).toBe(true);
    expect(walBytes()).toBe(0);
    expect(yard.checkpointInSlices()).toBe(false);
    slice('3');
    yard.transaction(() => {
      yard.acts.resume(act().id);
      yard.acts.finish({});
    });
    expect(walBytes()).toBeGreaterThan(MIB);
    await expect.poll(walBytes).toBe(0);
  });

  test('of an act that is one transaction does not hold up its answer', async () => {
    yard.transaction(() => yard.settings.put('long', '0'.repeat(5 * MIB)));
    expect(walBytes()).toBeGreaterThan(4 * MIB);
    await expect.poll(walBytes).toBe(0);
  });

  test('stays bounded while one writer gives nobody else a turn', () => {
    let most = 0;
    for (let written = 0; written < 12; written++) {
      yard.transaction(() => yard.settings.put('long', `${written}`.repeat(2 * MIB)));
      most = Math.max(most, walBytes());
    }
    expect(most).toBeLessThan(20 * MIB);
  });
});
