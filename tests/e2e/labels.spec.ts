import { readFile } from 'node:fs/promises';
import { expect } from '@playwright/test';
import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';
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
    await expect(page.getByRole('button', { name: 'Print' })).toBeInViewport({ ratio: 1 });
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
    const download = page.waitForEvent('download');
    await page.getByRole('button', { name: 'Save as PDF' }).click();
    await download;
    const notice = page.getByText(/is ready: 6 labels/);
    const told = await notice.boundingBox();
    const bar = await page.getByRole('banner').first().boundingBox();
    const heading = await page.getByRole('heading', { level: 1 }).boundingBox();
    expect(told!.y).toBeGreaterThanOrEqual(bar!.y + bar!.height);
    expect(heading!.y).toBeGreaterThanOrEqual(told!.y + told!.height);
    await picture(page, `notice-${width}`);
    await page.getByRole('button', { name: 'Dismiss' }).click();
  }
});
