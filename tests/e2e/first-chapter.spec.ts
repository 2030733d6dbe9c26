/** The guide's first chapter, done as it is written: what it names in bold, in its order, from an empty yard. */
import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { expect, type Page } from '@playwright/test';
import { test } from './pintally.ts';
import { nextStep, typeReading } from './walk.ts';

const chapter = readFileSync(
  resolve(import.meta.dirname, '../../renderer/help/guide/en/first-stack.md'),
  'utf8',
);

/** What the chapter names, and what its reader does there. */
type Step = [name: string, take: (page: Page) => Promise<unknown>];

const press = (name: string): Step => [
  name,
  (page) => page.getByRole('button', { name, exact: true }).click(),
];
const type = (name: string, text: string): Step => [
  name,
  async (page) => {
    await page.getByLabel(name).and(page.locator('input:visible')).first().fill(text);
    await page.keyboard.press('Tab');
  },
];
const choose = (name: string, label: string): Step => [
  name,
  (page) => page.getByLabel(name, { exact: true }).selectOption({ label }),
];
const see = (name: string): Step => [
  name,
  (page) =>
    expect(page.getByRole('link', { name }).or(page.getByRole('button', { name })).first()).toBeVisible(),
];

const steps: readonly Step[] = [
  see('Open the demo yard'),
  type('What do you call this stack?', 'Walnut behind the barn'),
  choose('Use', 'Framing, surfaced dry (19% or less)'),
  type('Species', 'black walnut'),
  type('Thickness', '8/4'),
  type('How many boards?', '2'),
  type('Nearest weather station', 'asheville nc'),
  [
    'Sawn on',
    async (page) => {
      await page
        .getByRole('spinbutton', { name: /Sawn on/ })
        .first()
        .focus();
      await page.keyboard.type('03012026');
      await page
        .getByRole('group', { name: /since it was sawn/ })
        .getByRole('radio', { name: 'Yes' })
        .check();
    },
  ],
  press('Start probing'),
  see('Settings'),
  see('Places'),
  type('Wood temperature', '50'),
  [
    'I don’t know',
    async (page) => {
      await page.getByRole('checkbox', { name: 'I don’t know' }).check();
      await expect(page.getByText('Calls are less certain.')).toBeVisible();
    },
  ],
  [
    'Start the round',
    async (page) => {
      await page.getByRole('button', { name: 'Start the round' }).click();
      await expect(page.getByRole('heading', { level: 1 })).toContainText('Board');
      await typeReading(page, '22.4');
    },
  ],
  press('Answer'),
  [
    'Save',
    async (page) => {
      const form = page.getByRole('dialog');
      await form.getByLabel('How long are the pins?').selectOption('5/16 in');
      await form.getByRole('button', { name: 'Save' }).click();
      await expect(form).toHaveCount(0);
    },
  ],
  [
    'I don’t know',
    // It was the other answer.
    (page) => expect(page.getByRole('button', { name: 'I don’t know' })).toHaveCount(0),
  ],
  see('Meter'),
  [
    'Finish the round',
    async (page) => {
      for (const values of [['22.6'], ['22.2', '22.5']]) {
        for (const value of values) await typeReading(page, value);
        await expect(nextStep(page)).toContainText(/Press Enter (for the next board|when you are done)\./);
        await page.keyboard.press('Enter');
      }
      await page.getByRole('button', { name: 'Finish the round' }).click();
    },
  ],
];

test.use({ locale: 'en-US', timezoneId: 'America/New_York' });

test('the first chapter leads from an empty yard to the day when a board is ready', { tag: '@core' }, async ({
  pintally: { page },
}) => {
  page.setDefaultTimeout(20_000);
  const named = [...chapter.matchAll(/\*\*([^*]+)\*\*/g)].map(([, name]) => name?.replaceAll(/\s+/g, ' '));
  expect(named).toEqual(steps.map(([name]) => name));
  for (const [name, take] of steps) await test.step(name, () => take(page));
  await page.getByRole('link', { name: 'WALNUT-01' }).click();
  await expect(page.getByText('Ready here')).toBeVisible();
});
