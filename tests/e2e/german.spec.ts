/** Every screen of the demo yard in German, and how the language is chosen. */
import { readFileSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { expect, type Page } from '@playwright/test';
import { german } from '../../shared-core/words/de/index.ts';
import { hasEnglish } from '../unit/words/english-left.ts';
import { withoutTitles } from '../unit/words/published-titles.ts';
import { cutTexts, hidden } from './in-sight.ts';
import { type RunningPintally, test } from './pintally.ts';
import { screens, settledTextsOf } from './texts.ts';
import { picture, typeReading } from './walk.ts';

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
  const english = texts.flatMap(({ text, isOwn }) =>
    isOwn || !hasEnglish(withoutTitles(text)) ? [] : [text],
  );
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

test('the language is chosen in the settings, and stays', { tag: '@core' }, async ({
  pintally: { page },
}) => {
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

for (const size of [
  { width: 800, height: 600 },
  { width: 1024, height: 768 },
  { width: 1280, height: 860 },
]) {
  test(`nothing of a round is cut off in German at ${size.width} x ${size.height}`, async ({ pintally }) => {
    const { page } = pintally;
    await page.setViewportSize(size);
    await openDemoYard(pintally);
    const base = page.url().replace(/#.*/, '');
    await page.goto(`${base}#/round?stack=1`);
    await page.getByRole('textbox', { name: german['wood-temp.label'] }).fill('9');
    await page.keyboard.press('Enter');
    const expectWhole = async (where: string): Promise<void> => {
      const fit = await page.evaluate(() => {
        const beyond = (selector: string) =>
          [...document.querySelectorAll(selector)].map((each) => each.scrollWidth - each.clientWidth);
        return {
          below: document.documentElement.scrollHeight - innerHeight,
          beside: beyond('section, section li, header a, [data-reading]').filter((px) => px > 1),
        };
      });
      expect.soft(fit, where).toEqual({ below: 0, beside: [] });
      expect.soft([...(await hidden(page)), ...(await cutTexts(page))], where).toEqual([]);
    };
    await typeReading(page, '11,9');
    await expect(page.locator('[data-reading]')).toHaveCount(1);
    await expectWhole('one read');
    await typeReading(page, '145');
    await expect(page.locator('[data-reading]')).toHaveCount(2);
    await expectWhole('a slip');
    await picture(page, `german-round-slip-${size.width}`);
    await page.keyboard.press('u');
    await expect(page.getByRole('button', { name: /^14,5/ })).toHaveCount(0);

    await page.goto(`${base}#/meter`);
    await page.getByRole('button', { name: german['meter.connect.simulate'] }).click();
    await page.goBack();
    await expect(page.getByText(german['pins.drifting'])).toBeVisible();
    await expectWhole('live');
    const trace = await page.locator('.trace').boundingBox();
    if (size.width === 1280) expect(trace?.width).toBeGreaterThan(100);
    await picture(page, `german-round-live-${size.width}`);
    if (size.width === 800) return;
    // The far view.
    await page.keyboard.press('f');
    for (const words of [german['pins.drifting'], 'gespeichert:']) {
      await expect(page.locator('[data-far]').getByText(words)).toBeVisible();
      await expectWhole(`far, ${words}`);
      const [sheet, number] = await Promise.all(
        ['[data-far] .sheet', '[data-size=huge]'].map((each) => page.locator(each).boundingBox()),
      );
      expect.soft(number!.x + number!.width, words).toBeLessThan(sheet!.x + sheet!.width);
      expect.soft(number!.y + number!.height, words).toBeLessThanOrEqual(sheet!.y + sheet!.height);
      await picture(page, `german-round-far-${size.width}-${words.slice(0, 4)}`);
    }
  });
}
