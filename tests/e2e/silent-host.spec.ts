import { expect } from '@playwright/test';
import { test } from './pintally.ts';
import { excludeButtons, openDemoYard, picture, startRound, typeReading } from './walk.ts';

test('a host that hangs is noticed, the round says what is not saved, and it is saved once the host goes on', async ({
  pintally: { page, stall },
}) => {
  await openDemoYard(page);
  await startRound(page, 'Walnut from the lane', 9);
  stall(11_000);
  await typeReading(page, '12.4');
  await expect(page.getByText(/^Pintally is not responding/)).toBeVisible({ timeout: 10_000 });
  await expect(page.getByText('“12.4” for WAL-01 is not saved yet.')).toBeVisible();
  await expect(page.getByText('Nothing is saved now. Waiting for Pintally.')).toBeVisible();
  await picture(page, 'silent-host');
  await expect(page.getByText(/^Pintally is not responding/)).toBeHidden({ timeout: 15_000 });
  await expect(excludeButtons(page)).toHaveCount(1);
  await expect(page.getByText(/is not saved yet/)).toBeHidden();
});
