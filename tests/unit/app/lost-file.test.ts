import {
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmdirSync,
  rmSync,
  statSync,
  symlinkSync,
  truncateSync,
  utimesSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { beforeEach, describe, expect, test } from 'vitest';
import { createYards } from '../../../electron/app/yard/yards.ts';
import { type } from './in-round.ts';
import { withYardOfTwo, yard } from './yard-of-two.ts';

// What SQLite still has of a lost file is what it has in memory.
withYardOfTwo({ isMadeByApp: true });

const notChecked = { ask: async () => ({ damage: null, damagedReadings: [] }), close: async () => undefined };
const file = () => join(yard.dataDir, 'yard.sqlite');
const rescued = () => `${file()}.rescued-2026-06-01`;
const rename = () => yard.answer('places.edit', { id: yard.place.id, basedOn: 1, changed: { name: 'Loft' } });
const info = () => yard.query('yard.info', {});

async function begin(): Promise<number> {
  return (await yard.command('rounds.start', { stackId: yard.stack.id, woodTempC: 20 })).id;
}

/** What was read of the first board, as a round shows it. */
async function valuesOf(roundId: number): Promise<number[]> {
  const { probed } = await yard.query('rounds.get', { roundId });
  return (probed?.assessment?.readings ?? []).map(({ raw }) => raw);
}

function rawValuesIn(path: string): unknown[] {
  const db = new Database(path, { readonly: true });
  const values = db.prepare('SELECT raw FROM reading ORDER BY id').pluck().all();
  db.close();
  return values;
}

/** Another yard file, with nothing of this one in it. */
function anotherFile(): Buffer {
  const path = join(yard.dataDir, 'another');
  const db = new Database(path);
  db.exec('CREATE TABLE song (title TEXT)');
  db.close();
  return readFileSync(path);
}

const losses: [string, () => void][] = [
  ['deleted', () => rmSync(file())],
  [
    'deleted with its WAL',
    () => {
      for (const suffix of ['', '-wal', '-shm']) rmSync(file() + suffix);
    },
  ],
  ['renamed', () => renameSync(file(), `${file()}.old`)],
  ['deleted with its folder', () => rmSync(yard.dataDir, { recursive: true })],
];

test.each(losses)(
  'a file that is %s while it is open: the command is refused, and all that was saved is in a rescued copy',
  async (_how, lose) => {
    const { uuid } = await info();
    const roundId = await begin();
    for (const raw of [12.1, 12.7, 13.4]) await type(roundId, raw);
    lose();
    expect(await rename()).toMatchObject({
      ok: false,
      problem: {
        code: 'refusal.yard-moved',
        facts: { what: 'file', how: 'deleted', rescuedFile: rescued(), state: 'gone', unsaved: 'yes' },
      },
    });
    expect(rawValuesIn(rescued())).toEqual([12.1, 12.7, 13.4]);
    expect(existsSync(file())).toBe(false);
    expect(await info()).toMatchObject({
      uuid: null,
      problem: { code: 'refusal.yard-moved', facts: { unsaved: 'no' } },
      rescuedFile: rescued(),
    });
    // No empty yard takes its place.
    expect(await yard.command('yard.openOwn', {})).toMatchObject({ problem: { code: 'refusal.yard-gone' } });
    expect(await yard.command('yard.openRescued', {})).toMatchObject({
      uuid,
      problem: null,
      rescuedFile: null,
      boards: 2,
    });
    expect(await valuesOf(roundId)).toEqual([12.1, 12.7, 13.4]);
    expect(await rename()).toMatchObject({ ok: true });
  },
);

const cuts: [string, () => void][] = [
  ['emptied', () => truncateSync(file())],
  ['cut in half', () => truncateSync(file(), statSync(file()).size / 2)],
];

test.each(cuts)(
  'a file that is %s while it is open: what SQLite still has is in a rescued copy, and is counted',
  async (_how, cut) => {
    const roundId = await begin();
    for (const raw of [12.1, 12.7, 13.4]) await type(roundId, raw);
    cut();
    const partlyRescued = {
      problem: {
        code: 'refusal.yard-partly-rescued',
        facts: { rescuedFile: `${rescued()}-part`, boards: 2, readings: 3 },
      },
    };
    expect(await rename()).toMatchObject({ ok: false, ...partlyRescued });
    expect(rawValuesIn(`${rescued()}-part`)).toEqual([12.1, 12.7, 13.4]);
    // What is left of it is renamed and left in the folder, whole.
    expect(existsSync(file())).toBe(false);
    expect(existsSync(`${file()}.damaged-2026-06-01`)).toBe(true);
    expect(await yard.command('yard.openOwn', {})).toMatchObject({
      problem: { code: 'refusal.yard-partly-gone' },
    });
    expect(await yard.command('yard.openRescued', {})).toMatchObject({ problem: null, boards: 2 });
    expect(await yard.query('recovery.notes', {})).toMatchObject([
      { code: 'yard-note.salvaged', facts: { boards: 2, readings: 3 } },
    ]);
    expect(await valuesOf(roundId)).toEqual([12.1, 12.7, 13.4]);
    expect(await rename()).toMatchObject({ ok: true });
  },
);

test('a file that is emptied after it was read whole is in a rescued copy, whole, though nothing was written', async () => {
  const roundId = await begin();
  for (const raw of [12.1, 12.7, 13.4]) await type(roundId, raw);
  await yard.command('yard.openOwn', {});
  truncateSync(file());
  expect(await rename()).toMatchObject({
    problem: {
      code: 'refusal.yard-moved',
      facts: { what: 'file', how: 'cut', rescuedFile: rescued(), state: 'spoiled' },
    },
  });
  expect(rawValuesIn(rescued())).toEqual([12.1, 12.7, 13.4]);
  expect(await yard.command('yard.openRescued', {})).toMatchObject({ problem: null, boards: 2 });
});

const wal = () => `${file()}-wal`;

const WAL_CUT = { what: 'changes', how: 'cut' };
const FILE_CUT = { what: 'file', how: 'cut' };
const FILE_OVERWRITTEN = { what: 'file', how: 'overwritten' };
const spoilings: [string, object, (older: Buffer) => void][] = [
  ['a WAL that is emptied', WAL_CUT, () => truncateSync(wal())],
  ['a WAL that is cut in half', WAL_CUT, () => truncateSync(wal(), statSync(wal()).size / 2)],
  ['a file that is overwritten by an older, shorter copy', FILE_CUT, (older) => writeFileSync(file(), older)],
  [
    'a WAL that is overwritten by as many bytes',
    { what: 'changes', how: 'overwritten' },
    () => writeFileSync(wal(), Buffer.alloc(statSync(wal()).size, 7)),
  ],
  [
    'a file that is overwritten by as many bytes',
    FILE_OVERWRITTEN,
    () => writeFileSync(file(), Buffer.alloc(statSync(file()).size, 7)),
  ],
];

describe.each(spoilings)('%s while it is open', (_title, happened, spoil) => {
  let roundId: number;

  beforeEach(async () => {
    roundId = await begin();
    await type(roundId, 12.1);
    await yard.command('yard.openOwn', {});
    const older = readFileSync(file());
    await type(roundId, 12.7);
    // More than the pages of the older copy have room for.
    await yard.command('boards.add', [{ ...yard.board('WAL-03'), note: 'Long. '.repeat(300) }]);
    // In the file itself from here on: not at once where a thread still reads it.
    await expect
      .poll(
        async () => {
          await yard.command('yard.openOwn', {});
          return statSync(file()).size;
        },
        { timeout: 20_000 },
      )
      .toBeGreaterThan(older.length);
    await type(roundId, 13.4);
    spoil(older);
  });

  test('is noticed by the next command; all that was saved is in a copy', async () => {
    expect(await rename()).toMatchObject({
      ok: false,
      problem: {
        code: 'refusal.yard-moved',
        facts: { ...happened, rescuedFile: rescued(), state: 'spoiled' },
      },
    });
    expect(rawValuesIn(rescued())).toEqual([12.1, 12.7, 13.4]);
    expect(await yard.command('yard.openRescued', {})).toMatchObject({ problem: null, boards: 3 });
    expect(await valuesOf(roundId)).toEqual([12.1, 12.7, 13.4]);
    expect(await rename()).toMatchObject({ ok: true });
  });

  test('is not changed when Pintally is closed, and all that was saved is in a copy', async () => {
    const found = readFileSync(file());
    await yard.app.close();
    expect(readFileSync(`${file()}.damaged-2026-06-01`).equals(found)).toBe(true);
    expect(rawValuesIn(rescued())).toEqual([12.1, 12.7, 13.4]);
  });
});

test.each([
  ['deleted', 'deleted', () => rmSync(wal())],
  ['renamed', 'deleted', () => renameSync(wal(), `${wal()}.old`)],
  [
    'replaced',
    'replaced',
    () => {
      writeFileSync(`${wal()}.new`, readFileSync(wal()).subarray(0, 8192));
      renameSync(`${wal()}.new`, wal());
    },
  ],
])(
  'a WAL that is %s while it is open is brought into the file, and saving goes on',
  async (_title, how, lose) => {
    const roundId = await begin();
    for (const raw of [12.1, 12.7]) await type(roundId, raw);
    lose();
    await type(roundId, 13.4);
    expect(await valuesOf(roundId)).toEqual([12.1, 12.7, 13.4]);
    expect(await yard.query('recovery.notes', {})).toEqual([
      { code: 'yard-note.wal-brought-back', facts: { file: file(), how } },
    ]);
    await yard.app.close();
    expect(rawValuesIn(file())).toEqual([12.1, 12.7, 13.4]);
  },
);

test.each(['PASSIVE', 'TRUNCATE'])(
  'a WAL that another program brings into the file (%s) is no loss: saving goes on without a word',
  async (how) => {
    const roundId = await begin();
    for (const raw of [12.1, 12.7]) await type(roundId, raw);
    const other = new Database(file());
    other.pragma(`wal_checkpoint(${how})`);
    await type(roundId, 13.4);
    other.close();
    expect(await info()).toMatchObject({ problem: null });
    expect(await yard.query('recovery.notes', {})).toEqual([]);
    expect(await valuesOf(roundId)).toEqual([12.1, 12.7, 13.4]);
    await yard.app.close();
    expect(rawValuesIn(file())).toEqual([12.1, 12.7, 13.4]);
  },
);

test('a file of which only the time is another is as it was: saving goes on', async () => {
  const roundId = await begin();
  await type(roundId, 12.1);
  utimesSync(file(), 1, 1);
  await type(roundId, 12.7);
  expect(rawValuesIn(file())).toEqual([12.1, 12.7]);
});

test('an emptied file that cannot be copied is not said to be still there as a whole', async () => {
  const roundId = await begin();
  await type(roundId, 12.1);
  truncateSync(file());
  // What would be made there cannot be.
  mkdirSync(`${file()}-rescuing`);
  expect(await rename()).toMatchObject({ problem: { code: 'refusal.yard-cut-not-rescued' } });
  rmdirSync(`${file()}-rescuing`);
  expect(await yard.command('yard.openOwn', {})).toMatchObject({
    problem: { code: 'refusal.yard-partly-gone' },
  });
  expect(rawValuesIn(`${rescued()}-part`)).toEqual([12.1]);
  expect(yard.faults.splice(0)).toHaveLength(1);
});

test('a file that is replaced while it is open: the other is not written to, and is opened by “Try again”', async () => {
  const roundId = await begin();
  await type(roundId, 12.1);
  const other = anotherFile();
  writeFileSync(`${file()}.new`, other);
  renameSync(`${file()}.new`, file());
  expect(await rename()).toMatchObject({
    problem: { code: 'refusal.yard-moved', facts: { rescuedFile: rescued(), state: 'replaced' } },
  });
  expect(rawValuesIn(rescued())).toEqual([12.1]);
  expect(await info()).toMatchObject({ rescuedFile: rescued() });
  expect(await yard.command('yard.openOwn', {})).toMatchObject({ problem: { code: 'refusal.yard-foreign' } });
  expect(readFileSync(file()).equals(other)).toBe(true);
});

test('a file that was replaced while it was open: its rescued copy opens, and the other gets another name', async () => {
  const roundId = await begin();
  await type(roundId, 12.1);
  const other = anotherFile();
  writeFileSync(`${file()}.new`, other);
  renameSync(`${file()}.new`, file());
  await rename();
  expect(await yard.command('yard.openRescued', {})).toMatchObject({ problem: null, rescuedFile: null });
  expect(await valuesOf(roundId)).toEqual([12.1]);
  expect(readFileSync(`${file()}.replaced-2026-06-01`).equals(other)).toBe(true);
  expect(await yard.query('recovery.notes', {})).toMatchObject([{ code: 'yard-note.rescued' }]);
  const log = readFileSync(join(yard.dataDir, 'logs', 'pintally.log'), 'utf8');
  expect(log).toContain('yard-not-usable refusal.yard-moved');
  expect(log).toContain('rescued-copy-opened');
});

test('a file that is put back opens with all that was saved', async () => {
  const roundId = await begin();
  await type(roundId, 12.1);
  renameSync(file(), `${file()}.old`);
  await rename();
  renameSync(`${file()}.old`, file());
  expect(await yard.command('yard.openOwn', {})).toMatchObject({ problem: null, boards: 2 });
  expect(await valuesOf(roundId)).toEqual([12.1]);
});

test('the window is told', async () => {
  rmSync(file());
  await rename();
  expect(yard.heard('changed').at(-1)).toEqual({ yard: null, topics: ['yard'] });
});

test('a reading that settles is not said to be saved', async () => {
  const roundId = await begin();
  await type(roundId, 12.1);
  await yard.command('meter.scan', {});
  await yard.command('meter.connect', { deviceId: 'hand' });
  rmSync(file());
  yard.meter.show(11.8, 4);
  expect(yard.heard('round.notSaved').map(({ problem }) => problem.code)).toEqual(['refusal.yard-moved']);
  expect(rawValuesIn(rescued())).toEqual([12.1]);
});

test('a query notices it too', async () => {
  rmSync(file());
  expect(await info()).toMatchObject({ problem: { code: 'refusal.yard-moved' } });
  expect(await yard.answer('stacks.list', {})).toMatchObject({ problem: { code: 'refusal.yard-moved' } });
});

test('a file that is lost is rescued when Pintally is closed', async () => {
  const roundId = await begin();
  await type(roundId, 12.1);
  rmSync(file());
  await yard.app.close();
  expect(rawValuesIn(rescued())).toEqual([12.1]);
});

test('a yard file that is a link to another disk: its WAL is watched there', async () => {
  await yard.app.close();
  const disk = mkdtempSync(join(tmpdir(), 'pintally-disk-'));
  renameSync(file(), join(disk, 'my-yard'));
  symlinkSync(join(disk, 'my-yard'), file());
  const linked = createYards(yard.dataDir, yard.now, notChecked, console.error, () => undefined);
  const change = () => linked.current().transaction(() => linked.current().settings.put('theme', 'dark'));
  change();
  truncateSync(join(disk, 'my-yard-wal'));
  expect(change).toThrow(
    expect.objectContaining({ problem: expect.objectContaining({ code: 'refusal.yard-moved' }) }),
  );
  linked.close();
  expect(existsSync(join(disk, 'my-yard.rescued-2026-06-01'))).toBe(true);
});

test('a rescued copy that nobody was told of is named at each opening, until that is dismissed', async () => {
  const roundId = await begin();
  await type(roundId, 12.1);
  const other = readFileSync(file());
  writeFileSync(`${file()}.new`, other);
  renameSync(`${file()}.new`, file());
  // It ends at once after that, as when it is killed: nobody reads what happened.
  await yard.app.close();
  const note = {
    code: 'yard-note.rescued-copies',
    facts: { copies: 1, names: ['yard.sqlite.rescued-2026-06-01'] },
  };
  for (let opening = 1; opening <= 2; opening++) {
    const again = createYards(yard.dataDir, yard.now, notChecked, console.error, () => undefined);
    expect(again.notes.queries['recovery.notes']()).toContainEqual(note);
    if (opening === 2) again.notes.dismiss(note.code);
    again.close();
  }
  const dismissed = createYards(yard.dataDir, yard.now, notChecked, console.error, () => undefined);
  expect(dismissed.notes.queries['recovery.notes']()).not.toContainEqual(note);
  dismissed.close();
  expect(rawValuesIn(rescued())).toEqual([12.1]);
});

test('what cannot be copied stays in the open file, until it can', async () => {
  const roundId = await begin();
  await type(roundId, 12.1);
  // Where the folder was there is a file now.
  rmSync(yard.dataDir, { recursive: true });
  writeFileSync(yard.dataDir, '');
  expect(await rename()).toMatchObject({ problem: { code: 'refusal.yard-not-rescued' } });
  expect(await yard.command('yard.openDemo', {})).toMatchObject({
    kind: 'own',
    problem: { code: 'refusal.yard-not-rescued' },
  });
  rmSync(yard.dataDir);
  mkdirSync(yard.dataDir);
  expect(await yard.command('yard.openOwn', {})).toMatchObject({ problem: { code: 'refusal.yard-gone' } });
  expect(await yard.command('yard.openRescued', {})).toMatchObject({ problem: null, boards: 2 });
  expect(await valuesOf(roundId)).toEqual([12.1]);
  expect(yard.faults.splice(0)).toHaveLength(2);
});

test('a demo yard that cannot be removed: the own yard opens all the same, with a sentence', async () => {
  const { uuid } = await info();
  const demo = join(yard.dataDir, 'demo-yard.sqlite');
  await yard.command('yard.openDemo', {});
  // As a file in use on Windows, it cannot be deleted.
  mkdirSync(`${demo}-journal`);
  expect(await yard.command('yard.removeDemo', {})).toMatchObject({
    uuid,
    kind: 'own',
    problem: null,
    notRemoved: { code: 'refusal.demo-not-removed', facts: { file: demo } },
  });
  expect(yard.faults.splice(0)).toHaveLength(1);
});

test('a demo yard that was half made is removed when the own yard is opened', async () => {
  const unfinished = join(yard.dataDir, 'demo-yard.sqlite-unfinished');
  writeFileSync(unfinished, 'half of it');
  await yard.command('yard.openOwn', {});
  expect(existsSync(unfinished)).toBe(false);
});

test('what is left of a demo yard that was half made when Pintally was killed is in nobody’s way', async () => {
  const unfinished = join(yard.dataDir, 'demo-yard.sqlite-unfinished');
  writeFileSync(unfinished, 'half of it');
  writeFileSync(`${unfinished}-wal`, 'and its WAL');
  const { boards } = await yard.command('yard.openDemo', {});
  expect(boards).toBeGreaterThan(10);
  expect(readdirSync(yard.dataDir).filter((name) => name.includes('unfinished'))).toEqual([]);
});
