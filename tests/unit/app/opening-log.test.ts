import { mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { afterEach, expect, test, vi } from 'vitest';
import { type App, type AppOptions, createApp } from '../../../electron/app/app.ts';
import { threadSources } from '../../../electron/app/thread-files.ts';
import { NoLink } from '../../../electron/meter/no-link.ts';

let app: App;
afterEach(() => app.close());

function ask(options: Pick<AppOptions, 'openFile'> = {}) {
  const dataDir = mkdtempSync(join(tmpdir(), 'pintally-open-log-'));
  app = createApp({
    dataDir,
    links: {
      none: () => new NoLink(),
      bluetooth: () => new NoLink(),
      simulated: () => {
        throw new Error('no sample after 12.4');
      },
    },
    simulatesInOwnYard: true,
    threads: threadSources,
    ...options,
  });
  const { answer } = app.connect('window-1', () => undefined);
  const file = join(dataDir, 'logs', 'pintally.log');
  return { file, ask: (name: string) => answer(name, {}, { yard: null, act: null }) };
}

test('a fault of ours is in the error report that its sentence names', async () => {
  const { file, ask: answerOf } = ask();
  expect(await answerOf('meter.simulate')).toMatchObject({
    ok: false,
    problem: { code: 'refusal.unexpected' },
  });
  const answer = await answerOf('log.open');
  expect(answer).toMatchObject({ ok: true, output: { file } });
  expect(JSON.stringify(answer)).toContain('fault: Error: no sample after #');
});

test('where the computer opens the error report, the window need not', async () => {
  const opened: string[] = [];
  const openFile = async (path: string) => opened.push(path) > 0;
  const { file, ask: answerOf } = ask({ openFile });
  expect(await answerOf('log.open')).toEqual({ ok: true, output: { file, text: null, isWritten: true } });
  expect(opened).toEqual([file]);
});

test('the window shows the error report where the computer has no program for it', async () => {
  const { file, ask: answerOf } = ask({ openFile: async () => false });
  expect(await answerOf('log.open')).toEqual({ ok: true, output: { file, text: '', isWritten: true } });
});

test('an error report that cannot be written says so, and nothing opens a file that is not there', async () => {
  vi.spyOn(console, 'error').mockImplementation(() => undefined);
  const opened: string[] = [];
  const { file, ask: answerOf } = ask({ openFile: async (path) => opened.push(path) > 0 });
  writeFileSync(dirname(file), 'a file where the folder should be');
  await answerOf('meter.simulate');
  expect(await answerOf('log.open')).toEqual({ ok: true, output: { file, text: '', isWritten: false } });
  expect(opened).toEqual([]);
});
