import { spawnSync } from 'node:child_process';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { expect, test } from 'vitest';
import { createApp } from '../../../electron/app/app.ts';
import { threadSources } from '../../../electron/app/thread-files.ts';
import { NoLink } from '../../../electron/meter/no-link.ts';
import { SimulatedLink } from '../../../electron/meter/simulated-link.ts';
import { openWindow, say } from './a-window.ts';
import { yardOfTwo } from './yard-of-two.ts';

const NOTE = say({ code: 'yard-note.taken-back', facts: {} });

function contents(dataDir: string) {
  const file = new Database(join(dataDir, 'yard.sqlite'), { readonly: true });
  const all = {
    boards: file.prepare('SELECT id, version, log, place_id FROM board ORDER BY id').all(),
    moves: file.prepare('SELECT id, uuid, board_id, place_id, since FROM move ORDER BY id').all(),
  };
  file.close();
  return all;
}

test('an edit that was killed between slices is taken back before a window sees the yard, which says so', {
  timeout: 30_000,
}, async () => {
  const { app, command, board, dataDir } = await yardOfTwo();
  for (const part of ['A', 'B']) {
    await command(
      'boards.add',
      Array.from({ length: 300 }, (_, index) => board(`${part}-${index}`)),
    );
  }
  await app.close();
  const before = contents(dataDir);

  const { signal } = spawnSync(
    process.execPath,
    [join(import.meta.dirname, 'killed-in-slices.ts'), dataDir, '4'],
    {
      stdio: 'inherit',
    },
  );
  expect(signal).toBe('SIGKILL');
  const killed = contents(dataDir);
  expect(killed.moves.length).toBeGreaterThan(before.moves.length);
  expect(killed.moves.length).toBeLessThan(before.moves.length + 602);

  const link = () => new NoLink();
  const open = () =>
    createApp({
      dataDir,
      links: { none: link, bluetooth: link, simulated: () => new SimulatedLink({ seed: 1 }) },
      threads: threadSources,
    });
  const opened = open();
  expect(contents(dataDir)).toEqual(before);
  expect((await openWindow(opened).query('recovery.notes', {})).map(say)).toEqual([NOTE]);
  await opened.close();
  const again = open();
  expect(await openWindow(again).query('recovery.notes', {})).toEqual([]);
  await again.close();
});
