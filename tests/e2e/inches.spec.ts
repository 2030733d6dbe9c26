/** Every screen of the demo yard for a person who uses inches: nothing metric remains. */
import { expect } from '@playwright/test';
import { test } from './pintally.ts';
import { screens, settledTextsOf } from './texts.ts';
import { openDemoYard, picture } from './walk.ts';

const METRIC = /(\d\s?|^)(mm|cm|m|km|m³|g|kg|°C)(?![\p{L}\d])/u;

/** "mm" stands for the month of a day that is still to be typed. */
const isMonth = (text: string, where: string): boolean => text === 'mm' && where.includes('segment');
/** A folder of a random name can end in "15g". */
const isFile = (where: string): boolean => where.endsWith('p.file');

test('in inch mode no screen has a metric unit', async ({ pintally: { page } }) => {
  await openDemoYard(page);
  const base = page.url().replace(/#.*/, '');
  await page.goto(`${base}#/settings`);
  await page.getByRole('radio', { name: /°F/ }).check();
  for (const path of screens) {
    await page.goto(`${base}#/${path}`);
    const metric = (await settledTextsOf(page)).filter(
      ({ text, where }) => METRIC.test(text) && !isMonth(text, where) && !isFile(where),
    );
    expect.soft(metric, path).toEqual([]);
    await picture(page, `inches-${path.replaceAll(/\W/g, '-')}`);
  }
});
