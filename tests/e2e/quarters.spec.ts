import { expect, type Page } from '@playwright/test';
import { test } from './pintally.ts';
import { openDemoYard, picture, startRound, typeReading } from './walk.ts';

/** Where the thickness of the demo yard's seventh walnut board is shown, and by what name it must be. */
async function expectThickness(page: Page, thickness: string, name: string): Promise<void> {
  await page.getByRole('navigation').getByRole('link', { name: 'Stacks' }).click();
  await page.getByRole('link', { name: 'Walnut from the lane', exact: true }).click();
  await page.getByRole('button', { name: 'Columns' }).click();
  await page.getByLabel('Species').check();
  await page.keyboard.press('Escape');
  await expect(page.getByRole('row', { name: /WAL-07/ })).toContainText(`Black walnut${thickness}`);
  await picture(page, `quarters-stack-${name}`);

  await page.getByRole('button', { name: 'More', exact: true }).click();
  await page.getByRole('menuitem', { name: 'Labels' }).click();
  await page.getByRole('checkbox', { name: /WAL-07/ }).check();
  await expect(page.getByRole('img').getByText(new RegExp(`^${thickness}( ×|$)`))).toBeVisible();
  await picture(page, `quarters-labels-${name}`);
  await page.goBack();

  await page.getByRole('link', { name: 'WAL-07' }).first().click();
  await expect(page.getByText(`Black walnut · ${thickness}`)).toBeVisible();
  await page.getByRole('tab', { name: 'About and moves' }).click();
  await expect(page.getByRole('region', { name: 'About this board' })).toContainText(thickness);
  await picture(page, `quarters-board-${name}`);
  await page.getByRole('button', { name: 'Edit', exact: true }).click();
  await picture(page, `quarters-form-${name}`);
  await expect(page.getByRole('textbox', { name: 'Thickness' })).toHaveValue(thickness);
  await page.keyboard.press('Escape');
}

// 8/4 is a board's name in the trade, 2 in rough (common practice, no source).
test('8/4 stays 8/4 in millimeters and in inches', async ({ pintally: { page } }) => {
  await openDemoYard(page);
  await page.getByRole('link', { name: 'Walnut from the lane', exact: true }).click();
  await page.getByRole('button', { name: 'Add boards' }).first().click();
  await page.getByLabel('Thickness').fill('8/4');
  await expect(page.getByText('That is 51 mm.')).toBeVisible();
  // The day of sawing is that of the stack's last board.
  await page.getByRole('radio', { name: 'Yes' }).check();
  await page.getByRole('button', { name: 'Add board', exact: true }).click();
  await expectThickness(page, '8/4', 'metric');

  await page.getByRole('navigation').getByRole('link', { name: 'Settings' }).click();
  await page.getByRole('radio', { name: /^US/ }).check();
  await expectThickness(page, '8/4', 'inches');

  await startRound(page, 'Walnut from the lane', 50);
  await page.getByRole('button', { name: /WAL-07/ }).click();
  await expect(page.getByText('Black walnut8/4')).toBeVisible();
  // The raw value stays as it was typed, too.
  await typeReading(page, '14.25');
  await expect(page.getByRole('button', { name: 'Exclude shell reading 14.25%' })).toBeVisible();
  await picture(page, 'quarters-round');
});
