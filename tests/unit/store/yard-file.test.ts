import { existsSync, mkdtempSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import Database from 'better-sqlite3';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { damagedReadings } from '../../../electron/store/damaged-readings.ts';
import { migrations } from '../../../electron/store/migrations.ts';
import { openYard, type Yard } from '../../../electron/store/yard.ts';
import { openYardFile, renameDamaged, YardFileProblem } from '../../../electron/store/yard-file.ts';
import { boardEditSchema, newBoardSchema, unknownOfBoard } from '../../../shared-core/contract/yard.ts';
import { builtInEndUses } from '../../../shared-core/wood/species/built-in.ts';
import type { Species } from '../../../shared-core/wood/species/species.ts';
import { message } from '../../../shared-core/words/message.ts';

let file: string;
let open: { close(): void }[] = [];

beforeEach(() => {
  file = join(mkdtempSync(join(tmpdir(), 'pintally-store-')), 'yard.sqlite');
});
afterEach(() => {
  for (const each of open) each.close();
  open = [];
});

function yard(): Yard {
  const opened = openYard(file);
  open.push(opened);
  return opened;
}

/** A yard with one board and a round begun on its stack. */
function yardWithBoard() {
  const opened = yard();
  opened.species.bringUpToDate([
    {
      id: 'test-wood',
      name: 'Test wood',
      botanicalName: null,
      group: 'Tests',
      aliases: [],
      basicSpecificGravity: null,
      radialPct: null,
      tangentialPct: null,
      volumetricPct: null,
      changeCoefficient: null,
      curveId: null,
      linear: null,
      note: '',
      source: '',
    },
  ]);
  opened.endUses.bringUpToDate([
    {
      id: 'bench',
      name: 'Bench',
      minPct: 6,
      maxPct: 9,
      tolerancePoints: 2,
      minIsAdvice: false,
      maxShellCorePct: 2,
      cautions: [],
      note: '',
      source: '',
    },
  ]);
  const placeId = opened.places.add({
    name: 'Shed',
    kind: 'open-shed',
    air: Array.from({ length: 12 }, () => ({ tempC: 15, rh: 0.65 })),
    airSource: null,
    airMovement: null,
  });
  const stackId = opened.stacks.add({
    name: 'First',
    placeId,
    endUseId: 'bench',
    topCover: 'covered',
    note: '',
  });
  const boardId = opened.boards.add(
    newBoardSchema.parse({
      code: 'T-01',
      stackId,
      speciesId: 'test-wood',
      thicknessMm: 27,
      ...unknownOfBoard,
      lengthMm: 2400,
    }),
    placeId,
    '2026-01-01T00:00:00.000Z',
  );
  const roundId = opened.rounds.add({ stackId, startedAt: '2026-02-01T10:00:00.000Z', datedBy: 'clock' });
  const save = (raw: number) =>
    opened.readings.save({
      roundId,
      boardId,
      spotIndex: 0,
      spot: { depth: 'shell', depthMm: 3, fromEndMm: 800, face: 'face' },
      raw,
      unit: 'pct',
      how: 'typed',
      settled: null,
      woodTempC: 12,
      meterId: null,
      takenAt: '2026-02-01T10:05:00.000Z',
    });
  return { opened, placeId, stackId, boardId, roundId, save };
}

// Earlier Pintallys took a year of which only two digits were typed.
test('a board with a half-typed year on file is shown; such a year is refused when it is typed', () => {
  const { opened, boardId } = yardWithBoard();
  const changed = { sawnOn: '0026-05-20' };
  opened.boards.edit({ id: boardId, basedOn: 1, changed });
  expect(opened.boards.get(boardId)?.sawnOn).toBe('0026-05-20');
  expect(boardEditSchema.safeParse({ id: boardId, basedOn: 2, changed }).success).toBe(false);
});

describe('a reading', () => {
  test('is on disk once it is saved: another process sees it at once', () => {
    const { save } = yardWithBoard();
    const id = save(12.6);
    const other = new Database(file, { readonly: true });
    open.push(other);
    expect(other.prepare('SELECT raw FROM reading WHERE id = ?').get(id)).toEqual({ raw: 12.6 });
  });

  test('is committed with a full sync, in WAL mode', () => {
    const { db } = openYardFile(file);
    open.push(db);
    expect(db.pragma('journal_mode', { simple: true })).toBe('wal');
    expect(db.pragma('synchronous', { simple: true })).toBe(2); // 2 is FULL: https://sqlite.org/pragma.html#pragma_synchronous
    expect(db.pragma('foreign_keys', { simple: true })).toBe(1);
    // Apple's F_FULLFSYNC, which only a Mac has: https://sqlite.org/pragma.html#pragma_fullfsync
    expect(db.pragma('fullfsync', { simple: true })).toBe(1);
    expect(db.pragma('checkpoint_fullfsync', { simple: true })).toBe(1);
  });

  test.each(['UPDATE reading SET raw = 1', 'DELETE FROM reading'])('cannot be changed: %s fails', (sql) => {
    const { save } = yardWithBoard();
    save(12.6);
    const other = new Database(file);
    open.push(other);
    expect(() => other.exec(sql)).toThrow(/never/);
    expect(other.prepare('SELECT raw FROM reading').all()).toEqual([{ raw: 12.6 }]);
  });

  // Each as a disk may return it: SQLite's own check lets all of these through.
  test.each([
    ['spot_index', -3],
    ['spot_index', 4_294_967_299],
    ['spot', '{"depth":"chell"}'],
    ['raw', 31.1],
    ['raw', Number.POSITIVE_INFINITY],
    ['how', 'tyqed'],
    ['settled', 1],
    ['wood_temp_c', 1e300],
    ['taken_at', '2926-06-01T08:00:00.000Z'],
    ['taken_at', '2026-0q-01'],
    ['uuid', 'x'],
    ['checksum', 7],
  ])('whose %s the disk changed to %s is damaged, and still in the list', (column, value) => {
    const { opened, boardId, roundId, save } = yardWithBoard();
    save(12.4);
    const id = save(15.1);
    expect(damagedReadings(file)).toEqual([]);
    const other = new Database(file);
    open.push(other);
    const triggers = other.prepare(
      "SELECT name FROM sqlite_schema WHERE type = 'trigger' AND tbl_name = 'reading'",
    );
    for (const name of triggers.pluck().all()) other.exec(`DROP TRIGGER ${name}`);
    other.prepare(`UPDATE reading SET ${column} = ? WHERE id = ?`).run(value, id);
    const [sound, damaged] = opened.readings.ofBoard(boardId, roundId);
    expect(sound).not.toHaveProperty('isDamaged');
    expect(damaged).toMatchObject({ id, isDamaged: true, takenAt: '2026-02-01T10:00:00.000Z' });
    expect(damagedReadings(file)).toEqual([id]);
  });

  test('has the same raw value after it is excluded and included again', () => {
    const { opened, save } = yardWithBoard();
    const id = save(12.6);
    opened.amendments.exclude('reading', id, { text: 'a knot' }, '2026-02-01T10:06:00.000Z');
    expect(opened.readings.get(id)).toMatchObject({ raw: 12.6, excluded: { text: 'a knot' } });
    opened.amendments.exclude('reading', id, null, '2026-02-01T10:07:00.000Z');
    expect(opened.readings.get(id)).toMatchObject({ raw: 12.6, excluded: null });
  });

  test("has the round's temperature until its board gets another", () => {
    const { opened, roundId, boardId, save } = yardWithBoard();
    const id = save(12.6);
    const tempOf = () => opened.readings.get(id)?.woodTempC;
    expect(tempOf()).toBeNull();
    opened.woodTemperatures.give({ roundId, boardId: null, tempC: 12, givenAt: '2026-02-01T10:10:00.000Z' });
    expect(tempOf()).toBe(12);
    opened.woodTemperatures.give({
      roundId,
      boardId: boardId,
      tempC: 8,
      givenAt: '2026-02-01T10:11:00.000Z',
    });
    opened.woodTemperatures.give({ roundId, boardId: null, tempC: 14, givenAt: '2026-02-01T10:12:00.000Z' });
    expect(tempOf()).toBe(8);
  });

  test('is refused as a whole when its board does not exist', () => {
    const { opened, roundId } = yardWithBoard();
    expect(() =>
      opened.readings.save({
        roundId,
        boardId: 999,
        spotIndex: null,
        spot: { depth: 'core', depthMm: null, fromEndMm: null, face: 'face' },
        raw: 1,
        unit: 'pct',
        how: 'typed',
        settled: null,
        woodTempC: null,
        meterId: null,
        takenAt: '2026-02-01T10:05:00.000Z',
      }),
    ).toThrow(/FOREIGN KEY/);
  });
});

describe('a board', () => {
  test('is found by its ID in either case, and no other may have it', () => {
    const { opened, boardId, stackId, placeId } = yardWithBoard();
    expect(opened.boards.idByCode('t-01')).toBe(boardId);
    const same = { ...opened.boards.get(boardId)!, code: 't-01', stackId };
    expect(() => opened.boards.add(same, placeId, '2026-01-01T00:00:00.000Z')).toThrow(/UNIQUE/);
  });

  test('is where its newest move put it, and the older moves stay on record', () => {
    const { opened, boardId } = yardWithBoard();
    const shop = opened.places.add({
      name: 'Shop',
      kind: 'shop',
      air: Array.from({ length: 12 }, () => ({ tempC: 20, rh: 0.45 })),
      airSource: null,
      airMovement: null,
    });
    opened.moves.add({ boardId, placeId: shop, since: '2026-03-01T00:00:00.000Z', datedBy: 'time' });
    expect(opened.boards.get(boardId)).toMatchObject({
      placeName: 'Shop',
      placeSince: '2026-03-01T00:00:00.000Z',
    });
    expect(opened.moves.ofBoard(boardId).map((move) => move.placeName)).toEqual(['Shed', 'Shop']);
  });

  const everyBoard = {
    stackId: null,
    offset: 0,
    limit: 10,
  } as const;
  test.each(['%', '_', "'; DROP TABLE board; --", '\\'])(
    'a search for %s looks for those letters',
    (search) => {
      const { opened } = yardWithBoard();
      expect(opened.boards.page({ ...everyBoard, search }).total).toBe(0);
      expect(opened.boards.page({ ...everyBoard, search: 'test' }).total).toBe(1);
    },
  );
});

describe('due for judging', () => {
  const RULES = 7;
  const found = (roundId: number) => ({
    roundId,
    at: '2026-02-01T10:05:00.000Z',
    averagePct: 12,
    averageIs: 'read' as const,
    lowPct: 11,
    highPct: 13,
    shellPct: 12,
    corePct: 12,
    isQuestionable: false,
    spotsRead: null,
    call: 'keep-drying' as const,
    reason: message('call.no-readings'),
    openSpot: null,
    filledSpots: 4,
    spotPcts: [7, 7.4, 7, 7.4],
  });

  test('is a board with a new reading, until it has a finding', () => {
    const { opened, boardId, roundId, save } = yardWithBoard();
    expect(opened.findings.boardsDue(RULES)).toEqual([]);
    save(12.6);
    expect(opened.findings.boardsDue(RULES)).toEqual([boardId]);
    opened.findings.put(boardId, found(roundId), RULES);
    expect(opened.findings.boardsDue(RULES)).toEqual([]);
    save(12.8);
    expect(opened.findings.boardsDue(RULES)).toEqual([boardId]);
    opened.findings.put(boardId, found(roundId), RULES);
    expect(opened.findings.boardsDue(RULES)).toEqual([]);
  });

  test('is no board that was judged and of which nothing was found', () => {
    const { opened, boardId, roundId, save } = yardWithBoard();
    save(12.6);
    opened.findings.put(boardId, found(roundId), RULES);
    opened.findings.drop(boardId, roundId);
    expect(opened.findings.boardsDue(RULES)).toEqual([]);
  });

  test('is a board whose finding is of other rules', () => {
    const { opened, boardId, roundId, save } = yardWithBoard();
    save(12.6);
    opened.findings.put(boardId, found(roundId), RULES);
    expect(opened.findings.boardsDue(RULES + 1)).toEqual([boardId]);
    expect(opened.findings.boardsDue(RULES - 1)).toEqual([boardId]);
  });

  test.each([
    [
      'a reading is excluded',
      (yard: Yard, id: number) =>
        yard.amendments.exclude('reading', id, { text: 'a knot' }, '2026-02-02T10:00:00.000Z'),
    ],
    [
      'the wood temperature is given',
      (yard: Yard, _: number, roundId: number, boardId: number) =>
        yard.woodTemperatures.give({
          roundId,
          boardId: boardId,
          tempC: 3,
          givenAt: '2026-02-02T10:00:00.000Z',
        }),
    ],
    [
      'the temperature of its round is given',
      (yard: Yard, _: number, roundId: number) =>
        yard.woodTemperatures.give({ roundId, boardId: null, tempC: 3, givenAt: '2026-02-02T10:00:00.000Z' }),
    ],
  ] as const)('is a board when %s', (_what, happens) => {
    const { opened, boardId, roundId, save } = yardWithBoard();
    const readingId = save(12.6);
    opened.findings.put(boardId, found(roundId), RULES);
    happens(opened, readingId, roundId, boardId);
    expect(opened.findings.boardsDue(RULES)).toEqual([boardId]);
  });
});

describe('a catalog', () => {
  test("a newer Pintally's figures replace the built-in ones and leave the person's own alone", () => {
    const { opened } = yardWithBoard();
    const builtIn = opened.species.get('test-wood')!;
    opened.species.add({ ...builtIn, id: 'my-wood', name: 'My wood' });
    opened.species.bringUpToDate([
      { ...builtIn, note: 'newer' },
      { ...builtIn, id: 'my-wood', name: 'Theirs' },
    ]);
    expect(opened.species.get('test-wood')?.note).toBe('newer');
    expect(opened.species.get('my-wood')?.name).toBe('My wood');
  });

  test('an entry saved before sources were apart from notes has an empty one', () => {
    const { opened } = yardWithBoard();
    const { source: _, ...older } = opened.species.get('test-wood')!;
    opened.species.add({ ...older, id: 'older-wood' } as Species);
    expect(opened.species.get('older-wood')?.source).toBe('');
  });
});

describe('a yard file', () => {
  test('goes through every migration only once', () => {
    yardWithBoard().opened.close();
    open = [];
    const again = yard();
    expect(again.boards.total()).toBe(1);
    const db = new Database(file);
    open.push(db);
    expect(db.pragma('user_version', { simple: true })).toBe(migrations.length);
  });

  test('of a newer Pintally is left alone', () => {
    yard().close();
    open = [];
    const db = new Database(file);
    db.pragma('user_version = 999');
    db.close();
    expect(problemOf(() => openYard(file)).problem).toEqual(message('refusal.yard-newer', { file }));
  });

  test('that is no database stays as it was, and is reported as damaged', () => {
    const rubbish = 'This is not a database, and is longer than its header would be. '.repeat(80);
    writeFileSync(file, rubbish);
    const problem = problemOf(() => openYard(file));
    expect(problem.problem).toEqual(message('refusal.yard-damaged', { file }));
    expect(problem.damaged).toBe(true);
    expect(readFileSync(file, 'utf8')).toBe(rubbish);
  });

  test('that was overwritten in the middle is reported as damaged', () => {
    const { opened, save } = yardWithBoard();
    for (let n = 0; n < 500; n++) save(10 + n / 100);
    opened.close();
    open = [];
    const bytes = readFileSync(file);
    bytes.fill(0xa5, 4096 * 3, 4096 * 12);
    writeFileSync(file, bytes);
    expect(problemOf(() => openYard(file)).damaged).toBe(true);
    expect(readFileSync(file).equals(bytes)).toBe(true);
  });

  test('that another program has open is reported as in use', () => {
    yard().close();
    open = [];
    const holder = new Database(file);
    open.push(holder);
    holder.pragma('locking_mode = EXCLUSIVE');
    holder.exec('BEGIN EXCLUSIVE');
    const problem = problemOf(() => openYard(file));
    expect(problem.problem).toEqual(message('refusal.yard-in-use', { file }));
    expect(problem.damaged).toBe(false);
  });

  test('in a folder that cannot be made is reported as out of reach', () => {
    writeFileSync(file, '');
    const inFile = join(file, 'yard.sqlite');
    const { problem } = problemOf(() => openYard(inFile));
    expect(problem).toEqual(message('refusal.yard-unreadable', { file: inFile }));
  });

  test('is moved aside with all its files, never over another', () => {
    for (let n = 0; n < 2; n++) {
      writeFileSync(file, `damaged ${n}`);
      writeFileSync(`${file}-wal`, 'log');
      const beside = renameDamaged(file, '2026-05-01');
      expect(readFileSync(beside, 'utf8')).toBe(`damaged ${n}`);
      expect(existsSync(`${beside}-wal`)).toBe(true);
    }
    expect(readdirSync(dirname(file))).toHaveLength(4);
  });
});

function problemOf(work: () => unknown): YardFileProblem {
  try {
    work();
  } catch (error) {
    expect(error).toBeInstanceOf(YardFileProblem);
    return error as YardFileProblem;
  }
  throw new Error('it opened');
}

test('a built-in use that was edited before uses had cautions keeps those of the built-in one', () => {
  const opened = yard();
  opened.endUses.bringUpToDate(builtInEndUses);
  const own = { ...builtInEndUses.find(({ id }) => id === 'framing')!, maxPct: 17 };
  const { cautions: _, ...saved } = own;
  const beside = new Database(file);
  open.push(beside);
  beside
    .prepare("UPDATE end_use SET record = ?, built_in = 0 WHERE id = 'framing'")
    .run(JSON.stringify(saved));
  expect(opened.endUses.get('framing')).toEqual(own);
});
