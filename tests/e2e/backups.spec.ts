/** A backup is restored, and that is undone, by keys alone; the screen fits a narrow window. */
import { readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, type Locator } from '@playwright/test';
import { settled } from './everywhere.ts';
import { hands } from './hands.ts';
import { startPintally, test } from './pintally.ts';

for (const width of [1280, 320]) {
  test(`a backup is restored and that is undone, ${width} px wide`, async ({ pintally: { page } }) => {
    await page.setViewportSize({ width, height: 860 });
    const { key, press, fill, reading, addFirstStack } = hands(page);
    await addFirstStack(2);
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
    await expect(page.getByRole('button', { name: /^Exclude (shell|average) reading/ })).toHaveCount(1);
    await page.goto(`${base}#/backups`);
    await settled(page);
    await press('button', /^Look inside the backup of/);
    await expect(page.getByRole('dialog', { name: /^Inside the backup of/ })).toContainText('Boards');
    await page.screenshot({ path: `artifacts/screenshots/look-inside-${width}.png` });
    await press('button', 'Close');
    await press('button', /^Restore the backup of/);
    await expect(page.getByRole('dialog')).toContainText('Missing from this backup: 1 reading and 1 round.');
    await page.screenshot({ path: `artifacts/screenshots/restore-${width}.png` });
    await press('button', 'Restore this backup');
    await expect(page.getByText(/Missing since then: 1 reading and 1 round/)).toBeVisible();
    await settled(page);
    await page.screenshot({ path: `artifacts/screenshots/backups-${width}.png`, fullPage: true });
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(width);
    await press('button', 'Undo the restore');
    const question = page.getByRole('dialog', { name: 'Undo the restore?' });
    await expect(question).toContainText('It has everything in your current yard.');
    await page.screenshot({ path: `artifacts/screenshots/undo-restore-${width}.png` });
    await press('button', 'Undo it');
    await expect(page.getByText(/Missing since then: 1 reading and 1 round/)).toHaveCount(0);
    await page.goto(`${base}#/stacks/1`);
    await expect(
      page
        .getByRole('link', { name: 'Resume' })
        .or(page.getByRole('button', { name: 'Resume' }))
        .first(),
    ).toBeVisible();
  });
}

test('a copy is downloaded, and restored from that file after a look inside', async ({
  pintally: { page },
}) => {
  const { press, addFirstStack } = hands(page);
  await addFirstStack(2);
  await page.goto(`${page.url().replace(/#.*/, '')}#/backups`);
  await settled(page);
  const coming = page.waitForEvent('download');
  await press('button', 'Download a copy');
  const copy = await coming;
  expect(copy.suggestedFilename()).toMatch(/^pintally-\d{4}-\d\d-\d\d\.sqlite$/);
  await expect(page.getByText('Copy checked. Your browser saves it.')).toBeVisible();

  const asked = page.waitForEvent('filechooser');
  await press('button', 'Restore from a file …');
  await (await asked).setFiles(await copy.path());
  const question = page.getByRole('dialog', { name: /^Restore the file .+\?$/ });
  await expect(question).toContainText('It has everything in your current yard.');
  await press('button', 'Restore this file');
  await expect(page.getByText('Yard restored.')).toBeVisible();
  await page.goto(`${page.url().replace(/#.*/, '')}#/stacks/1`);
  await expect(page.getByRole('heading', { level: 1 })).toContainText('Oak by the gate');
});

test('a file that is no yard is refused in its dialog, and a bad folder at its field', async ({
  pintally: { page },
}) => {
  const { press, fill } = hands(page);
  await page.goto(`${page.url().replace(/#.*/, '')}#/backups`);
  await settled(page);
  const asked = page.waitForEvent('filechooser');
  await press('button', 'Restore from a file …');
  await (await asked).setFiles({ name: 'a.sqlite', mimeType: 'text/plain', buffer: Buffer.from('a letter') });
  await expect(page.getByRole('dialog')).toContainText('That file is not a yard.');
  await expect(page.getByRole('dialog').getByRole('button', { name: 'Try again' })).toHaveCount(0);
  await press('button', 'Cancel');
  await fill('textbox', 'New backup folder', 'backups');
  await press('button', 'Use this folder');
  await expect(page.getByRole('textbox', { name: 'New backup folder' })).toHaveAccessibleDescription(
    /Give the full path/,
  );
  await page.screenshot({ path: 'artifacts/screenshots/backup-folder-refused.png', fullPage: true });
});

test('the page scrolls through the backups of a narrow window, and a banner leaves a round its buttons', async ({
  pintally: { page, dataDir },
}) => {
  const { press, fill, key, addFirstStack } = hands(page);
  await addFirstStack(9, 'Add the stack only');
  const base = page.url().replace(/#.*/, '');
  await page.goto(`${base}#/backups`);
  await settled(page);
  const restore = page.getByRole('button', { name: /^Restore the backup of/ });
  for (const backups of [1, 2, 3]) {
    await press('button', 'Back up now');
    await expect(restore).toHaveCount(backups);
  }
  await page.setViewportSize({ width: 800, height: 600 });
  const look = page.getByRole('button', { name: /^Look inside the backup of/ });
  const middleOf = async (button: Locator) => {
    const box = await button.boundingBox();
    return box!.y + box!.height / 2;
  };
  expect(await middleOf(look.first())).toBeCloseTo(await middleOf(restore.first()), 0);
  await page.setViewportSize({ width: 320, height: 640 });
  const table = page.getByRole('table', { name: 'Saved backups' });
  const frame = table.locator('xpath=..');
  await expect.poll(() => frame.evaluate((box) => box.scrollHeight - box.clientHeight)).toBe(0);

  // A folder that is a file is no folder any more.
  const folder = `${dataDir}-elsewhere`;
  await fill('textbox', 'New backup folder', folder);
  await press('button', 'Use this folder');
  await expect(page.getByText(folder).first()).toBeVisible();
  rmSync(folder, { recursive: true });
  writeFileSync(folder, 'a letter');
  await press('button', 'Back up now');
  const banner = page.getByText(/^The backup folder .* could not be used\./);
  await expect(banner).toBeVisible();
  await page.goto(`${base}#/round?stack=1`);
  await settled(page);
  await fill('textbox', 'Wood temperature', '12');
  await key('Enter');
  await expect(page.getByRole('heading', { level: 1 })).toContainText('OAK-01');
  for (const [width, height] of [
    [320, 640],
    [800, 600],
  ] as const) {
    await page.setViewportSize({ width, height });
    for (const name of ['Save', /^Undo last/, /^Next board/]) {
      await expect(page.getByRole('button', { name, exact: true })).toBeInViewport({ ratio: 1 });
    }
    expect((await banner.boundingBox())!.height).toBeLessThan(48);
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(width);
    await page.screenshot({ path: `artifacts/screenshots/round-banner-${width}.png` });
  }
  expect(await page.evaluate(() => document.documentElement.scrollHeight)).toBeLessThanOrEqual(600);
  await page.getByRole('button', { name: 'Show all' }).click();
  await page.getByRole('button', { name: 'Dismiss' }).click();
  await expect(banner).toHaveCount(0);
});

for (const colorScheme of ['light', 'dark'] as const) {
  test(`a damaged yard is back after a look inside its newest backup, ${colorScheme}`, async ({ page }) => {
    await page.emulateMedia({ colorScheme });
    await page.setViewportSize({ width: 800, height: 600 });
    const { press, addFirstStack } = hands(page);
    const first = await startPintally(page);
    await addFirstStack(2);
    await page.goto(`${page.url().replace(/#.*/, '')}#/backups`);
    await settled(page);
    await press('button', 'Back up now');
    await expect(page.getByText(/^Backup checked and saved in /)).toBeVisible();
    await page.screenshot({ path: `artifacts/screenshots/backups-${colorScheme}.png`, fullPage: true });
    await page.goto('about:blank');
    await first.stop();

    const file = join(first.dataDir, 'yard.sqlite');
    writeFileSync(file, readFileSync(file).fill(0xff, 4096, 40_960));
    const again = await startPintally(page, { dataDir: first.dataDir });
    await expect(page.getByRole('alert')).toContainText('Pintally cannot read all of the yard file');
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
    await press('button', 'Restore this backup');
    await expect(page.getByText('Yard restored.')).toBeVisible();
    await settled(page);
    await page.screenshot({ path: `artifacts/screenshots/damaged-restored-${colorScheme}.png` });
    await page.goto(`${page.url().replace(/#.*/, '')}#/stacks/1`);
    await expect(page.getByRole('heading', { level: 1 })).toContainText('Oak by the gate');
    await page.goto('about:blank');
    await again.stop();
  });
}

test.describe('in German', () => {
  test.use({ locale: 'de-DE' });

  test('the buttons of a backup can be read whole, however narrow the window', async ({
    pintally: { page },
  }) => {
    await page.goto(`${page.url().replace(/#.*/, '')}#/backups`);
    await page.getByRole('button', { name: 'Jetzt sichern' }).click();
    const restore = page.getByRole('button', { name: /^Die Sicherung vom .* wiederherstellen$/ });
    await restore.click();
    await page.getByRole('dialog').getByRole('button', { name: 'Diese Sicherung wiederherstellen' }).click();
    await expect(page.getByRole('button', { name: 'Wiederherstellen rückgängig machen' })).toBeVisible();
    await expect(restore).toHaveCount(2);
    // The longest word of a reason.
    await expect(page.getByText('Vor einem Wiederherstellen').first()).toBeVisible();
    for (const width of [1280, 900, 800, 720, 680, 640]) {
      await page.setViewportSize({ width, height: 860 });
      await settled(page);
      for (const button of await restore.all()) {
        const { beside, beyond } = await button.evaluate((element) => {
          const { left, right } = element.getBoundingClientRect();
          const words = element.querySelector('span')!.getBoundingClientRect();
          const frame = element.closest('table')!.parentElement!.getBoundingClientRect();
          return { beside: Math.min(words.left - left, right - words.right), beyond: right - frame.right };
        });
        expect(beside, `${width} px wide`).toBeGreaterThan(10);
        expect(beyond, `${width} px wide`).toBeLessThanOrEqual(0);
      }
    }
  });
});
