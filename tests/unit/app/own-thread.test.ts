/** A thread whose system call never comes back: here, of a pipe that nobody writes to. */
import { execFileSync } from 'node:child_process';
import { mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import {
  createOwnThread,
  hasStuckThread,
  NoAnswer,
  type OwnThread,
} from '../../../electron/app/own-thread.ts';

let folder: string;
let thread: OwnThread<string, string>;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'pintally-thread-'));
  execFileSync('mkfifo', [join(folder, 'pipe')]);
  const script = join(folder, 'reads.mjs');
  writeFileSync(
    script,
    `import { parentPort } from 'node:worker_threads';
     import { readFileSync } from 'node:fs';
     parentPort.postMessage('ready');
     parentPort.on('message', ({ id, question }) =>
       parentPort.postMessage({ id, answer: question === 'hello' ? 'hello' : readFileSync(question, 'utf8') }));`,
  );
  thread = createOwnThread(script);
});
afterEach(() => thread.close());

const pipe = () => join(folder, 'pipe');
/** Somebody writes to it at last. */
const letGo = () => writeFileSync(pipe(), '');

test('is given up after its limit, with whoever waits behind it; the next question gets another thread', async () => {
  expect(await thread.ask('hello')).toBe('hello');
  const late = thread.ask(pipe(), undefined, 200).catch((error) => error);
  const behind = thread.ask('hello').catch((error) => error);
  const gone = await late;
  expect(gone).toBeInstanceOf(NoAnswer);
  expect(await behind).toBeInstanceOf(NoAnswer);
  expect(hasStuckThread()).toBe(true);
  expect(await thread.ask('hello')).toBe('hello');
  letGo();
  await (gone as NoAnswer).ended;
  expect(hasStuckThread()).toBe(false);
});

test('one that answers in time is not given up, however many ask after it', async () => {
  const answers = await Promise.all(Array.from({ length: 50 }, () => thread.ask('hello', undefined, 5000)));
  expect(new Set(answers)).toEqual(new Set(['hello']));
});
