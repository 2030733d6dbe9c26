import { expect } from '@playwright/test';
import { test } from './pintally.ts';
import { findings, finishRound, openDemoYard, picture, startRound } from './walk.ts';

/** Shell, core, shell, core as the meter showed them; invented. The fifth board has a slip of the keys in it. */
const typed: Record<string, [string, string, string, string]> = {
  'WAL-01': ['11.9', '12.6', '12.1', '12.8'],
  'WAL-02': ['12,3', '13,1', '12,4', '13,0'],
  'WAL-03': ['11.7', '12.4', '11.8', '12.5'],
  'WAL-04': ['11.6', '12.2', '11.7', '12.3'],
  'WAL-05': ['12.8', '140', '12.9', '14.1'],
  'WAL-06': ['12.0', '12.7', '12.1', '12.6'],
};

test('the same stack is probed by typing, from the keyboard alone', async ({ pintally: { page } }) => {
  await openDemoYard(page);
  await startRound(page, 'Walnut from the lane', 9);
  for (const [code, values] of Object.entries(typed)) {
    await expect(page.getByRole('heading', { level: 1 })).toContainText(code);
    for (const value of values) {
      const savedBefore = await page.getByRole('button', { name: /^Exclude (shell|core) reading/ }).count();
      await page.keyboard.type(value);
      await page.keyboard.press('Enter');
      await expect(page.getByRole('button', { name: /^Exclude (shell|core) reading/ })).toHaveCount(
        savedBefore + 1,
      );
      if (value === '140') {
        // The slip is seen at once, and undone with one key.
        await expect(page.locator('.saved-note')).toContainText('140% was typed');
        await picture(page, 'round-typed-slip');
        await page.keyboard.press('Backspace');
        await expect(page.getByRole('button', { name: /^Include (shell|core) reading/ })).toBeVisible();
        await page.keyboard.type('14.0');
        await page.keyboard.press('Enter');
        await expect(page.getByRole('button', { name: /^Exclude (shell|core) reading/ })).toHaveCount(
          savedBefore + 1,
        );
      }
    }
    await expect(page.locator('.probe-next')).toContainText('All spots read');
    if (code !== 'WAL-06') await page.keyboard.press('Enter');
  }
  await finishRound(page);
  await picture(page, 'round-typed-summary');

  const found = await findings(page);
  expect(found.map(([code]) => code)).toEqual(Object.keys(typed));
  // 12 to 14 % is above the target for furniture (6 to 8 %, common practice, no source): none is ready.
  for (const [, , call] of found) expect(call).not.toMatch(/ready/i);
});

test('a reading that is no number saves nothing and says so', async ({ pintally: { page } }) => {
  await openDemoYard(page);
  await startRound(page, 'Walnut from the lane', 9);
  await page.getByRole('textbox').fill('twelve');
  await page.keyboard.press('Enter');
  await expect(page.getByText(/not a number\. Nothing was saved/)).toBeVisible();
  await expect(page.getByRole('button', { name: /^Exclude (shell|core) reading/ })).toHaveCount(0);
  await expect(page.getByRole('textbox')).toHaveValue('twelve');
});

test('a round goes on where it was left after the window was closed', async ({ pintally: { page } }) => {
  await openDemoYard(page);
  await startRound(page, 'Pine for the porch', 15);
  for (const value of ['10.8', '11.5']) {
    await page.keyboard.type(value);
    await page.keyboard.press('Enter');
  }
  await expect(page.getByRole('button', { name: /^Exclude (shell|core) reading/ })).toHaveCount(2);
  await page.reload();
  await expect(page.getByRole('button', { name: /^Exclude (shell|core) reading/ })).toHaveCount(2);
  await page.getByRole('navigation').getByRole('link', { name: 'Stacks' }).click();
  await page.getByRole('link', { name: /Resume: Pine/ }).click();
  await expect(page.locator('.probe-next')).toContainText('right end');
});

test('in a low window a banner leaves the field where it can be typed in', async ({ pintally: { page } }) => {
  await page.setViewportSize({ width: 720, height: 560 });
  await openDemoYard(page);
  await startRound(page, 'Walnut from the lane', 9);
  await page.keyboard.type('12..4');
  await page.keyboard.press('Enter');
  const banner = await page.getByRole('alert').boundingBox();
  const field = await page.getByRole('textbox').boundingBox();
  expect(field?.height).toBeGreaterThan(40);
  expect((field?.y ?? 0) + (field?.height ?? 0)).toBeLessThan(banner?.y ?? 0);
});
