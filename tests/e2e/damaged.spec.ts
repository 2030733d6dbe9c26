import { copyFileSync, mkdtempSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, test } from '@playwright/test';
import { startPintally } from './pintally.ts';

/** A made-up yard of an earlier layout (`make-layouts.ts`), with a page that the disk returns as noise. */
function damagedYard(): string {
  const dataDir = mkdtempSync(join(tmpdir(), 'pintally-e2e-'));
  const file = join(dataDir, 'yard.sqlite');
  copyFileSync(join(import.meta.dirname, '../unit/store/layouts/layout-15.sqlite'), file);
  const bytes = readFileSync(file);
  const pageSize = bytes.readUInt16BE(16);
  bytes.fill(0xa5, pageSize * 5, pageSize * 6);
  writeFileSync(file, bytes);
  return dataDir;
}

test('a damaged yard: what can be read is recovered, and a report says what was not', async ({ page }) => {
  const dataDir = damagedYard();
  const { stop } = await startPintally(page, { dataDir });
  await expect(page.getByRole('heading', { name: 'Your yard file is damaged' })).toBeVisible();
  await page.getByRole('button', { name: 'Recover what can be read' }).click();
  await expect(
    page.getByText(/^Recovered from the damaged file: \d+ boards? and \d+ readings?\./),
  ).toBeVisible();
  await page.getByRole('button', { name: 'Show what was recovered' }).click();
  const report = page.getByRole('dialog', { name: 'Recovered from the damaged file' });
  await expect(report.getByText(/^Readings: \d+ recovered/)).toBeVisible();
  await report.getByRole('button', { name: 'Close' }).click();
  await expect(page.getByRole('navigation', { name: 'Main' })).toBeVisible();
  expect(readdirSync(dataDir).filter((name) => /^yard\.sqlite\.damaged-[\d-]+$/.test(name))).toHaveLength(1);
  await page.goto('about:blank');
  await stop();
});
