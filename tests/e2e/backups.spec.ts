/** A backup is restored, and that is undone, by keys alone; the screen fits a narrow window. */
import { mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect } from '@playwright/test';
import { settled } from './everywhere.ts';
import { hands } from './hands.ts';
import { startPintally, test } from './pintally.ts';

for (const width of [1280, 320]) {
  test(`a backup is restored and that is undone, ${width} px wide`, async ({ pintally: { page } }) => {
    await page.setViewportSize({ width, height: 860 });
    const { key, press, fill, reading } = hands(page);
    await fill('textbox', 'What do you call this stack?', 'Oak by the gate');
    await fill('combobox', 'Species', 'white oak');
    await key('Enter');
    await fill('textbox', 'Thickness', '27');
    await fill('textbox', 'How many boards?', '2');
    await press('button', 'Start probing');
    const base = page.url().replace(/#.*/, '');
    await page.goto(`${base}#/backups`);
    await settled(page);
    await press('button', 'Back up now');
    const restore = page.getByRole('button', { name: /^Restore the backup of/ });
    await expect(restore).toHaveCount(1);
    await page.goto(`${base}#/round?stack=1`);
    await settled(page);
    await fill('textbox', 'Wood temperature', '12');
    await key('Enter');
    await expect(page.getByRole('heading', { level: 1 })).toContainText('OAK-01');
    await reading('12.4');
    await expect(page.getByRole('button', { name: /^Exclude shell reading/ })).toHaveCount(1);
    await page.goto(`${base}#/backups`);
    await settled(page);
    await press('button', /^Restore the backup of/);
    await expect(page.getByRole('dialog')).toContainText('1 reading of your current yard is not in it.');
    await page.screenshot({ path: `artifacts/screenshots/restore-${width}.png` });
    await press('button', 'Restore this yard');
    await expect(page.getByText(/1 reading from before is not in it/)).toBeVisible();
    await settled(page);
    await page.screenshot({ path: `artifacts/screenshots/backups-${width}.png`, fullPage: true });
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(width);
    await press('button', 'Undo the restore');
    const question = page.getByRole('dialog', { name: 'Undo the restore?' });
    await expect(question).toContainText('It has all your readings. Your current yard is backed up first.');
    await page.screenshot({ path: `artifacts/screenshots/undo-restore-${width}.png` });
    await press('button', 'Undo it');
    await expect(page.getByText(/1 reading from before is not in it/)).toHaveCount(0);
    await page.goto(`${base}#/stacks/1`);
    await expect(
      page
        .getByRole('link', { name: 'Resume' })
        .or(page.getByRole('button', { name: 'Resume' }))
        .first(),
    ).toBeVisible();
  });
}

test('a copy is saved where the person says, and over another only when told to', async ({
  pintally: { page },
}) => {
  const file = join(mkdtempSync(join(tmpdir(), 'pintally-copy-')), 'copy.sqlite');
  const { press, fill } = hands(page);
  await page.goto(`${page.url().replace(/#.*/, '')}#/backups`);
  await settled(page);
  await expect(page.getByRole('button', { name: 'Save a copy' })).toBeVisible();
  await press('button', 'Save a copy');
  await fill('textbox', 'File', file);
  await press('button', 'Save the copy');
  await expect(page.getByText('Copy saved and checked.')).toBeVisible();
  await press('button', 'Save a copy');
  await fill('textbox', 'File', file);
  await press('button', 'Save the copy');
  await expect(page.getByRole('dialog')).toContainText('There is already a file of that name.');
  await press('button', 'Replace that file');
  await expect(page.getByRole('dialog')).toHaveCount(0);
});

for (const colorScheme of ['light', 'dark'] as const) {
  test(`a damaged yard is back after a look inside its newest backup, ${colorScheme}`, async ({ page }) => {
    await page.emulateMedia({ colorScheme });
    await page.setViewportSize({ width: 800, height: 600 });
    const { press, fill, key } = hands(page);
    const first = await startPintally(page);
    await fill('textbox', 'What do you call this stack?', 'Oak by the gate');
    await fill('combobox', 'Species', 'white oak');
    await key('Enter');
    await fill('textbox', 'Thickness', '27');
    await fill('textbox', 'How many boards?', '2');
    await press('button', 'Start probing');
    await page.goto(`${page.url().replace(/#.*/, '')}#/backups`);
    await settled(page);
    await press('button', 'Back up now');
    await expect(page.getByText('Backup saved and checked.')).toBeVisible();
    await page.screenshot({ path: `artifacts/screenshots/backups-${colorScheme}.png`, fullPage: true });
    await page.goto('about:blank');
    await first.stop();

    const file = join(first.dataDir, 'yard.sqlite');
    writeFileSync(file, readFileSync(file).fill(0xff, 4096, 40_960));
    const again = await startPintally(page, { dataDir: first.dataDir });
    await expect(page.getByRole('alert')).toContainText('is damaged');
    const newest = page.getByRole('button', { name: /^Restore the newest backup/ });
    await expect(newest).toBeInViewport();
    for (const [width, height] of [
      [800, 600],
      [320, 700],
    ] as const) {
      await page.setViewportSize({ width, height });
      await page.screenshot({
        path: `artifacts/screenshots/damaged-${colorScheme}-${width}.png`,
        fullPage: true,
      });
      expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(width);
    }
    await page.setViewportSize({ width: 800, height: 600 });
    await press('button', /^Restore the newest backup/);
    await expect(page.getByRole('dialog')).toContainText('The damaged file stays in the same folder');
    await page.screenshot({ path: `artifacts/screenshots/damaged-restore-${colorScheme}.png` });
    await press('button', 'Restore this yard');
    await expect(page.getByText('Yard restored.')).toBeVisible();
    await settled(page);
    await page.screenshot({ path: `artifacts/screenshots/damaged-restored-${colorScheme}.png` });
    await page.goto(`${page.url().replace(/#.*/, '')}#/stacks/1`);
    await expect(page.getByRole('heading', { level: 1 })).toContainText('Oak by the gate');
    await page.goto('about:blank');
    await again.stop();
  });
}
