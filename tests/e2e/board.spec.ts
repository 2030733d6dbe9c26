/** A board's page in a real window: what its first screen answers, and what survives going back. */
import { expect, type Locator, type Page } from '@playwright/test';
import { settled } from './everywhere.ts';
import { test } from './pintally.ts';
import { openDemoYard } from './walk.ts';

/** Of the demo yard, by their numbers: too wet, and as dry as their place gets them. */
const boards = [1, 8, 20];

async function openBoard(page: Page, id: number): Promise<void> {
  await page.evaluate((number) => {
    location.hash = `#/boards/${number}`;
  }, id);
  await expect(page.getByText('Ready here')).toBeVisible();
  await settled(page);
}

async function boxOf(part: Locator): Promise<{ x: number; y: number; width: number; height: number }> {
  const box = await part.boundingBox();
  if (!box) throw new Error('Not on screen.');
  return box;
}

test('the first screen says what a board is, its call and why, its figures, its dates and the next step', async ({
  pintally: { page },
}) => {
  await openDemoYard(page);
  for (const [width, height, screens] of [
    [1280, 860, 1],
    [800, 600, 2],
  ] as const) {
    await page.setViewportSize({ width, height });
    for (const id of boards) {
      await openBoard(page, id);
      const call = page.getByRole('region', { name: 'Call' });
      const parts = [
        page.getByRole('heading', { level: 1 }),
        page.getByRole('link', { name: /stack|lane|kitchen/i }),
        call.getByRole('img', { name: /^Average/ }),
        call.getByText('Shell', { exact: true }),
        call.getByText('Core', { exact: true }),
        call.getByText('Ready here'),
        // A board that only dries on has the day of its next round instead of a button.
        call
          .getByRole('button')
          .or(call.getByRole('link'))
          .or(call.getByText(/^Probe it next on/)),
      ];
      for (const part of parts) {
        const { y, height: high } = await boxOf(part.first());
        expect(y + high, `${part} of board ${id}`).toBeLessThan(screens * height);
      }
    }
  }
});

test('a likely date begins under its label at any width, and breaks before its interval only', async ({
  pintally: { page },
}) => {
  await openDemoYard(page);
  for (const width of [1280, 800, 640, 320]) {
    await page.setViewportSize({ width, height: 600 });
    await openBoard(page, 20);
    const label = page.getByText('Ready in Bench room');
    const date = label.locator('xpath=following-sibling::dd');
    expect((await boxOf(date)).x).toBe((await boxOf(label)).x);
    for (const part of await date.locator('span').all()) {
      expect((await boxOf(part)).height, `at ${width} px`).toBeLessThan(30);
    }
  }
});

test('going back from a half-filled form loses nothing', async ({ pintally: { page } }) => {
  await openDemoYard(page);
  await page.getByRole('link', { name: 'Maple for the kitchen', exact: true }).click();
  await openBoard(page, 20);
  await page.getByRole('button', { name: 'Edit', exact: true }).click();
  const form = page.getByRole('dialog');
  await form.getByLabel('Note').fill('Wane on one edge');
  await page.goBack();
  await expect(form.getByText('What you typed is not saved yet. Save it, or press Cancel.')).toBeVisible();
  await expect(form.getByLabel('Note')).toHaveValue('Wane on one edge');
  await form.getByRole('button', { name: 'Cancel' }).click();
  await page.goBack();
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('Maple for the kitchen');
});
