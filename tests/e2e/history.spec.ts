import { mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, type Page, test } from '@playwright/test';
import { startPintally } from './pintally.ts';
import { giveDemoYard } from './ready-demo.ts';
import { openDemoYard, pressRedo, pressUndo } from './walk.ts';

const act = (page: Page, line: string) => page.getByRole('row').filter({ hasText: line }).first();

test.use({ actionTimeout: 15_000 });
test('what was done is listed, undone and redone, also after a restart', async ({ page, browser }) => {
  const dataDir = mkdtempSync(join(tmpdir(), 'pintally-e2e-'));
  giveDemoYard(dataDir);
  const { stop } = await startPintally(page, { dataDir });
  await openDemoYard(page);
  await page.evaluate(() => (location.hash = '#/boards/8'));
  await expect(page.getByRole('button', { name: 'Edit', exact: true }).first()).toBeVisible();
  const code = (await page.getByRole('heading', { level: 1 }).textContent()) as string;

  await test.step('a board is edited, and its change is undone and redone by keys', async () => {
    await page.getByRole('button', { name: 'Edit', exact: true }).first().click();
    const dialog = page.getByRole('dialog');
    await dialog.getByLabel('Log').fill('Ridge');
    await dialog.getByRole('button', { name: 'Save' }).click();
    await expect(dialog).toBeHidden();
    const ridge = page.locator('dd').filter({ hasText: 'Ridge' });
    await page.getByRole('tab', { name: 'History' }).click();
    await expect(act(page, `on board ${code}`)).toContainText('Ridge');
    await page.getByRole('heading', { level: 1 }).click();
    await pressUndo(page);
    await expect(page.getByText(/^Undone: Log .* on board/)).toBeVisible();
    await expect(act(page, `on board ${code}`)).toContainText('Undone');
    await pressRedo(page);
    await expect(page.getByText(/^Redone: Log .* on board/)).toBeVisible();
    await page.getByRole('tab', { name: 'About' }).click();
    await expect(ridge.first()).toBeVisible();
  });

  await test.step('a board that was moved is back by its notice', async () => {
    await page
      .getByRole('row')
      .filter({ hasText: 'Pole shed' })
      .getByRole('button', { name: /Move/ })
      .click();
    const dialog = page.getByRole('dialog');
    await dialog.getByRole('button', { name: 'Move', exact: true }).click();
    await expect(dialog).toBeHidden();
    await page.getByRole('button', { name: 'Undo', exact: true }).last().click();
    await expect(page.getByText(/^Undone: Board .* moved to/)).toBeVisible();
    await page.getByRole('button', { name: 'Redo', exact: true }).last().click();
    await expect(page.getByText(/^Redone: Board .* moved to/)).toBeVisible();
  });

  await test.step('the yard has a list of everything, after a restart too', async () => {
    const other = await browser.newPage();
    await page.goto('about:blank');
    await stop();
    const again = await startPintally(other, { dataDir });
    await openDemoYard(other);
    await other.evaluate(() => (location.hash = '#/history'));
    await expect(act(other, 'moved to')).toBeVisible();
    // What this window did not do itself is asked about.
    await pressUndo(other);
    const question = other.getByRole('dialog', { name: 'Undo this earlier change?' });
    await expect(question).toContainText('moved to');
    await question.getByRole('button', { name: 'Undo' }).click();
    await expect(act(other, 'moved to')).toContainText('Undone');
    await pressRedo(other);
    await expect(act(other, 'moved to')).not.toContainText('Undone');
    await act(other, 'moved to').getByRole('button', { name: 'Undo' }).click();
    await expect(act(other, 'moved to')).toContainText('Undone');
    await act(other, 'Log changed from').getByRole('button', { name: 'Undo' }).click();
    await expect(act(other, 'Log changed from')).toContainText('Undone');
    await act(other, 'Log changed from').getByRole('button', { name: 'Redo' }).click();
    await expect(act(other, 'Log changed from')).not.toContainText('Undone');
    await other.close();
    await again.stop();
  });
});
