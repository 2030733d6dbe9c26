/** Every screen of the demo yard in German, and how the language is chosen. */
import { readFileSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { expect, type Page } from '@playwright/test';
import { german } from '../../shared-core/words/de/index.ts';
import { hasEnglish } from '../unit/words/english-left.ts';
import { cutTexts, hidden } from './in-sight.ts';
import { type RunningPintally, test } from './pintally.ts';
import { screens, settledTextsOf } from './texts.ts';
import { picture } from './walk.ts';

test.use({ locale: 'de-AT', viewport: { width: 1280, height: 800 } });

/** Made here, because the one ready for tests is in English. */
async function openDemoYard({ page, dataDir }: RunningPintally): Promise<void> {
  rmSync(join(dataDir, 'demo-yard.sqlite'));
  await page.getByRole('button', { name: german['stacks.open-demo'] }).click();
  await expect(page.getByText(german['demo.invented'])).toBeVisible();
}

/** What a walk through texts must not find: English, or what nobody can read whole. */
async function expectWholeGerman(page: Page, where: string): Promise<void> {
  const texts = await settledTextsOf(page);
  const english = texts.flatMap(({ text, isOwn }) => (isOwn ? [] : hasEnglish(text) ? [text] : []));
  expect.soft([...new Set(english)], where).toEqual([]);
  expect.soft([...(await hidden(page)), ...(await cutTexts(page))], where).toEqual([]);
}

for (const width of [1280, 640]) {
  test(`every screen is in German and can be read whole, ${width} px wide`, async ({ pintally }) => {
    const { page } = pintally;
    test.setTimeout(180_000);
    await page.setViewportSize({ width, height: 800 });
    await openDemoYard(pintally);
    await expect(page.locator('html')).toHaveAttribute('lang', 'de');
    const base = page.url().replace(/#.*/, '');
    for (const path of [
      ...screens,
      'files',
      'import-table',
      'history',
      'methods',
      'help',
      'help/first-stack',
      'help/calls',
    ]) {
      await page.goto(`${base}#/${path}`);
      await expectWholeGerman(page, path);
      await picture(page, `german-${width}-${path.replaceAll(/\W/g, '-')}`, { fullPage: true });
    }
  });
}

test('the language is chosen in the settings, and stays', async ({ pintally: { page } }) => {
  const base = page.url().replace(/#.*/, '');
  const heading = page.getByRole('heading', { level: 1 });
  await page.goto(`${base}#/settings`);
  await expect(heading).toHaveText('Einstellungen');
  await page.getByRole('radio', { name: 'English' }).check();
  await expect(heading).toHaveText('Settings');
  await expect(page.locator('html')).toHaveAttribute('lang', 'en');
  await page.reload();
  await expect(heading).toHaveText('Settings');
  await page.getByRole('radio', { name: 'As on this computer' }).check();
  await expect(heading).toHaveText('Einstellungen');
});

test('a table for other programs is in German', async ({ pintally }) => {
  const { page } = pintally;
  await openDemoYard(pintally);
  const base = page.url().replace(/#.*/, '');
  await page.goto(`${base}#/files`);
  await page.getByRole('radio', { name: german['export.what.boards'], exact: true }).check();
  const [table] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: german['export.button.csv'] }).click(),
  ]);
  expect(readFileSync(await table.path(), 'utf8')).toMatch(/^\uFEFF"?Brett"?,.*Holzart.*Dicke \(mm\)/);
});
