import { readFile } from 'node:fs/promises';
import { expect } from '@playwright/test';
import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';
import { settled } from './everywhere.ts';
import { test } from './pintally.ts';
import { openDemoYard, picture } from './walk.ts';

/** The PDF's text, page by page, as pdf.js (Mozilla's own reader) finds it. */
async function pagesOf(path: string): Promise<string[]> {
  const pdf = await getDocument({ data: new Uint8Array(await readFile(path)) }).promise;
  return Promise.all(
    Array.from({ length: pdf.numPages }, async (_, index) => {
      const { items } = await (await pdf.getPage(index + 1)).getTextContent();
      return items.map((item) => ('str' in item ? item.str : '')).join(' ');
    }),
  );
}

test('labels for a stack are saved as a PDF that reads back', async ({ pintally: { page } }) => {
  await openDemoYard(page);
  await page.getByRole('link', { name: 'Labels: Walnut from the lane' }).click();
  await page.getByRole('button', { name: 'All (6)' }).click();
  await expect(page.getByText('6 labels on 1 page.')).toBeVisible();
  await picture(page, 'labels');

  const download = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Save as PDF' }).click();
  const saved = await download;
  expect(saved.suggestedFilename()).toMatch(/^labels-\d{4}-\d\d-\d\d\.pdf$/);
  const path = 'artifacts/labels.pdf';
  await saved.saveAs(path);

  const [text, ...more] = await pagesOf(path);
  expect(more).toEqual([]);
  for (const code of ['WAL-01', 'WAL-02', 'WAL-03', 'WAL-04', 'WAL-05', 'WAL-06'])
    expect(text).toContain(code);
  expect(text).toContain('Black walnut');
  expect(text).toContain('29 mm');
  expect(text?.match(/\d+\.\d%/g)?.length).toBeGreaterThanOrEqual(6);
});

test('a label of a roll has a page to itself', async ({ pintally: { page } }) => {
  await openDemoYard(page);
  await page.getByRole('link', { name: 'Labels: Walnut from the lane' }).click();
  await page.getByRole('button', { name: 'All (6)' }).click();
  await page.getByLabel('Print on').selectOption('Roll, 60 mm × 30 mm');
  await expect(page.getByText('6 labels on 6 pages.')).toBeVisible();
  const download = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Save as PDF' }).click();
  const path = 'artifacts/single-labels.pdf';
  await (await download).saveAs(path);
  const pages = await pagesOf(path);
  expect(pages).toHaveLength(6);
  expect(pages[0]).toContain('WAL-01');
  expect(pages[5]).toContain('WAL-06');
});

test('the preview and Print are in sight without scrolling, in small windows too', async ({
  pintally: { page },
}) => {
  await openDemoYard(page);
  await page.getByRole('link', { name: 'Labels: Walnut from the lane' }).click();
  await page.getByRole('button', { name: 'All (6)' }).click();
  for (const [width, height] of [
    [1280, 860],
    [800, 600],
  ] as const) {
    await page.setViewportSize({ width, height });
    await expect(page.getByRole('button', { name: 'Print', exact: true })).toBeInViewport({ ratio: 1 });
    await expect(page.getByRole('region', { name: /^Preview, page 1/ })).toBeInViewport({ ratio: 1 });
    await picture(page, `labels-${width}`);
  }
});

test('what was done is said below the menu and above the heading, at any width', async ({
  pintally: { page },
}) => {
  await openDemoYard(page);
  await page.getByRole('link', { name: 'Labels: Walnut from the lane' }).click();
  await page.getByRole('button', { name: 'All (6)' }).click();
  for (const [width, height] of [
    [1280, 860],
    [800, 600],
    [320, 640],
  ] as const) {
    await page.setViewportSize({ width, height });
    const notice = page.getByText(/is ready: 6 labels/);
    // The page may still be scrolling to where it is told. On a busy machine it is gone again before it was looked at.
    await expect(async () => {
      if (!(await notice.isVisible())) {
        const download = page.waitForEvent('download');
        await page.getByRole('button', { name: 'Save as PDF' }).click();
        await download;
      }
      const told = await notice.boundingBox({ timeout: 2000 });
      const bar = await page.getByRole('banner').first().boundingBox();
      const heading = await page.getByRole('heading', { level: 1 }).boundingBox();
      expect(told!.y).toBeGreaterThanOrEqual(bar!.y + bar!.height);
      expect(heading!.y).toBeGreaterThanOrEqual(told!.y + told!.height);
    }).toPass({ timeout: 60_000 });
    await picture(page, `notice-${width}`);
    await page.getByRole('button', { name: 'Dismiss' }).click();
  }
});

/** Where a picture is dark: a row of pixels after another. */
interface Ink {
  width: number;
  height: number;
  isDark: (x: number, y: number) => boolean;
}

const inkOf = (width: number, height: number, dark: readonly boolean[]): Ink => ({
  width,
  height,
  isDark: (x, y) => dark[y * width + x] ?? false,
});

/** How many pixels are dark in one and farther than so many pixels from any dark one of the other. */
function strays(one: Ink, other: Ink, reach: number): number {
  let count = 0;
  for (let y = 0; y < one.height; y++) {
    for (let x = 0; x < one.width; x++) {
      if (!one.isDark(x, y)) continue;
      let isNear = false;
      for (let dy = -reach; dy <= reach && !isNear; dy++) {
        for (let dx = -reach; dx <= reach && !isNear; dx++) isNear = other.isDark(x + dx, y + dy);
      }
      if (!isNear) count++;
    }
  }
  return count;
}

test.describe('at twice the pixels', () => {
  test.use({ deviceScaleFactor: 2 });

  test('the preview of a label is its print within 0.2 mm', async ({ pintally: { page } }) => {
    await openDemoYard(page);
    await page.getByRole('link', { name: 'Labels: Walnut from the lane' }).click();
    await page.getByRole('button', { name: 'All (6)' }).click();
    await page.getByLabel('Print on').selectOption('Roll, 60 mm × 30 mm');
    await page.getByRole('checkbox', { name: 'Log' }).check();
    const preview = page.getByRole('img', { name: 'Preview, page 1 of 6' });
    await expect(preview.getByText('WAL-01')).toBeVisible();
    await page.evaluate(() => document.fonts.ready);
    const shown = (await preview.screenshot()).toString('base64');
    // A screenshot begins at a whole pixel of the page.
    const box = (await preview.boundingBox())!;
    const [left, top] = [box.x, box.y].map((at) => Math.round(2 * (at - Math.floor(at)))) as [number, number];
    const { width, height, dark } = await page.evaluate(async (png) => {
      const image = new Image();
      image.src = `data:image/png;base64,${png}`;
      await image.decode();
      const canvas = document.createElement('canvas');
      Object.assign(canvas, { width: image.width, height: image.height });
      const context = canvas.getContext('2d')!;
      context.drawImage(image, 0, 0);
      const { data } = context.getImageData(0, 0, image.width, image.height);
      // The dashed edges of the label are gray, and not printed.
      const dark = Array.from({ length: image.width * image.height }, (_, index) => data[4 * index]! < 100);
      return { width: image.width, height: image.height, dark };
    }, shown);

    const download = page.waitForEvent('download');
    await page.getByRole('button', { name: 'Save as PDF' }).click();
    const path = 'artifacts/compared-labels.pdf';
    await (await download).saveAs(path);
    const pdf = await getDocument({ data: new Uint8Array(await readFile(path)) }).promise;
    const first = await pdf.getPage(1);
    // The screenshot is of whole pixels of the page, and so a little larger than the label.
    const pixelsPerMm = (2 * box.width) / 60;
    const viewport = first.getViewport({ scale: (pixelsPerMm * 25.4) / 72 });
    const factory = pdf.canvasFactory as {
      create(width: number, height: number): { canvas: HTMLCanvasElement; context: CanvasRenderingContext2D };
    };
    const { canvas, context } = factory.create(width, height);
    await first.render({ canvas, canvasContext: context, viewport }).promise;
    const { data } = context.getImageData(0, 0, width, height);
    const printed = inkOf(
      width,
      height,
      Array.from({ length: width * height }, (_, index) => data[4 * index]! < 100),
    );

    const shot = inkOf(width, height, dark);
    const previewed = { ...shot, isDark: (x: number, y: number) => shot.isDark(x + left, y + top) };
    const reach = Math.floor(0.2 * pixelsPerMm);
    expect(reach).toBeGreaterThanOrEqual(2);
    expect(dark.filter(Boolean).length).toBeGreaterThan(10_000);
    expect([strays(previewed, printed, reach), strays(printed, previewed, reach)]).toEqual([0, 0]);
    // Nothing of it is the same by being black all over.
    expect(strays(previewed, inkOf(width, height, []), reach)).toBeGreaterThan(10_000);
  });
});

test('labels begin at the first free one of a sheet, and a scan leads to a board from any screen', async ({
  pintally: { page },
}) => {
  await openDemoYard(page);
  await page.getByRole('link', { name: 'Labels: Walnut from the lane' }).click();
  await page.getByRole('button', { name: 'All (6)' }).click();
  await page.getByRole('radio', { name: 'Row 10, label 2' }).click();
  await page.keyboard.press('ArrowLeft');
  await expect(page.getByText('6 labels on 2 pages.')).toBeVisible();
  await expect(page.getByLabel('Labels already used on the first sheet')).toHaveValue('27');
  await page.getByRole('radio', { name: 'Code 128' }).check();
  // The preview that is drawn again moves what is below it.
  await settled(page);
  await page.getByRole('checkbox', { name: 'Place' }).check();
  await picture(page, 'labels-first-free');

  await page.getByRole('link', { name: 'Places', exact: true }).click();
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('Places');
  // A scanner types faster than a hand.
  const scan = (code: string) =>
    page.evaluate((keys) => {
      for (const key of [...keys, 'Enter']) {
        document.body.dispatchEvent(new KeyboardEvent('keydown', { key, bubbles: true, cancelable: true }));
      }
    }, code);
  await scan('NONE-99');
  await expect(page.getByText('No board here has the ID NONE-99.')).toBeVisible();
  await scan('WAL-03');
  await expect(page.getByRole('heading', { level: 1 })).toContainText('WAL-03');
});

test('labels count as printed once a person says so, which is undone and redone', async ({
  pintally: { page },
}) => {
  await openDemoYard(page);
  await page.getByRole('link', { name: 'Labels: Walnut from the lane' }).click();
  const toPrint = page.getByRole('button', { name: /^New or changed since printed/ });
  await page.getByRole('button', { name: 'All (6)' }).click();
  await page.evaluate(() => {
    window.print = () => void dispatchEvent(new Event('afterprint'));
  });
  const answer = async (words: string) => {
    await page.getByRole('button', { name: 'Print', exact: true }).click();
    await page.getByRole('button', { name: words, exact: true }).click();
  };
  await answer('No');
  await expect(toPrint).toHaveText('New or changed since printed (6)');
  await answer('Yes, printed');
  await expect(page.getByText('6 labels marked as printed.')).toBeVisible();
  await expect(toPrint).toBeHidden();
  await page.getByRole('button', { name: 'Undo', exact: true }).click();
  await expect(toPrint).toHaveText('New or changed since printed (6)');
  await page.getByRole('button', { name: 'Redo', exact: true }).click();
  await expect(toPrint).toBeHidden();
});
