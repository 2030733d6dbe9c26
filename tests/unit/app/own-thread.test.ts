/** A thread whose system call never comes back: here, of a pipe that nobody writes to. */
import { execFileSync } from 'node:child_process';
import { existsSync, mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { afterEach, beforeEach, expect, test } from 'vitest';
import {
  createOwnThread,
  hasStuckThread,
  NoAnswer,
  type OwnThread,
} from '../../../electron/app/own-thread.ts';
import { Refusal } from '../../../shared-core/contract/answer.ts';

const ownThread = pathToFileURL(join(import.meta.dirname, '../../../electron/app/own-thread.ts')).href;

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
     import { setTimeout } from 'node:timers/promises';
     import { answerQuestions } from ${JSON.stringify(ownThread)};
     const wait = (ms) => Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, ms);
     answerQuestions(parentPort, async (question) => {
       if (question === 'hello') return 'hello';
       if (question === 'long') {
         await setTimeout(1);
         wait(600);
         return 'done';
       }
       return readFileSync(question, 'utf8');
     });`,
  );
  thread = createOwnThread(script);
});
afterEach(() => thread.close());

test('keeps the program running until it has answered, and no longer', () => {
  const program = join(folder, 'asks.mjs');
  writeFileSync(
    program,
    `import { createOwnThread } from ${JSON.stringify(ownThread)};
     const thread = createOwnThread(${JSON.stringify(join(folder, 'reads.mjs'))});
     console.log(await thread.ask('hello'), await thread.ask('long'));`,
  );
  expect(execFileSync(process.execPath, [program], { encoding: 'utf8', timeout: 15_000 })).toBe(
    'hello done\n',
  );
});

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

test('what waits for its turn behind long work is not given up for that, and ends nothing', async () => {
  expect(await thread.ask('hello')).toBe('hello');
  const long = thread.ask('long', undefined, 5000);
  // The thread may be at it before it blocks: the long work waits once.
  const short = thread.ask('hello', undefined, 300);
  expect(await Promise.all([long, short])).toEqual(['done', 'hello']);
});

test('one that answers in time is not given up, however many ask after it', async () => {
  const answers = await Promise.all(Array.from({ length: 50 }, () => thread.ask('hello', undefined, 5000)));
  expect(new Set(answers)).toEqual(new Set(['hello']));
});

// A thread that is ended while it loads native code ends the program: "FATAL ERROR: Error::New napi_get_last_error_info".
test('one that is closed while it loads is ended once it has loaded', async () => {
  const script = join(folder, 'loads.mjs');
  const loaded = join(folder, 'loaded');
  writeFileSync(
    script,
    `import { parentPort } from 'node:worker_threads';
     import { writeFileSync } from 'node:fs';
     Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, 300);
     writeFileSync(${JSON.stringify(loaded)}, '');
     parentPort.on('message', ({ id }) => parentPort.postMessage({ id, begun: true }));`,
  );
  const loading = createOwnThread<string, string>(script);
  const asked = loading.ask('hello').catch((error) => error);
  await loading.close();
  expect(await asked).toBeInstanceOf(Refusal);
  expect(existsSync(loaded)).toBe(true);
});
