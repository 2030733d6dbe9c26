/**
 * Every screen of the demo yard in the smallest window (800 x 600), in both themes, against WCAG 2.1 at level AA and
 * common good practice as axe-core checks them: names, roles, contrast, what the keyboard can reach.
 */
import { expect } from '@playwright/test';
import { barriers } from './barriers.ts';
import { test } from './pintally.ts';
import { openDemoYard, picture, startRound } from './walk.ts';

const screens = [
  ['stacks', 'Stacks'],
  ['boards', 'All boards'],
  ['stacks/3', 'Maple for the kitchen'],
  ['boards/8', 'OAK-02'],
  ['meter', 'Meter'],
  ['labels', 'Labels'],
  ['places', 'Places'],
  ['air', 'Air and wood'],
  ['species', 'Species and uses'],
  ['settings', 'Settings'],
] as const;

for (const theme of ['light', 'dark'] as const) {
  test(`no screen has barriers, ${theme}, at 800 x 600`, async ({ pintally: { page } }) => {
    await page.setViewportSize({ width: 800, height: 600 });
    await page.emulateMedia({ colorScheme: theme });
    expect(await barriers(page)).toEqual([]);
    await openDemoYard(page);
    const base = page.url().replace(/#.*/, '');
    for (const [path, heading] of screens) {
      await page.goto(`${base}#/${path}`);
      await expect(page.getByRole('heading', { level: 1, name: heading })).toBeVisible();
      await expect(page.getByText('Loading …')).toHaveCount(0);
      expect(await barriers(page), `${path}, ${theme}`).toEqual([]);
      await picture(page, `${path.replace('/', '-')}-${theme}`);
    }
    await startRound(page, 'Maple for the kitchen', 9);
    expect(await barriers(page), `round, ${theme}`).toEqual([]);
    await page.keyboard.press('g');
    await expect(page.getByRole('dialog', { name: 'Go to a board' })).toBeVisible();
    expect(await barriers(page), `go to a board, ${theme}`).toEqual([]);
  });
}

test('no screen is wider than a window of 320 px', async ({ pintally: { page } }) => {
  await page.setViewportSize({ width: 320, height: 640 });
  await openDemoYard(page);
  const base = page.url().replace(/#.*/, '');
  const tooWide = () => page.evaluate(() => document.documentElement.scrollWidth - innerWidth);
  for (const [path, heading] of screens) {
    await page.goto(`${base}#/${path}`);
    await expect(page.getByRole('heading', { level: 1, name: heading })).toBeVisible();
    await expect(page.getByText('Loading …')).toHaveCount(0);
    expect(await tooWide(), path).toBe(0);
  }
  await startRound(page, 'Maple for the kitchen', 9);
  expect(await tooWide(), 'round').toBe(0);
});
