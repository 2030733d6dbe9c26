import { expect } from '@playwright/test';
import { test } from './pintally.ts';
import { openDemoYard, picture, startRound, typeReading } from './walk.ts';

test('two windows on one round: each has its own board, one has the meter, and the pins are one reading', {
  tag: '@core',
}, async ({ pintally: { page }, context }) => {
  await openDemoYard(page);
  await startRound(page, 'Walnut from the lane', 9);
  const second = await context.newPage();
  await second.goto(page.url());
  const heading = second.getByRole('heading', { level: 1 });
  await expect(heading).toContainText('WAL-01');
  await second.keyboard.press('End');
  await expect(heading).toContainText('WAL-06');

  await page.getByRole('link', { name: 'Connect a meter' }).click();
  await page.getByRole('button', { name: 'Use the simulated meter' }).click();
  await page.getByRole('link', { name: 'Back to the round' }).click();
  await expect(second.getByText('Another window is using the meter.')).toBeVisible();
  await picture(second, 'two-windows-without-the-meter');

  // What settles goes to the board of the window with the meter, and the other one types its own.
  await typeReading(second, '12.4');
  await expect(second.getByText(/^Shell \S+ saved/)).toBeVisible();
  await expect(page.getByText(/^Shell \S+ saved/)).toBeVisible();
  await expect(page.getByRole('heading', { level: 1 })).toContainText('WAL-01');
  await expect(heading).toContainText('WAL-06');

  await second.getByRole('button', { name: 'Use it here' }).click();
  await expect(page.getByText('Another window is using the meter.')).toBeVisible();
  await expect(second.getByRole('button', { name: /^Save now/ })).toBeVisible();
  await picture(second, 'two-windows-with-the-meter');
  await second.close();
  await expect(page.getByText('No window is using the meter.')).toBeVisible();
});
