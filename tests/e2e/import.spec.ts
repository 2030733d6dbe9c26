/** A table is brought in, undone, redone, undone, and brought in again. Its values are invented. */
import { expect } from '@playwright/test';
import { test } from './pintally.ts';
import { findings, picture } from './walk.ts';

const TABLE = [
  'Board,Species,Thickness,Date,MC',
  'IMP-1,walnut,8/4,5/3/2025,14.2',
  'IMP-2,walnut,8/4,5/3/2025,15.1',
  'IMP-3,walnut,8/4,2/30/2025,15.1',
  'IMP-4,old barn wood,8/4,5/3/2025,15.1',
].join('\n');

test('a table is looked through, corrected, imported, undone, redone and imported again', {
  tag: '@core',
}, async ({ pintally: { page } }) => {
  const main = page.getByRole('main');
  const choose = () =>
    page.locator('input[type=file]').setInputFiles({
      name: 'barn.csv',
      mimeType: 'text/csv',
      buffer: Buffer.from(TABLE),
    });
  const choosePlace = () =>
    main
      .getByLabel('Place', { exact: true })
      .selectOption({ label: 'A new place outdoors, with average air of your region' });

  await page.getByRole('link', { name: 'Import a spreadsheet instead' }).click();
  await choose();
  await expect(main.getByRole('heading', { name: '2 rows are not imported' })).toBeVisible();
  await choosePlace();
  await expect(main.getByText('2 new boards, 2 new readings, 1 new stack, 1 new place.')).toBeVisible();
  await picture(page, 'import');
  await page.setViewportSize({ width: 400, height: 800 });
  await picture(page, 'import-narrow', { fullPage: true });
  expect(await findings(page)).toEqual([]);
  await page.setViewportSize({ width: 1280, height: 800 });

  // One cell is corrected in place, and one row is left out.
  await main.getByRole('textbox', { name: 'Date' }).fill('5/30/2025');
  await expect(main.getByRole('heading', { name: '1 row is not imported' })).toBeVisible();
  await main.getByRole('button', { name: 'Skip line 5' }).click();
  await expect(main.getByText('3 new boards, 3 new readings, 1 new stack, 1 new place.')).toBeVisible();
  expect(await findings(page)).toEqual([]);
  await main.getByRole('button', { name: 'Import 3 rows' }).click();
  await expect(page.getByText(/^Imported: 3 boards, 3 readings/)).toBeVisible();
  await expect(main.getByRole('heading', { name: 'barn' })).toBeVisible();

  const again = page.getByRole('link', { name: 'Import a spreadsheet instead' });
  await page.getByRole('button', { name: 'Undo' }).click();
  await expect(again).toBeVisible();
  // In a field, the keys are the field's own.
  await again.focus();
  await page.keyboard.press('Control+Shift+z');
  await expect(main.getByRole('heading', { name: 'barn' })).toBeVisible();
  await page.keyboard.press('Control+z');
  await expect(again).toBeVisible();
  await again.click();
  await choose();
  await choosePlace();
  await main.getByRole('textbox', { name: 'Date' }).fill('5/30/2025');
  await main.getByRole('button', { name: 'Skip line 5' }).click();
  await main.getByRole('button', { name: 'Import 3 rows' }).click();
  await expect(page.getByText(/^Restored what was undone: 3 boards, 3 readings/)).toBeVisible();
});
