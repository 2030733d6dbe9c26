import { mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { afterEach, expect, test } from 'vitest';
import { type App, createApp } from '../../../../electron/app/app.ts';
import { threadSources } from '../../../../electron/app/thread-files.ts';
import { openWindow } from '../../app/a-window.ts';
import { noMeter } from '../../app/no-meter.ts';

let app: App;
afterEach(() => app.close());
const dataDir = mkdtempSync(join(tmpdir(), 'pintally-built-in-'));

function open() {
  app = createApp({
    dataDir,
    links: noMeter,
    threads: threadSources,
  });
  return openWindow(app);
}

/** Between two openings, as a disk or another program may. */
async function change(sql: string): Promise<void> {
  await app.close();
  const db = new Database(join(dataDir, 'yard.sqlite'));
  db.exec(sql);
  db.close();
}

test('a built-in species or use that the disk changed is repaired, with a sentence', async () => {
  const nameOf = async (window: ReturnType<typeof openWindow>) =>
    (await window.query('species.list', {})).find(({ id }) => id === 'walnut-black')?.name;
  const name = await nameOf(open());

  await change("UPDATE species SET record = replace(record, 'alnut', 'aloes') WHERE id = 'walnut-black'");
  const window = open();
  expect(await nameOf(window)).toBe(name);
  expect(await window.query('recovery.notes', {})).toEqual([
    { code: 'yard-note.built-in-repaired', facts: { entries: 1 } },
  ]);

  // That is said once.
  await change('SELECT 1');
  expect(await open().query('recovery.notes', {})).toEqual([]);

  // Entries of another Pintally are no damage.
  await change(
    "UPDATE species SET record = replace(record, 'alnut', 'aloes'); UPDATE setting SET value = '\"of another\"' WHERE key = 'built-in-sum'",
  );
  const next = open();
  expect(await nameOf(next)).toBe(name);
  expect(await next.query('recovery.notes', {})).toEqual([]);
});
