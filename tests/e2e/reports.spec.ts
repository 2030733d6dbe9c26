import { readFile } from 'node:fs/promises';
import { expect, type Page } from '@playwright/test';
import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';
import { test } from './pintally.ts';
import { openDemoYard, picture } from './walk.ts';

/** Presses "Save as PDF", and reads what was saved, as pdf.js (Mozilla's own reader) finds it. */
async function savedText(page: Page, name: RegExp): Promise<string> {
  const download = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Save as PDF' }).click();
  const saved = await download;
  expect(saved.suggestedFilename()).toMatch(name);
  const path = `artifacts/${saved.suggestedFilename()}`;
  await saved.saveAs(path);
  const pdf = await getDocument({ data: new Uint8Array(await readFile(path)) }).promise;
  const pages = Array.from({ length: pdf.numPages }, async (_, index) => {
    const { items } = await (await pdf.getPage(index + 1)).getTextContent();
    return items.map((item) => ('str' in item ? item.str : '')).join(' ');
  });
  return (await Promise.all(pages)).join(' ');
}

test('a board and its stack are printed, and a printed sheet is checked', async ({ pintally: { page } }) => {
  await openDemoYard(page);
  await page.getByRole('link', { name: 'All boards' }).click();
  await page.getByRole('link', { name: 'WAL-01' }).click();
  await page.getByRole('link', { name: 'Print report' }).click();
  await expect(page.getByRole('region', { name: /^Preview, page 1/ })).toBeVisible();
  await picture(page, 'report-passport');
  expect(await savedText(page, /^passport-WAL-01-\d{4}-\d\d-\d\d\.pdf$/)).toContain(
    'All readings, newest first',
  );

  await page.getByRole('radio', { name: 'Sheet for a buyer' }).check();
  await page.getByRole('radio', { name: 'A4' }).check();
  await expect(page.getByText('1 page.')).toBeVisible();
  const sheet = await savedText(page, /^moisture-WAL-01-/);
  expect(sheet).toContain('Pin readings by the owner. Not a graded or certified test.');
  const [code] = /WAL-01\/B[0-9A-Z]{3}(-[0-9A-Z]{4}){3}/.exec(sheet)!;

  await page.getByRole('link', { name: 'Check a printed report' }).click();
  // A scanner types at once, and ends with Enter.
  const field = page.getByRole('textbox', { name: 'Check code' });
  await expect(field).toBeFocused();
  await field.pressSequentially(code.toLowerCase());
  await page.keyboard.press('Enter');
  await expect(page.getByText('This report matches what is in this yard.')).toBeVisible();
  await picture(page, 'report-checked');
  await field.fill(`${code.slice(0, -1)}${code.endsWith('A') ? 'B' : 'A'}`);
  await page.keyboard.press('Enter');
  await expect(page.getByText('A character of that code is wrong.')).toBeVisible();
  await expect(page.getByText('This report matches what is in this yard.')).toBeHidden();

  await field.fill(code);
  await page.keyboard.press('Enter');
  await page.getByRole('link', { name: 'Go to WAL-01' }).click();
  await page.getByRole('link', { name: 'Walnut from the lane' }).click();
  await page.getByRole('button', { name: 'More', exact: true }).click();
  await page.getByRole('menuitem', { name: 'Print report' }).click();
  const stack = await savedText(page, /^stack-Walnut-from-the-lane-/);
  for (const part of ['WAL-06', 'Tally', 'The stack, from its end']) expect(stack).toContain(part);
  await page.getByRole('radio', { name: 'Sheet to fill in' }).check();
  await expect(page.getByRole('region', { name: /^Preview, page 1/ })).toContainText('Wood temperature');
  await picture(page, 'report-list');
  expect(await savedText(page, /^list-Walnut-from-the-lane-/)).toContain('Spot 1');
});

test('chosen boards are on one sheet for a buyer, with the name of the yard', async ({
  pintally: { page },
}) => {
  await openDemoYard(page);
  await page.getByRole('link', { name: 'All boards' }).click();
  for (const code of ['WAL-01', 'WAL-02']) await page.getByRole('checkbox', { name: code }).check();
  await page.getByRole('button', { name: 'More', exact: true }).click();
  await page.getByRole('menuitem', { name: 'Sheet for a buyer' }).click();
  await page.getByLabel('Your name on the sheet').fill('Ridge Sawmill');
  await page.getByLabel('Sold to').fill('Miller');
  await expect(page.getByText('1 page.')).toBeVisible();
  await picture(page, 'report-buyer-list');
  const sheet = await savedText(page, /^moisture-2-boards-/);
  for (const part of ['Ridge Sawmill', 'Miller', 'WAL-01', 'WAL-02', 'Total']) expect(sheet).toContain(part);
});

test('boards are tallied by what is chosen', async ({ pintally: { page } }) => {
  await openDemoYard(page);
  await page.getByRole('link', { name: 'All boards' }).click();
  await page.getByRole('link', { name: 'Tally', exact: true }).click();
  const table = page.getByRole('table', { name: 'Tally' });
  await expect(table.getByRole('row')).toHaveCount(5);
  await page.getByRole('checkbox', { name: 'Thickness' }).uncheck();
  await page.getByRole('checkbox', { name: 'Call' }).check();
  await expect(table.getByRole('columnheader', { name: 'Call' })).toBeVisible();
  await page
    .getByRole('combobox', { name: 'Boards to tally' })
    .selectOption({ label: 'Walnut from the lane' });
  await expect(page.getByText('6 boards in all')).toBeVisible();
  await picture(page, 'tally');
  const download = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Save as CSV' }).click();
  const saved = await download;
  expect(saved.suggestedFilename()).toMatch(/^tally-\d{4}-\d\d-\d\d\.csv$/);
  const path = 'artifacts/tally.csv';
  await saved.saveAs(path);
  expect(await readFile(path, 'utf8')).toMatch(/^\uFEFFSpecies,Call,Boards,.*\r\nBlack walnut,/);
});
