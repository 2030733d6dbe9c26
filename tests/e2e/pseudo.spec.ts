/**
 * Every screen of the demo yard in the language that nobody speaks, with each kind of button pressed once. What can be
 * read outside its brackets was not made by the catalog. Exempt are quantities and days, which `Intl` writes, and what
 * is a person's own, a meter's, or a citation: that is marked `translate="no"`, as the web's standard has it.
 */
import { expect, type Page } from '@playwright/test';
import { english } from '../../shared-core/words/en/index.ts';
import { pseudoOf } from '../../shared-core/words/pseudo.ts';
import { test } from './pintally.ts';
import { type Read, screens, settledTextsOf, textsOf } from './texts.ts';
import { openDemoYard, picture } from './walk.ts';

const monthNames = (['long', 'short'] as const).flatMap((month) =>
  Array.from({ length: 12 }, (_, index) =>
    new Intl.DateTimeFormat('en-US', { month, timeZone: 'UTC' }).format(new Date(Date.UTC(2026, index, 15))),
  ),
);
/** What `Intl` writes in a quantity, a day or how long ago that was. */
const madeByIntl = new RegExp(
  [
    // A field has its unit beside it.
    String.raw`(\d[\d.,/]*\s?|^)(mm|cm|ft|in|kg|lb|oz|[kMG]Ω)(?!\p{L})`,
    String.raw`\b(${monthNames.join('|')})\b`,
    String.raw`\d (AM|PM)\b`,
    String.raw`\b(today|yesterday|\d+ (day|month|year)s? ago)\b`,
    // What react-aria says of a day and of a list over the page, in its own 30 languages.
    '^(Dismiss|Empty|Next|Previous|mm|dd|yyyy|––|a.m.|AM|PM|(month|day|year|hour|minute|AM/PM|day period), .*|Selected Date: .*|.*available date)$',
    String.raw`\b(Mon|Tues|Wednes|Thurs|Fri|Satur|Sun)day, `,
  ].join('|'),
  'gu',
);

/** Pressed last: what it leaves is not there any more for the other buttons. */
const leavesTheYard = (words: string): boolean => words === pseudoOf(english)['settings.open-own'];

/** Whether a text has a word that neither the catalog nor `Intl` made. */
function isStray({ text, isOwn }: Read): boolean {
  if (isOwn) return false;
  let rest = text;
  for (let before = ''; rest !== before; ) [before, rest] = [rest, rest.replace(/\[[^[\]]*\]/gu, '')];
  return /\p{L}{2}/u.test(rest.replaceAll(madeByIntl, ''));
}

async function expectNoStrays(page: Page, doing: string): Promise<void> {
  const strays = (await settledTextsOf(page)).filter(isStray);
  expect.soft([...new Set(strays.map(({ text, where }) => `${where}: ${text}`))], doing).toEqual([]);
}

/** From the demo yard in English to a screen of it in the language that nobody speaks. */
async function openInPseudo(page: Page, path: string): Promise<void> {
  const base = page.url().replace(/[?#].*/, '');
  // Another hash alone would not load the page again.
  await page.goto(`${base}?words=pseudo&to=${encodeURIComponent(path)}#/${path}`);
  await expect(page.getByRole('navigation').first()).toContainText('[');
  await settledTextsOf(page);
  await unfold(page);
}

/** A screen that was left is shown as new, in less than half of the time that loading the page again takes. */
async function showAnew(page: Page, address: string): Promise<void> {
  const elsewhere = address.endsWith('#/nowhere') ? '#/stacks' : '#/nowhere';
  for (const next of [address.replace(/#.*/, elsewhere), address]) {
    await page.goto(next);
    await settledTextsOf(page);
  }
  await unfold(page);
}

/** So that what is folded can be pressed too. */
const unfold = (page: Page) =>
  page.evaluate(() => {
    for (const folded of document.querySelectorAll('details')) folded.open = true;
  });

/** Reads a screen, and what each kind of its buttons shows. */
async function readScreen(page: Page, path: string): Promise<void> {
  await openInPseudo(page, path);
  await expectNoStrays(page, path);
  await picture(page, `pseudo-${path.replaceAll(/\W/g, '-')}`);
  const address = page.url();
  const buttons = page.locator('main button:enabled:not([aria-disabled=true])');
  const kinds = [...new Set(await buttons.allTextContents())];
  for (const words of kinds.sort((a, b) => Number(leavesTheYard(a)) - Number(leavesTheYard(b)))) {
    const button = buttons.filter({ hasText: words }).first();
    if (!(await button.isVisible())) await showAnew(page, address);
    // What the window remembers is gone only with the page.
    if (!(await button.isVisible())) {
      await page.goto('about:blank');
      await page.goto(address);
      await settledTextsOf(page);
      await unfold(page);
    }
    // What was pressed before may have changed its words, as of labels that are printed since.
    if ((await button.count()) === 0) continue;
    await button.click();
    await expectNoStrays(page, `${path}, after ${words}`);
    await page.keyboard.press('Escape');
  }
}

/** Their buttons save nothing: they share a host and a window, which take longer to start than one of them to read. */
const together = [
  ['stacks', 'round?stack=1', 'check', 'places', 'dates'],
  ['past-round/1', 'air', 'species', 'species/oak-northern-red', 'nowhere'],
];
const alone = screens.filter((path) => !together.flat().includes(path)).map((path) => [path]);

for (const paths of [...alone, ...together]) {
  test(`every word comes from the catalog: ${paths.join(', ')}`, async ({ pintally: { page } }) => {
    await openDemoYard(page);
    for (const path of paths) await readScreen(page, path);
  });
}

test('every word comes from the catalog: a round, typed and live', async ({ pintally: { page } }) => {
  await openDemoYard(page);
  await openInPseudo(page, 'round?stack=1');
  await page.locator('input[inputmode=decimal]').fill('9');
  await page.keyboard.press('Enter');
  await expect(page).toHaveURL(/#\/round\/\d+$/);
  const field = page.locator('section input[inputmode=decimal]');
  const round = page.url().replace(/.*#\//, '');
  await expectNoStrays(page, 'a round');
  // The last is a slip of typing, and one more has no number.
  for (const typed of ['11.9', '12.6', '12.1', '128', 'x']) {
    await field.fill(typed);
    await page.keyboard.press('Enter');
    await expectNoStrays(page, `typed ${typed}`);
  }
  await field.fill('');
  for (const key of ['g', 't', '?']) {
    await page.keyboard.press(key);
    await expect(page.getByRole('dialog')).toBeVisible();
    await expectNoStrays(page, `the dialog of ${key}`);
    await page.keyboard.press('Escape');
  }
  await page.locator('section li span > button').last().click();
  await expect(page.getByRole('menu')).toBeVisible();
  await expectNoStrays(page, 'more for a reading');
  await page.keyboard.press('Escape');
  const exclude = pseudoOf(english)['common.exclude'];
  await page.locator('section li span > button').filter({ hasText: exclude }).last().click();
  await page.getByRole('dialog').getByRole('button').first().click();
  await expectNoStrays(page, 'a reading excluded');

  await openInPseudo(page, 'meter');
  await page.getByRole('button', { name: pseudoOf(english)['meter.connect.simulate'] }).click();
  await openInPseudo(page, round);
  await expect(page.locator('section [data-size="huge"]')).toBeVisible();
  // Its trace and number change all the time; their words do not.
  expect.soft((await textsOf(page)).filter(isStray)).toEqual([]);
  await page.keyboard.press('End');
  await page.keyboard.press('PageDown');
  await page.getByRole('dialog').getByRole('button').first().click();
  await expect(page.getByRole('table')).toBeVisible();
  await expectNoStrays(page, 'a finished round');
});
