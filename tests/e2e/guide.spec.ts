/**
 * The guide's pictures. Each run goes to what they show and fails where a name that the chapter has in bold is no longer
 * in the picture. `npm run guide:pictures` takes them again.
 */
import { readFileSync, writeFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { expect, type Page } from '@playwright/test';
import { readChapter } from '../../electron/guide/read-chapter.ts';
import viewport from '../../renderer/help/pictures/size.json' with { type: 'json' };
import { settled } from './everywhere.ts';
import { startPintally, test } from './pintally.ts';
import { openDemoYard, startRound, typeReading } from './walk.ts';

const help = resolve(import.meta.dirname, '../../renderer/help');

/**
 * When the pictures are taken, by the clocks of the host and the window, so that they change only with the app: the next
 * of these days. A clock that is behind the app's own day would rightly be asked about.
 */
const PICTURED_AT = [0, 1]
  .map((ahead) => `${new Date().getFullYear() + ahead}-10-16T10:05-04:00`)
  .find((at) => Date.parse(at) > Date.now())!;
const fixedDay = resolve(import.meta.dirname, 'fixed-day.mjs');

interface Picture {
  name: string;
  chapter: string;
  /** Goes there, from the empty first start. */
  show(page: Page): Promise<void>;
  /** What the chapter names and the picture has. */
  points: readonly string[];
}

async function describeStack(page: Page): Promise<void> {
  await page.getByLabel('What do you call this stack?').fill('Walnut behind the barn');
  await page.getByRole('combobox', { name: 'Species' }).fill('black walnut');
  await page.keyboard.press('Tab');
  await page.getByLabel('Thickness', { exact: true }).fill('8/4');
  await page.getByLabel('How many boards?').fill('12');
}

async function probeOwnStack(page: Page): Promise<void> {
  await describeStack(page);
  await page.getByRole('button', { name: 'Start probing' }).click();
  await page.getByRole('textbox', { name: 'Wood temperature' }).fill('48');
  await page.keyboard.press('Enter');
  await expect(page.getByRole('heading', { level: 1 })).toContainText('Board');
  await typeReading(page, '22.4');
  await page.getByRole('button', { name: 'I don’t know' }).click();
}

const goTo = (page: Page, path: string) => page.goto(`${page.url().replace(/#.*/, '')}#/${path}`);

const inDemo = (path: string) => async (page: Page) => {
  await openDemoYard(page);
  await goTo(page, path);
};

/** As it is copied from a spreadsheet. */
const notebook = [
  ['Board', 'Date', 'MC', 'Temp F'],
  ['WAL-01', '5/2/2026', '18.5', '61'],
  ['WAL-02', '5/2/2026', '19.2', '61'],
  ['WAL-03', '5/2/2026', '17.9', '61'],
]
  .map((cells) => cells.join('\t'))
  .join('\n');

const pictures: readonly Picture[] = [
  {
    name: 'first-start',
    chapter: 'first-stack',
    points: ['What do you call this stack?', 'Species', 'Thickness', 'How many boards?', 'Start probing'],
    show: describeStack,
  },
  {
    name: 'core',
    chapter: 'pins',
    points: ['Fresh crosscut', 'Fresh rip cut', 'Long insulated pins', 'Skip it'],
    show: async (page) => {
      await probeOwnStack(page);
      await page.getByRole('button', { name: /^Read the core/ }).click();
    },
  },
  {
    name: 'round',
    chapter: 'hands-free',
    points: ['Keys and options', 'Far view'],
    show: async (page) => {
      await openDemoYard(page);
      await startRound(page, 'Walnut from the lane', 48);
      await typeReading(page, '12.1');
    },
  },
  { name: 'places', chapter: 'air', points: ['Lowest EMC'], show: inDemo('places') },
  {
    name: 'history',
    chapter: 'history',
    points: ['History', 'Undo'],
    show: async (page) => {
      await probeOwnStack(page);
      await typeReading(page, '22.9');
      await goTo(page, 'history');
    },
  },
  {
    name: 'backups',
    chapter: 'backups',
    points: ['Back up now', 'Look inside'],
    show: async (page) => {
      await probeOwnStack(page);
      await goTo(page, 'backups');
      await page.getByRole('button', { name: 'Back up now' }).click();
      await expect(page.getByRole('button', { name: /^Look inside/ })).toBeVisible();
      // What was done just now is not what the chapter is about.
      const dismiss = page.getByRole('button', { name: 'Dismiss' });
      while ((await dismiss.count()) > 0) await dismiss.first().click();
    },
  },
  {
    name: 'import',
    chapter: 'past-records',
    points: ['Import a table', 'Columns'],
    show: async (page) => {
      await openDemoYard(page);
      await goTo(page, 'import-table');
      await page.getByLabel('Cells, with their column names').fill(notebook);
      await page.getByRole('button', { name: 'Read the cells' }).click();
      await expect(page.getByRole('heading', { name: 'Columns' })).toBeVisible();
    },
  },
  { name: 'board', chapter: 'calls', points: ['Average', 'Shell', 'Core'], show: inDemo('boards/8') },
  {
    name: 'meter',
    chapter: 'meter',
    points: ['Look for Bluetooth meters', 'Add a hand meter'],
    show: inDemo('meter'),
  },
  {
    name: 'page',
    chapter: 'past-records',
    points: ['Day of the readings', 'Unknown'],
    show: inDemo('past-round/1'),
  },
  {
    name: 'labels',
    chapter: 'labels',
    points: ['Boards', 'Print', 'Save as PDF'],
    show: async (page) => {
      await inDemo('labels?boards=1,2,3,4')(page);
      // It is enabled once the preview is there.
      await expect(page.getByRole('button', { name: 'Print', exact: true })).toBeEnabled();
    },
  },
];

/** Where a person has their yard: a test's folder is nobody's. */
const showUsualFolder = (page: Page, dataDir: string): Promise<void> =>
  page.evaluate((folder) => {
    const texts = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
    while (texts.nextNode()) {
      const text = texts.currentNode as Text;
      text.data = text.data.replaceAll(folder, '/home/ann/.local/share/pintally');
    }
  }, dataDir);

/** WebP is a third of the size, and Chromium writes it. */
const asWebp = (page: Page, png: Buffer): Promise<string> =>
  page.evaluate(async (base64) => {
    const bytes = Uint8Array.from(atob(base64), (letter) => letter.charCodeAt(0));
    const image = await createImageBitmap(new Blob([bytes]));
    const canvas = new OffscreenCanvas(image.width, image.height);
    canvas.getContext('2d')?.drawImage(image, 0, 0);
    const webp = await canvas.convertToBlob({ type: 'image/webp', quality: 0.85 });
    return btoa(
      Array.from(new Uint8Array(await webp.arrayBuffer()), (each) => String.fromCharCode(each)).join(''),
    );
  }, png.toString('base64'));

test.use({ viewport, locale: 'en-US', timezoneId: 'America/New_York' });

for (const { name, chapter, show, points } of pictures) {
  test(`the guide shows ${name} as it is`, async ({ pintally: { page } }, { config }) => {
    const text = readFileSync(join(help, `guide/en/${chapter}.md`), 'utf8');
    const { blocks } = readChapter(text);
    expect(blocks.some((block) => block.kind === 'picture' && block.name === name)).toBe(true);
    for (const point of points) expect(text, `${chapter} names it`).toContain(`**${point}**`);
    await show(page);
    await settled(page);
    for (const point of points) {
      const seen = page.getByText(point, { exact: true }).filter({ visible: true }).first();
      await expect(seen, `${point} is in the picture`).toBeInViewport();
    }
    if (config.updateSnapshots !== 'all') return;
    await page.clock.install({ time: PICTURED_AT });
    const onThatDay = await startPintally(page, {
      env: { NODE_OPTIONS: `--import ${fixedDay}`, PINTALLY_TEST_NOW: PICTURED_AT },
    });
    await show(page);
    await settled(page);
    await showUsualFolder(page, onThatDay.dataDir);
    await page.mouse.move(0, 0);
    const webp = await asWebp(page, await page.screenshot({ animations: 'disabled' }));
    writeFileSync(join(help, `pictures/${name}.webp`), Buffer.from(webp, 'base64'));
    // The window goes first: it would rightly complain that its machine is gone.
    await page.goto('about:blank');
    await onThatDay.stop();
  });
}
