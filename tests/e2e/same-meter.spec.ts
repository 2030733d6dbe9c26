import { expect, test } from '@playwright/test';
import { EmulatedRadio } from '../ble/emulated-radio.ts';
import { watchActs } from './acts-seen.ts';
import { startPintally } from './pintally.ts';
import { openDemoYard, picture, pressRedo, pressUndo } from './walk.ts';

/** The meter is our own, over a real link between emulated controllers. */
test('a meter that comes back with another address is offered while its link is lost, and goes on as the same', async ({
  page,
  context,
}) => {
  test.setTimeout(120_000);
  const radio = await EmulatedRadio.start();
  const yard = { name: 'Yard meter', library: 'ble-host' } as const;
  const first = await radio.startMeter({ ...yard, address: 'C0:FF:EE:00:00:01' });
  const acts = watchActs(page);
  const pintally = await startPintally(page, { env: radio.env });
  await openDemoYard(page);
  await page.getByRole('navigation').getByRole('link', { name: 'Meter' }).click();
  await page.getByRole('button', { name: 'Look for Bluetooth meters' }).click();
  await page.getByRole('button', { name: 'Connect Yard meter' }).click();
  await expect(page.getByText('Connected to Yard meter.')).toBeVisible({ timeout: 20_000 });

  // As after its battery was changed.
  await first.quit();
  await radio.startMeter({ ...yard, address: 'C0:FF:EE:00:4F:2A' });
  const offered = page.getByRole('button', { name: 'Connect Yard meter 4f2a' });
  await expect(offered).toBeVisible({ timeout: 40_000 });
  await picture(page, 'same-meter-in-reach', { fullPage: true });
  await offered.click();

  const question = page.getByText('This looks like Yard meter, with a new address.');
  await expect(question).toBeVisible({ timeout: 40_000 });
  await picture(page, 'same-meter-asked', { fullPage: true });
  const second = await context.newPage();
  await second.goto(page.url());
  const there = second.getByText('This looks like Yard meter, with a new address.');
  await expect(there).toBeVisible();

  const own = page.getByRole('heading', { name: 'Yard meter 4f2a' });
  const undo = page.getByRole('status').getByRole('button', { name: 'Undo', exact: true }).last();
  await page.getByRole('button', { name: 'Another meter' }).click();
  await expect(own).toBeVisible();
  await undo.click();
  await expect(question).toBeVisible();
  await expect(own).toHaveCount(0);
  await pressRedo(page);
  await expect(own).toBeVisible();
  await expect.poll(() => acts.newest()).toMatchObject({ name: 'meter.isAnother', isRedone: true });
  await pressUndo(page);
  await expect(question).toBeVisible();

  await page.getByRole('button', { name: 'It is the same' }).click();
  await expect(question).toBeHidden();
  await expect(there).toBeHidden();
  await expect(page.getByRole('heading', { name: 'Yard meter 4f2a' })).toHaveCount(0);

  await undo.click();
  await expect(question).toBeVisible();
  await pressRedo(page);
  await expect(question).toBeHidden();
  await expect.poll(() => acts.newest()).toMatchObject({ name: 'meters.recognize', isRedone: true });
  await page.evaluate(() => {
    location.hash = '#/history';
  });
  await expect(page.getByText('Yard meter recognized under a new address.').first()).toBeVisible();
  await second.close();
  await pintally.stop();
  await radio.stop();
});
