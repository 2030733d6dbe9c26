/** What a person takes along, and brings in again: an export, and another file of the yard. */
import { readFileSync } from 'node:fs';
import { expect } from '@playwright/test';
import { test } from './pintally.ts';
import { openDemoYard } from './walk.ts';

test('everything goes out of the demo yard as JSON, and comes into an empty one', async ({ pintally }) => {
  const { page } = pintally;
  await openDemoYard(page);
  await page.getByRole('navigation').getByRole('link', { name: 'Files' }).click();
  const downloads = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Export JSON' }).click();
  const file = await (await downloads).path();
  const boards = JSON.parse(readFileSync(file, 'utf8')).boards.length;

  await page.getByRole('button', { name: /invented/i }).click();
  await page.getByRole('menuitem', { name: /own yard/i }).click();
  await expect(page.getByText('Demo yard: invented data.')).toHaveCount(0);
  await expect(page.getByRole('button', { name: 'Open the demo yard' })).toBeVisible();
  await page.getByRole('navigation').getByRole('link', { name: 'Files' }).click();
  await page.locator('input[type=file]').setInputFiles({
    name: 'yard.json',
    mimeType: 'application/json',
    buffer: readFileSync(file),
  });
  const dialog = page.getByRole('dialog', { name: 'Merge yard.json into your yard?' });
  await expect(dialog).toContainText(`${boards} boards`, { timeout: 30_000 });
  await page.screenshot({ path: 'artifacts/screenshots/bring-in.png' });
  await dialog.getByRole('button', { name: 'Merge', exact: true }).click();
  await expect(page.getByText('yard.json merged into your yard.')).toBeVisible({ timeout: 30_000 });
  await page.getByRole('navigation').getByRole('link', { name: 'Stacks' }).click();
  await expect(page.getByRole('link', { name: /oak/i }).first()).toBeVisible();

  await page.goto(`${page.url().split('#')[0]}#/boards/1`);
  await page.getByRole('button', { name: 'Edit', exact: true }).first().click();
  await page.getByRole('dialog').getByLabel('Log').fill('Ridge');
  await page.getByRole('dialog').getByRole('button', { name: 'Save' }).click();
  await expect(page.getByRole('dialog')).toBeHidden();

  // The other yard has the same board with another log and width: both versions are shown, and theirs is chosen.
  const other = JSON.parse(readFileSync(file, 'utf8'));
  Object.assign(other.boards[0], { log: 'Valley', widthMm: 333 });
  await page.goto(`${page.url().split('#')[0]}#/files`);
  await page.locator('input[type=file]').setInputFiles({
    name: 'other.json',
    mimeType: 'application/json',
    buffer: Buffer.from(JSON.stringify(other)),
  });
  const clashes = page.getByRole('dialog', { name: 'Merge other.json into your yard?' });
  const clash = clashes.getByRole('group', { name: `Board ${other.boards[0].code}: which version?` });
  await expect(clash.getByRole('radio', { name: /^This yard.*Width.*Log: Ridge/ })).toBeChecked({
    timeout: 30_000,
  });
  await clash.getByRole('radio', { name: /^The file.*Width: 333.mm.*Log: Valley/ }).check();
  await page.screenshot({ path: 'artifacts/screenshots/bring-in-clash.png' });
  await clashes.getByRole('button', { name: 'Merge', exact: true }).click();
  await expect(page.getByText('other.json merged into your yard.')).toBeVisible({ timeout: 30_000 });
  const logOf = async (log: string) => {
    await page.goto(`${page.url().split('#')[0]}#/boards/1`);
    await page.getByRole('tab', { name: 'About and moves' }).click();
    await expect(page.locator('dd').filter({ hasText: log })).toBeVisible();
  };
  await logOf('Valley');
  await page.goto(`${page.url().split('#')[0]}#/history`);
  const act = page.getByRole('row').filter({ hasText: 'Merged from other.json: 1 record changed.' });
  await act.getByRole('button', { name: 'Undo' }).click();
  await expect(act.getByText('Undone', { exact: true })).toBeVisible();
  await logOf('Ridge');
  await page.goto(`${page.url().split('#')[0]}#/history`);
  await act.getByRole('button', { name: 'Redo' }).click();
  await expect(act.getByText('Undone', { exact: true })).toHaveCount(0);
  await logOf('Valley');
  await page.goto(`${page.url().split('#')[0]}#/backups`);
  await expect(page.getByText(/^You merged another yard on/)).toBeVisible();
  await page.getByRole('button', { name: 'Undo the merge' }).click();
  await page.getByRole('dialog').getByRole('button', { name: 'Undo it' }).click();
  await expect(page.getByText('Your yard is as it was before the merge.')).toBeVisible({ timeout: 30_000 });
  await logOf('Ridge');

  await page.goto(`${page.url().split('#')[0]}#/files`);
  await page.locator('input[type=file]').setInputFiles({
    name: 'notes.json',
    mimeType: 'application/json',
    buffer: Buffer.from('{"name":"notes"}'),
  });
  await expect(page.getByText('This file is not a yard file or a Pintally export.')).toBeVisible();
});
