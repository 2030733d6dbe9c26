import { randomFillSync } from 'node:crypto';
import { mkdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { type Fault, tryOften } from './fault.ts';
import { inFolder } from './folders.ts';
import { inApp, yardFileIn } from './opened.ts';
import { addStack } from './streaming.ts';

/** What is where the yard file should be. */
const files: Record<string, (file: string) => Promise<void> | void> = {
  'a foreign database': (file) => {
    const db = new Database(file);
    db.exec("CREATE TABLE song (id INTEGER PRIMARY KEY, title TEXT); INSERT INTO song VALUES (1, 'one')");
    db.close();
  },
  'a foreign database with a log': (file) => {
    const db = new Database(file);
    db.pragma('journal_mode = WAL');
    db.exec('CREATE TABLE board (id INTEGER PRIMARY KEY, title TEXT)');
    db.close();
  },
  'a database of another program': (file) => {
    const db = new Database(file);
    db.pragma('application_id = 252006674');
    db.close();
  },
  'a newer yard': async (file) => {
    await inApp(join(file, '..'), ({ window }) => addStack(window, 'Newer', 2));
    const db = new Database(file);
    db.pragma('user_version = 9999');
    db.close();
  },
  text: (file) => writeFileSync(file, 'Dear Pintally,\n'.repeat(400)),
  noise: (file) => writeFileSync(file, randomFillSync(Buffer.alloc(8192))),
  'a folder': (file) => mkdirSync(file),
};

/** Another file is where the yard should be: it is refused with a sentence, and stays as it is to the byte. */
export const foreignFiles: Fault = (howMany, seed) =>
  tryOften(howMany, seed, 1, (_, mine) =>
    inFolder(async (folder) => {
      const names = Object.keys(files);
      const name = names[mine % names.length] as string;
      const file = yardFileIn(folder);
      await files[name]?.(file);
      const bytes = (): string =>
        statSync(file).isFile() ? readFileSync(file).toString('base64') : 'a folder';
      const before = bytes();
      const { problem } = await inApp(folder, ({ window }) => window.query('yard.info', {}));
      if (bytes() !== before) return [`${name} was changed`];
      return problem === null ? [`${name} was opened`] : [];
    }),
  );
