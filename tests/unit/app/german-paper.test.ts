/** The demo yard as a German opens it: its names, and all that is printed of it. */
import { mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { type App, createApp } from '../../../electron/app/app.ts';
import { threadSources } from '../../../electron/app/thread-files.ts';
import scenario from '../../../seeds/demo-yard.json' with { type: 'json' };
import germanNames from '../../../seeds/demo-yard-german.json' with { type: 'json' };
import { hasEnglish } from '../words/english-left.ts';
import { openWindow } from './a-window.ts';
import { noMeter } from './no-meter.ts';

const region = { locale: 'de-DE', timeZone: 'Europe/Berlin' };
let app: App;
let window: ReturnType<typeof openWindow>;
beforeAll(async () => {
  app = createApp({
    dataDir: mkdtempSync(join(tmpdir(), 'pintally-german-')),
    links: noMeter,
    threads: threadSources,
  });
  window = openWindow(app);
  await window.command('yard.openDemo', { language: 'de' });
});
afterAll(() => app.close());

async function textsOf(pdfBase64: string): Promise<string[]> {
  const data = new Uint8Array(Buffer.from(pdfBase64, 'base64'));
  const pdf = await getDocument({ data, verbosity: 0 }).promise;
  const pages = Array.from({ length: pdf.numPages }, async (_, index) => {
    const { items } = await (await pdf.getPage(index + 1)).getTextContent();
    return items.flatMap((item) => ('str' in item ? [item.str] : []));
  });
  return (await Promise.all(pages)).flat();
}

/** Every name and note of the scenario; an ID of a board or piece, and a standard, is of no language. */
function written(value: unknown, key = ''): string[] {
  if (typeof value === 'string') return ['name', 'note', 'log', 'place'].includes(key) ? [value] : [];
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([name, each]) => written(each, name));
}

test('each name and note of the demo yard has a German one', () => {
  const names = new Set(written(scenario).filter((text) => text !== ''));
  expect(Object.keys(germanNames).sort()).toEqual([...names].sort());
  expect(Object.values(germanNames).filter(hasEnglish)).toEqual([]);
});

test('the demo yard that is made in German has them', async () => {
  const stacks = await window.query('stacks.list', {});
  expect(stacks.map(({ name }) => name)).toContain('Nussbaum vom Feldweg');
  expect(JSON.stringify(stacks)).not.toMatch(/Walnut|Pole shed|stickers/);
});

test.each([
  ['passport', 'board', ['Brettpass', 'Amerikanische', 'Ziel', 'Mittel', 'Seite 1 von']],
  ['buyer', 'board', ['Holzfeuchte eines Bretts', 'Keine Sortierung']],
  ['stack', 'stack', ['Stapelbericht', 'Holzliste', 'm³']],
  ['list', 'stack', ['Blatt zum Ausfüllen', 'Holztemperatur']],
] as const)('a %s has no English in it', async (kind, of, parts) => {
  const [stack] = await window.query('stacks.list', {});
  const id = of === 'stack' ? stack!.id : 8;
  const { pdfBase64 } = await window.query('reports.pdf', { kind, id, paper: 'a4', region });
  const texts = await textsOf(pdfBase64);
  for (const part of parts) expect(texts.join(' ')).toContain(part);
  expect(texts.filter(hasEnglish)).toEqual([]);
  expect(texts.filter((text) => /\d\.\d+ ?%|\.\.(\s|$)/.test(text))).toEqual([]);
});

test.each(['sheet', 'roll'])('labels on a %s have no English in them', async (paperId) => {
  const { pdfBase64 } = await window.query('labels.pdf', {
    boardIds: [1, 8, 16, 24],
    paperId,
    used: 0,
    region,
  });
  const texts = await textsOf(pdfBase64);
  expect(texts.join(' ')).toMatch(/Hereinholen|Weiter trocknen/);
  expect(texts.join(' ')).toMatch(/\d,\d %/);
  expect(texts.filter(hasEnglish)).toEqual([]);
});
