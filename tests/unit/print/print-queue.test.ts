import { createServer } from 'node:http';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, test, vi } from 'vitest';
import { pdfOf } from '../../../electron/print/pdf.ts';
import { createPrintQueue, type PrintQueue } from '../../../electron/print/print-queue.ts';
import { Refusal } from '../../../shared-core/contract/answer.ts';
import { message } from '../../../shared-core/words/message.ts';
import { inEnglish } from '../words/in-english.ts';
import { noPrintSystem, startPrintSystem } from './a-print-system.ts';

const MM_PER_POINT = 25.4 / 72;

/** Pages of that size with a mark in the lower right corner. */
const pdfOfSize = (widthMm: number, heightMm: number, pages = 1): Promise<Uint8Array> =>
  pdfOf(
    Array.from({ length: pages }, () => ({
      widthMm,
      heightMm,
      operations: [
        {
          kind: 'path',
          d: `M${widthMm - 6} ${heightMm - 6}L${widthMm - 1} ${heightMm - 6}L${widthMm - 1} ${heightMm - 1}Z`,
          isFilled: true,
          strokeMm: null,
        },
      ],
    })),
    { title: 'Labels', locale: 'en', createdAt: new Date('2026-11-27T04:00:00Z') },
  );

/** As pdf.js (Mozilla's own reader) finds them, mm. */
async function sizesOf(pdf: Uint8Array): Promise<number[][]> {
  const { numPages, getPage } = await getDocument({ data: pdf }).promise.then((document) => ({
    numPages: document.numPages,
    getPage: (page: number) => document.getPage(page),
  }));
  return Promise.all(
    Array.from({ length: numPages }, async (_, index) => {
      const { width, height } = (await getPage(index + 1)).getViewport({ scale: MM_PER_POINT });
      return [width, height];
    }),
  );
}

const FOLLOW_MS = 15_000;
const never = new AbortController().signal;

const refusalOf = async (work: Promise<unknown>): Promise<string> =>
  work.then(
    () => 'not refused',
    (error) => (error instanceof Refusal ? inEnglish(error.problem) : String(error)),
  );

describe.skipIf(noPrintSystem !== null)(`The print queue (${noPrintSystem ?? 'with a print system'})`, () => {
  let system: Awaited<ReturnType<typeof startPrintSystem>>;
  let queue: PrintQueue;
  beforeAll(async () => {
    system = await startPrintSystem();
    queue = createPrintQueue({ sockets: [system.socket], followMs: FOLLOW_MS });
  });
  afterAll(() => system.close());
  beforeEach(() => system.clear());
  afterEach(() => vi.restoreAllMocks());

  const print = async (printer: string, widthMm: number, heightMm: number, signal = never) =>
    queue.print(
      { printer, pdf: await pdfOfSize(widthMm, heightMm, 2), title: 'labels', widthMm, heightMm },
      signal,
    );

  test('it names the printers as the system does, and says which is stopped and why', async () => {
    const found = (await queue.printers())!.map(({ name, title, stopped }) => [name, title, stopped]);
    expect(found.sort()).toEqual([
      ['broken', 'Broken', null],
      ['empty', 'Empty', null],
      ['halted', 'Halted', 'Changing the roll'],
      ['office', 'Office', null],
      ['slow', 'Slow', null],
      ['tags', 'Tags by the saw', null],
    ]);
  });

  test.each([
    [25, 13],
    [60, 30],
    [100, 150],
  ])('labels of %i × %i mm come out on paper of that size', async (widthMm, heightMm) => {
    expect(await print('tags', widthMm, heightMm)).toEqual({ state: 'printed', why: '' });
    const [pdf, ...more] = system.printed();
    expect(more).toEqual([]);
    const sizes = await sizesOf(pdf!);
    expect(sizes).toHaveLength(2);
    for (const [width, height] of sizes) {
      expect(Math.abs(width! - widthMm)).toBeLessThan(0.2);
      expect(Math.abs(height! - heightMm)).toBeLessThan(0.2);
    }
  });

  test('a report comes out on Letter, by the name that the printer has for it', async () => {
    expect(await print('office', 215.9, 279.4)).toEqual({ state: 'printed', why: '' });
    const [[width, height] = []] = await sizesOf(system.printed()[0]!);
    expect([width, height]).toEqual([expect.closeTo(215.9, 1), expect.closeTo(279.4, 1)]);
  });

  test.each([
    ['office', 'Office takes no paper of 60 mm × 30 mm.'],
    ['halted', 'Halted is stopped: Changing the roll. Nothing was printed.'],
    ['gone', 'gone was not found. Nothing was printed. Choose another printer.'],
    ['broken', 'Broken did not print: The labels are used up. Check the printer, then print again.'],
  ])('what does not print is refused with the reason: %s', async (printer, sentence) => {
    expect(await refusalOf(print(printer, 60, 30))).toContain(sentence);
    expect(system.printed()).toEqual([]);
  });

  test('a job that still waits is told so, with what its printer says', async () => {
    const why = 'The labels are used up';
    const before = system.heard(why);
    // The time to follow it begins when the clock is first read, and is over after a look that could see what was said.
    let read = 0;
    vi.spyOn(performance, 'now').mockImplementation(() =>
      system.heard(why) > before && read++ >= 2 ? FOLLOW_MS : 0,
    );
    expect(await print('empty', 60, 30)).toEqual({ state: 'waiting', why });
  });

  test('a person who stops it takes it out of the queue, and the next one is not held up by it', async () => {
    for (const begun of [1, 2]) {
      const stop = new AbortController();
      const stopped = refusalOf(print('slow', 60, 30, stop.signal));
      await vi.waitFor(() => expect(system.begun()).toBe(begun), { timeout: 10_000 });
      stop.abort(new Refusal(message('refusal.stopped')));
      expect(await stopped).toBe('Stopped. Nothing was changed.');
    }
  });
});

describe('Where there is no print queue', () => {
  test('none is offered, and nothing is printed', async () => {
    const queue = createPrintQueue({ sockets: ['/nowhere/cups.sock'] });
    expect(await queue.printers()).toBeNull();
    const job = { printer: 'tags', pdf: new Uint8Array(), title: '', widthMm: 60, heightMm: 30 };
    expect(await refusalOf(queue.print(job, never))).toBe(
      'No print queue found. Nothing was printed. Use the print dialog.',
    );
  });

  test.each([
    [401, 'The print queue asks for a password. Nothing was printed. Use the print dialog.'],
    [500, 'The print queue does not answer. Look at the printer before you print again.'],
    [200, 'The print queue does not answer. Look at the printer before you print again.'],
  ])('one that answers %i is told', async (status, sentence) => {
    const socket = join(tmpdir(), `printing-${process.pid}-${status}.sock`);
    const server = createServer((_, answer) => answer.writeHead(status).end('no IPP'));
    await new Promise<void>((resolve) => server.listen(socket, resolve));
    try {
      const queue = createPrintQueue({ sockets: [socket] });
      expect(await refusalOf(queue.printers())).toBe(sentence);
    } finally {
      server.close();
    }
  });
});
