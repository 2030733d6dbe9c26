/** What a person entered goes out as JSON and comes in again without loss. */
import { copyFileSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { Ajv2020 } from 'ajv/dist/2020.js';
import Database from 'better-sqlite3';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { makeDemoYard } from '../../../electron/app/yard/demo-yard.ts';
import { writeExport } from '../../../electron/exchange/export-file.ts';
import { makeYardOfJson } from '../../../electron/exchange/json-import.ts';
import { cacheColumns } from '../../../electron/store/change-triggers.ts';
import { unpackPictures } from '../../../electron/store/packed-pictures.ts';
import { hashOf, picturesBeside, savePicture } from '../../../electron/store/picture-files.ts';
import { openYardFile } from '../../../electron/store/yard-file.ts';
import { columnOfField } from '../../../electron/store/yard-records.ts';
import { Refusal } from '../../../shared-core/contract/answer.ts';
import { createRecordReader } from '../../../shared-core/exchange/json-records.ts';
import { PICTURE_PART_BYTES } from '../../../shared-core/exchange/picture-parts.ts';
import {
  exportJsonSchema,
  type YardTable,
  yardTableNames,
  yardTables,
} from '../../../shared-core/exchange/yard-tables.ts';
import { english } from '../../../shared-core/words/en/index.ts';
import { say } from '../app/a-window.ts';
import { doSteps, emptyYard, firstSteps, newFolder, stepArbitrary } from './a-filled-yard.ts';
import { schemaFile, schemaText } from './make-schema.ts';

const nowAt = '2026-06-01T08:00:00.000Z';
const display = { locale: 'en-US', timeZone: 'UTC', units: 'metric', today: null } as const;

function exported(from: string): string {
  const target = join(newFolder(), 'yard.json');
  const pictures = picturesBeside(from);
  writeExport({ from, pictures, target, kind: 'everything', display, nowAt }, english, () => undefined);
  return readFileSync(target, 'utf8');
}

function broughtIn(json: string | Buffer): string {
  const folder = newFolder();
  const file = join(folder, 'given.json');
  writeFileSync(file, json);
  const target = join(folder, 'yard.sqlite');
  makeYardOfJson(file, target, () => undefined);
  return target;
}

function refusal(json: string | Buffer): string {
  try {
    broughtIn(json);
  } catch (error) {
    if (error instanceof Refusal) return say(error.problem);
    throw error;
  }
  return 'it was taken';
}

// JSON Schema, draft 2020-12, by a validator that knows nothing of ours; formats have patterns beside them.
const validate = new Ajv2020({ strict: false, validateFormats: false }).compile(exportJsonSchema());
const problemsOf = (json: string): unknown[] => (validate(JSON.parse(json)) ? [] : validate.errors!);

test('any yard comes out of an empty yard as it came in, and fits the published schema', () => {
  fc.assert(
    fc.property(fc.array(stepArbitrary, { minLength: 10, maxLength: 100 }), (steps) => {
      const yard = emptyYard();
      doSteps(yard, [...firstSteps, ...steps], 0);
      yard.close();
      const json = exported(yard.file);
      expect(problemsOf(json)).toEqual([]);
      expect(exported(broughtIn(json))).toBe(json);
    }),
    { numRuns: 12 },
  );
});

/** The records of an export's pictures, of any length: their files are only bytes here. */
const lengthsArbitrary = fc.array(
  fc.oneof(
    fc.integer({ min: 1, max: 4000 }),
    fc.constantFrom(PICTURE_PART_BYTES, 2 * PICTURE_PART_BYTES + 1),
  ),
  { minLength: 1, maxLength: 3 },
);
function yardWithPictures(lengths: readonly number[]): string {
  const yard = emptyYard();
  doSteps(yard, firstSteps, 0);
  const [board] = yard.boards.page({ stackId: null, search: '', offset: 0, limit: 1 }).rows;
  for (const [index, length] of lengths.entries()) {
    const bytes = Buffer.alloc(length, `${index} of ${length}`);
    const contentHash = hashOf(bytes);
    savePicture(picturesBeside(yard.file), bytes, contentHash);
    const picture = {
      contentHash,
      mediaType: 'image/png',
      bytes: length,
      caption: 'End',
      addedAt: nowAt,
    } as const;
    yard.transaction(() => {
      yard.acts.begin({ id: crypto.randomUUID(), request: 'test', inputHash: '', at: nowAt, who: 'test' });
      yard.pictures.add({ kind: 'board', id: board!.id }, picture);
      yard.acts.finish(null);
    });
  }
  yard.close();
  return yard.file;
}
function unpacked(file: string): string {
  const db = new Database(file);
  unpackPictures(db, picturesBeside(file));
  db.close();
  return file;
}

test('its pictures do, too, however long', () => {
  fc.assert(
    fc.property(lengthsArbitrary, (lengths) => {
      const json = exported(yardWithPictures(lengths));
      expect(problemsOf(json)).toEqual([]);
      const parts = JSON.parse(json).pictureFiles as { part: number }[];
      expect(parts.filter(({ part }) => part === 1)).toHaveLength(lengths.length);
      expect(exported(unpacked(broughtIn(json)))).toBe(json);
    }),
    { numRuns: 5 },
  );
});

test('a picture that is not what its hash says does not come, and all else does', () => {
  const json = exported(yardWithPictures([300]));
  const [{ base64 }] = JSON.parse(json).pictureFiles;
  const other = json.replace(base64, Buffer.alloc(300, 'x').toString('base64'));
  const again = JSON.parse(exported(unpacked(broughtIn(other))));
  expect(again.pictureFiles).toEqual([]);
  expect(again.pictures).toHaveLength(1);
});

test('a picture whose file is missing is left out, and counted', () => {
  const from = yardWithPictures([300, 400]);
  const [{ contentHash }] = JSON.parse(exported(from)).pictureFiles;
  rmSync(join(picturesBeside(from), contentHash));
  const target = join(newFolder(), 'yard.json');
  const what = { from, pictures: picturesBeside(from), target, kind: 'everything', display, nowAt } as const;
  expect(writeExport(what, english, () => undefined)).toEqual({ missingPictures: 1 });
});

test('an export from before pictures were in it comes in', () => {
  const json = exported(yardWithPictures([300]));
  const before = json.slice(0, json.indexOf(',\n"pictureFiles"'));
  expect(problemsOf(`${before}}`)).toEqual([]);
  expect(JSON.parse(exported(broughtIn(`${before}}`))).pictures).toHaveLength(1);
});

test('the demo yard does, too', () => {
  const file = join(newFolder(), 'demo.sqlite');
  makeDemoYard(file, nowAt);
  const json = exported(file);
  expect(JSON.parse(json).readings.length).toBeGreaterThan(100);
  expect(problemsOf(json)).toEqual([]);
  const again = broughtIn(json);
  expect(exported(again)).toBe(json);
  const db = new Database(again);
  expect(db.pragma('foreign_key_check')).toEqual([]);
  expect(db.pragma('integrity_check', { simple: true })).toBe('ok');
});

test('a yard of an earlier layout does, once it was opened', () => {
  const file = join(newFolder(), 'yard.sqlite');
  copyFileSync(join(import.meta.dirname, '../store/layouts/layout-9.sqlite'), file);
  openYardFile(file).db.close();
  const json = exported(file);
  expect(problemsOf(json)).toEqual([]);
  expect(exported(broughtIn(json))).toBe(json);
});

test('every column that a person fills is exported', () => {
  const yard = emptyYard();
  yard.close();
  const db = new Database(yard.file, { readonly: true });
  const made = ['id', 'uuid', 'version', 'act_id', 'checksum'];
  const tables: readonly YardTable[] = yardTableNames.map((named) => yardTables[named]);
  const columnsIn = (table: string) =>
    (db.pragma(`table_info(${table})`) as { name: string }[]).map(({ name }) => name);
  const missing = tables.flatMap(({ table, fields }) => {
    const known = Object.entries(fields).map(([field, of]) => columnOfField(field, of));
    const isOwn = known.includes('version') || known.includes('id');
    return columnsIn(table)
      .filter((name) => !known.includes(name) && !(made.includes(name) && !isOwn))
      .filter((name) => !made.includes(name) && !cacheColumns(table).includes(name))
      .map((name) => `${table}.${name}`);
  });
  expect(missing).toEqual([]);
  // What the program makes again, and what is about the file and its acts.
  const others = [
    ...['act', 'act_change', 'act_now', 'unfinished_act', 'yard', 'used_id', 'merged_act'],
    ...[
      'core_history',
      'finding',
      'finding_due',
      'lineage',
      'outlook',
      'outlook_due',
      'round_suspicion',
      'thumbnail',
    ],
    // Pictures of a copy in one file.
    'packed_picture',
  ];
  const all = db.prepare("SELECT name FROM sqlite_schema WHERE type = 'table'").pluck().all() as string[];
  expect(all.filter((name) => !others.includes(name)).sort()).toEqual(
    tables.map(({ table }) => table).sort(),
  );
});

test('the schema in the repository is the one that exports fit', () => {
  expect(JSON.parse(readFileSync(schemaFile, 'utf8'))).toEqual(JSON.parse(schemaText()));
});

describe('what is no export is refused with a sentence', () => {
  const empty = () => {
    const yard = emptyYard();
    yard.close();
    return exported(yard.file);
  };
  const other =
    'This file is not a yard file or a Pintally export. Nothing was changed. Choose another file.';

  test.each([
    ['nothing', ''],
    ['text', 'Board,Stack\r\n'],
    ['an array', '[]'],
    ['JSON of another kind', '{"name":"x","version":1,"list":[]}'],
    ['bytes that are no UTF-8', Buffer.from([0x7b, 0xff, 0xfe])],
    ['a value cut short by garbage', '{"format":"pintally-yard","version":tru,"a":1}'],
  ])('%s', (_, given) => {
    expect(refusal(given)).toBe(other);
  });

  test('a zip file', () => {
    expect(refusal(Buffer.from('PK\x03\x04rest', 'latin1'))).toContain('packed file or a spreadsheet');
  });

  test('one that is cut off anywhere', () => {
    const yard = emptyYard();
    doSteps(yard, firstSteps, 0);
    yard.close();
    const json = exported(yard.file);
    for (let length = 200; length < json.length - 2; length += Math.ceil(json.length / 20)) {
      expect(refusal(json.slice(0, length))).toMatch(/ends too early|no Pintally export/);
    }
  });

  test('one of a newer Pintally', () => {
    expect(refusal(empty().replace('"version":1', '"version":2'))).toContain(
      'A newer Pintally made this export',
    );
    expect(refusal(empty().replace('"stacks":[', '"sheds":['))).toContain(
      'A newer Pintally made this export',
    );
  });

  test('one with a record that does not fit, which is named', () => {
    const meter = '{"uuid":"6f0b4a3e-4dd5-4d0c-9d49-0d3f1c0f8a11","kind":"typed","deviceId":"x"}';
    expect(refusal(empty().replace('"meters":[', `"meters":[${meter}`))).toContain(
      'In “meters”, record 1 has a wrong value',
    );
    const print = `{"uuid":"6f0b4a3e-4dd5-4d0c-9d49-0d3f1c0f8a11","board":"6f0b4a3e-4dd5-4d0c-9d49-0d3f1c0f8a12","contentHash":"","printedAt":"${nowAt}"}`;
    expect(refusal(empty().replace('"labelPrints":[', `"labelPrints":[${print}`))).toContain(
      'record 1 has a wrong value',
    );
  });

  test('one with a picture that is named by no hash, which would be the path of another file', () => {
    const json = exported(yardWithPictures([10]));
    const { pictures } = JSON.parse(json) as { pictures: { contentHash: string }[] };
    const path = '../../../etc/passwd';
    expect(refusal(json.replace(pictures[0]!.contentHash, path))).toContain(
      'In “pictures”, record 1 has a wrong value',
    );
  });

  test('one whose parts of a picture do not follow each other', () => {
    const json = exported(yardWithPictures([PICTURE_PART_BYTES + 1]));
    expect(refusal(json.replace('"part":2', '"part":1'))).toContain(
      'In “pictureFiles”, record 2 has a wrong value',
    );
    expect(refusal(json.replaceAll('"parts":2', '"parts":51'))).toContain('record 1 has a wrong value');
  });

  test('one with a record without an end, after a megabyte of it', () => {
    const endless = `{"format":"pintally-yard","version":1,"exportedAt":"${nowAt}","species":[{"uuid":"${'x'.repeat(3_000_000)}`;
    expect(refusal(endless)).toContain('A record in this file is too long');
  });
});

test('an export is read the same wherever its text is cut', () => {
  const json = '{ "a": "x,\\"]", "b" : -1.5e3 ,"c":[ {"d":[1,{"e":"}]"}]} , {} ],"f":[],"g":null}';
  const whole: unknown[] = [];
  const readerTo = (to: unknown[]) =>
    createRecordReader({
      onField: (key, value) => to.push(['field', key, value]),
      onArray: (key) => to.push(['array', key]),
      onRecord: (key, record) => to.push(['record', key, record]),
    });
  const all = readerTo(whole);
  all.feed(json);
  all.end();
  expect(whole).toEqual([
    ['field', 'a', 'x,"]'],
    ['field', 'b', -1500],
    ['array', 'c'],
    ['record', 'c', { d: [1, { e: '}]' }] }],
    ['record', 'c', {}],
    ['array', 'f'],
    ['field', 'g', null],
  ]);
  for (let size = 1; size < json.length; size++) {
    const parts: unknown[] = [];
    const reader = readerTo(parts);
    for (let at = 0; at < json.length; at += size) reader.feed(json.slice(at, at + size));
    reader.end();
    expect(parts).toEqual(whole);
  }
});
