/** From an empty yard to the first saved reading, as someone who has never seen Pintally would go. */
import { expect, type Page } from '@playwright/test';
import { test } from './pintally.ts';
import { picture, typeReading } from './walk.ts';

/** A field, and not the list of choices that bears the same name. */
const fieldOf = (page: Page, label: string) =>
  page.getByLabel(label, { exact: true }).and(page.locator('input'));

/** Fills in forms and counts what it took. */
function newcomer(page: Page) {
  const answered: string[] = [];
  return {
    /** The controls that were answered, in order. */
    answered,
    async type(label: string, text: string, key?: string): Promise<void> {
      answered.push(label);
      await fieldOf(page, label).fill(text);
      if (key) await page.keyboard.press(key);
    },
    async press(name: string): Promise<void> {
      answered.push(name);
      await page.getByRole('button', { name, exact: true }).click();
    },
  };
}

/** Types the first reading of the round on screen, and waits until it is saved. */
async function firstReading(page: Page): Promise<void> {
  await expect(page.getByRole('heading', { level: 1 })).toContainText('Board');
  await typeReading(page, '12.4');
  await expect(
    page.getByRole('button', { name: /^Exclude (shell|average|core) reading 12[.,]4/ }),
  ).toBeVisible();
}

/** The goal: stack name, species, thickness, how many boards, nearest station, and the wood's temperature. */
const MOST_ANSWERS = 6;

test.describe('in the United States', () => {
  test.use({ locale: 'en-US', timezoneId: 'America/New_York' });

  test('the first reading takes six answers, in inches and °F', async ({ pintally: { page } }) => {
    const person = newcomer(page);
    await expect(page.getByText('Inches and °F, from your computer’s region.')).toBeVisible();
    await expect(page.getByLabel('What do you call this stack?')).toBeFocused();
    await picture(page, 'first-start');
    await person.type('What do you call this stack?', 'Walnut behind the barn');
    await person.type('Species', 'black walnut', 'Enter');
    await person.type('Thickness', '8/4');
    await person.type('How many boards?', '12');
    await person.type('Nearest weather station', 'asheville nc', 'Tab');
    await expect(page.getByText('Air of Asheville, NC, typical year')).toBeVisible();
    await picture(page, 'first-start-filled');
    await page.getByRole('button', { name: 'Start probing' }).click();
    await person.type('Wood temperature', '50', 'Enter');
    await firstReading(page);
    await picture(page, 'first-reading');
    expect(person.answered.length).toBeLessThanOrEqual(MOST_ANSWERS);

    // Nothing was asked of the meter, and the board is what was said of it.
    await page.getByRole('navigation').getByRole('link', { name: 'Stacks' }).click();
    await page
      .getByRole('link', { name: /Walnut behind the barn/ })
      .first()
      .click();
    await expect(page.getByText('WALNUT-12')).toBeVisible();
    await page.getByRole('navigation').getByRole('link', { name: 'Places' }).click();
    await expect(page.getByText(/Air of Asheville, NC, typical year/)).toBeVisible();
  });

  test('the units change where they are shown', async ({ pintally: { page } }) => {
    await page.getByLabel('Thickness', { exact: true }).fill('1');
    await page.getByRole('button', { name: 'Change to millimeters and °C' }).click();
    await expect(page.getByText('Millimeters and °C.')).toBeVisible();
    await expect(page.getByLabel('Thickness', { exact: true })).toHaveValue('25.4');
  });
});

test.describe('elsewhere', () => {
  // English, with the region's units, numbers and weather.
  test.use({ locale: 'en-DE', timezoneId: 'Europe/Berlin' });

  test('without a name and a station it takes five, buttons included, and says that dates are rough', async ({
    pintally: { page },
  }) => {
    const person = newcomer(page);
    await expect(page.getByText('Millimeters and °C, from your computer’s region.')).toBeVisible();
    await expect(page.getByText(/Leave blank for rough dates\./)).toBeVisible();
    await person.type('Species', 'white oak', 'Enter');
    await person.type('Thickness', '27');
    await person.type('How many boards?', '4');
    await person.press('Start probing');
    await person.type('Wood temperature', '12,5', 'Enter');
    await firstReading(page);
    expect(person.answered.length).toBeLessThanOrEqual(MOST_ANSWERS);

    await page.getByRole('navigation').getByRole('link', { name: 'Places' }).click();
    await expect(page.getByText(/Average of 925 weather stations in the region: rough/)).toBeVisible();
    await picture(page, 'places-rough');
    await page.getByRole('button', { name: 'Edit Outdoors' }).click();
    await page.getByRole('combobox', { name: 'Nearest weather station' }).fill('44.5, -73.2');
    await picture(page, 'place-form');
  });

  test('text that is no species chooses none', async ({ pintally: { page } }) => {
    await fieldOf(page, 'Species').fill('zzzz');
    await page.keyboard.press('Enter');
    await expect(page.getByText('No species has that name.').first()).toBeVisible();
    await fieldOf(page, 'Thickness').fill('27');
    await fieldOf(page, 'How many boards?').fill('4');
    await page.getByRole('button', { name: 'Start probing' }).click();
    await expect(fieldOf(page, 'Species')).toHaveValue('zzzz');
    await expect(fieldOf(page, 'Species')).toBeFocused();
  });
});
