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
  const dialog = page.getByRole('dialog', { name: 'Bring in yard.json?' });
  await expect(dialog).toContainText(`${boards} boards`, { timeout: 30_000 });
  await page.screenshot({ path: 'artifacts/screenshots/bring-in.png' });
  await dialog.getByRole('button', { name: 'Bring it in' }).click();
  await expect(page.getByText('Brought in. Your yard was backed up first.')).toBeVisible({ timeout: 30_000 });
  await page.getByRole('navigation').getByRole('link', { name: 'Stacks' }).click();
  await expect(page.getByRole('link', { name: /oak/i }).first()).toBeVisible();

  await page.goto(`${page.url().split('#')[0]}#/files`);
  await page.locator('input[type=file]').setInputFiles({
    name: 'notes.json',
    mimeType: 'application/json',
    buffer: Buffer.from('{"name":"notes"}'),
  });
  await expect(page.getByText('This file is not a yard file or a Pintally export.')).toBeVisible();
});
