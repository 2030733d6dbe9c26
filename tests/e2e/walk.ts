import { join, resolve } from 'node:path';
import { expect, type Locator, type Page } from '@playwright/test';

const screenshots = resolve(import.meta.dirname, '../../artifacts/screenshots');

/** A picture for people to look at, saved with the run. */
export const picture = (page: Page, name: string, { fullPage = false } = {}) =>
  page.screenshot({ path: join(screenshots, `${name}.png`), fullPage });

/** Opens the demo yard from the empty first start, as a newcomer would. */
export async function openDemoYard(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'Open the demo yard' }).click();
  await expect(page.getByText('Demo yard: invented data.')).toBeVisible();
}

/** Goes to a screen by the links at the top, which a narrow window has behind a button. */
export async function goTo(page: Page, screen: string): Promise<void> {
  const main = page.getByRole('navigation', { name: 'Main' });
  const menu = main.getByRole('button', { name: 'Menu' });
  if (await menu.isVisible()) await menu.click();
  await main.getByRole('link', { name: screen }).click();
}

/** From the list of stacks to the first board of a round. */
export async function startRound(page: Page, stack: string, woodTempC: number): Promise<void> {
  await goTo(page, 'Stacks');
  await page.getByRole('link', { name: `Probe: ${stack}` }).click();
  // On a busy computer the stacks take long to come.
  const woodTemp = page.getByRole('textbox', { name: 'Wood temperature' });
  await woodTemp.fill(String(woodTempC), { timeout: 60_000 });
  await page.keyboard.press('Enter');
  await expect(page.getByRole('heading', { level: 1 })).toContainText('Board');
}

/** Types a reading at the pace of a quick hand: slower than any label scanner. */
export async function typeReading(page: Page, value: string): Promise<void> {
  await page.keyboard.type(value, { delay: 60 });
  await page.keyboard.press('Enter');
}

/** Opens the demo yard, starts a round, types a reading, and waits until the yard has it. */
export async function probeDemoBoard(page: Page): Promise<void> {
  await openDemoYard(page);
  await startRound(page, 'Walnut from the lane', 9);
  await typeReading(page, '12.1');
  await expect(excludeButtons(page)).toHaveCount(1);
}

/** What a page in Electron's window must not reach: Node, and another window. */
export async function expectClosedWindow(page: Page): Promise<void> {
  expect(await page.evaluate(() => 'require' in globalThis || 'process' in globalThis)).toBe(false);
  expect(await page.evaluate(() => globalThis.open('https://example.org') === null)).toBe(true);
}

/**
 * Scans a label: its ID and Enter, with the times of a scanner. Without them each key has the time at which a busy browser
 * comes to it.
 */
export async function scanLabel(page: Page, code: string): Promise<void> {
  const browser = await page.context().newCDPSession(page);
  const began = Date.now() / 1000;
  const keys = [...code].map((key) => ({ key, text: key }));
  const enter = { key: 'Enter', code: 'Enter', text: '\r', windowsVirtualKeyCode: 13 };
  const sent = [...keys, enter].flatMap((key, index) =>
    (['keyDown', 'keyUp'] as const).map((type, half) => {
      const timestamp = began + (index + half / 2) / 200;
      return browser.send('Input.dispatchKeyEvent', { type, timestamp, ...key });
    }),
  );
  await Promise.all(sent);
  await browser.detach();
}

/** Undoes the newest act by its keys, which a dialog that is still closing keeps to itself. */
export const pressUndo = (page: Page): Promise<void> => pressOnceClosed(page, 'Control+z');
/** Redoes it by its keys. */
export const pressRedo = (page: Page): Promise<void> => pressOnceClosed(page, 'Control+Shift+z');

async function pressOnceClosed(page: Page, keys: string): Promise<void> {
  await expect(page.locator('[role=dialog], [role=alertdialog]')).toHaveCount(0);
  await page.keyboard.press(keys);
}

/** What the round says is to be done next. */
export const nextStep = (page: Page): Locator =>
  page.getByRole('region', { name: 'Round' }).locator('header [aria-live]');

/** The buttons that exclude a reading of the board in hand: one for each that is not excluded. */
export const excludeButtons = (page: Page): Locator =>
  page.getByRole('button', { name: /^Exclude (shell|average|core) reading/ });

/** Ends the round from its last board, by keys alone, and waits for what it found. */
export async function finishRound(page: Page): Promise<void> {
  await page.keyboard.press('Enter');
  await expect(page.getByRole('dialog')).toBeVisible();
  // With spots open, no button has the focus. A key pressed at once is taken for one pressed twice.
  const finish = page.getByRole('button', { name: 'Finish the round' });
  if (!(await finish.evaluate((button) => button === document.activeElement)))
    await page.keyboard.press('Tab');
  await page.waitForTimeout(500);
  await page.keyboard.press('Enter');
  await expect(page.getByRole('heading', { name: 'Board by board' })).toBeVisible();
}

/** The findings table as rows of cell texts. */
export async function findings(page: Page): Promise<string[][]> {
  const rows = page.getByRole('table').getByRole('row');
  const texts = await rows.evaluateAll((elements) =>
    elements.map((row) => [...row.children].map((cell) => cell.textContent?.trim() ?? '')),
  );
  return texts.slice(1);
}
