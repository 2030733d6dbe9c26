import { mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { type App, createApp } from '../../../electron/app/app.ts';
import { threadSources } from '../../../electron/app/thread-files.ts';
import { NoLink } from '../../../electron/meter/no-link.ts';
import { SimulatedLink } from '../../../electron/meter/simulated-link.ts';
import { createPrintQueue, type PrintJob } from '../../../electron/print/print-queue.ts';
import { openWindow } from './a-window.ts';

const region = { locale: 'en-US', timeZone: 'America/Chicago' };
const MM_PER_POINT = 25.4 / 72;

describe('Printing without a dialog', () => {
  const dataDir = mkdtempSync(join(tmpdir(), 'pintally-printing-'));
  const jobs: PrintJob[] = [];
  let app: App;
  let window: ReturnType<typeof openWindow>;
  beforeAll(async () => {
    app = createApp({
      dataDir,
      links: {
        none: () => new NoLink(),
        bluetooth: () => new NoLink(),
        simulated: () => new SimulatedLink({ seed: 1 }),
      },
      threads: threadSources,
      printQueue: {
        printers: async () => [
          { name: 'tags', title: 'Tags by the saw', stopped: null, media: [] },
          { name: 'office', title: 'Office', stopped: 'Out of paper', media: [] },
        ],
        print: async (job) => {
          jobs.push(job);
          return { state: 'printed', why: '' };
        },
      },
    });
    window = openWindow(app);
    await window.command('yard.openDemo', {});
  });
  afterAll(() => app.close());

  test('a printer is remembered for each paper, on this computer and not in the yard', async () => {
    await window.command('printers.choose', { paper: 'roll', printer: 'tags' });
    await window.command('printers.choose', { paper: 'letter', printer: 'office' });
    await window.command('yard.openOwn', {});
    expect(await window.query('printers.list', {})).toEqual({
      printers: [
        { name: 'tags', title: 'Tags by the saw', isStopped: false },
        { name: 'office', title: 'Office', isStopped: true },
      ],
      chosen: { roll: 'tags', letter: 'office' },
    });
    await window.command('printers.choose', { paper: 'letter', printer: null });
    expect((await window.query('printers.list', {})).chosen).toEqual({ roll: 'tags' });
    await window.command('yard.openDemo', {});
  });

  test('labels, reports and the calibration page go to the printer as PDFs of the size of their paper', async () => {
    const { boards } = await window.query('labels.boards', { stackId: null, search: '' });
    const { id } = boards[0]!;
    const print = (pages: Parameters<typeof window.command<'printers.print'>>[1]['pages']) =>
      window.command('printers.print', { printer: 'tags', pages, region, work: null });
    await print({ kind: 'labels', boardIds: [id], paperId: 'roll', used: 0 });
    await print({ kind: 'report', report: { kind: 'buyer', id }, paper: 'letter' });
    await print({ kind: 'calibration', paperId: 'a4-sheet' });
    const sizes = [];
    for (const { pdf, widthMm, heightMm } of jobs) {
      const page = await (await getDocument({ data: new Uint8Array(pdf) }).promise).getPage(1);
      const { width, height } = page.getViewport({ scale: MM_PER_POINT });
      sizes.push([width, height]);
      expect([width, height]).toEqual([expect.closeTo(widthMm, 2), expect.closeTo(heightMm, 2)]);
    }
    // ISO 216 and ANSI: A4 is 210 mm × 297 mm, Letter 8.5 in × 11 in.
    expect(sizes.map((size) => size.map((mm) => Math.round(10 * mm) / 10))).toEqual([
      [60, 30],
      [215.9, 279.4],
      [210, 297],
    ]);
    expect(jobs.map(({ printer }) => printer)).toEqual(['tags', 'tags', 'tags']);
  });

  test('nothing is recorded as printed by sending it', async () => {
    const before = await window.query('labels.boards', { stackId: null, search: '' });
    const { id } = before.boards[0]!;
    const pages = { kind: 'labels' as const, boardIds: [id], paperId: 'roll', used: 0 };
    await window.command('printers.print', { printer: 'tags', pages, region, work: null });
    expect(await window.query('labels.boards', { stackId: null, search: '' })).toEqual(before);
  });

  test('a computer without a print queue offers none', async () => {
    expect(await createPrintQueue({ sockets: [join(dataDir, 'no.sock')] }).printers()).toBeNull();
  });
});
