/**
 * Every screen of the demo yard in the smallest window (800 x 600), in both themes, against WCAG 2.1 at level AA and
 * common good practice as axe-core checks them: names, roles, contrast, what the keyboard can reach.
 */
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { expect, type Page } from '@playwright/test';
import type axeCore from 'axe-core';
import { test } from './pintally.ts';
import { openDemoYard, picture, startRound } from './walk.ts';

const axeSource = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');
const options: axeCore.RunOptions = { runOnly: ['wcag2a', 'wcag2aa', 'wcag21aa', 'best-practice'] };

/** What is in somebody's way on the screen as it is, a line for each. */
async function barriers(page: Page): Promise<string[]> {
  await expect(page.getByText('Loading …')).toHaveCount(0);
  await page.evaluate(axeSource);
  return page.evaluate(async (given) => {
    const { axe } = globalThis as unknown as { axe: typeof axeCore };
    const { violations } = await axe.run(document, given);
    return violations.flatMap(({ id, nodes }) => nodes.map(({ target }) => `${id}: ${target.join(' ')}`));
  }, options);
}

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
