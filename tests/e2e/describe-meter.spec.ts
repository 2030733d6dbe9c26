import { expect, type Locator, test } from '@playwright/test';
import Database from 'better-sqlite3';
import { startMeterServer } from '../ble/emulated-radio.ts';
import { watchActs } from './acts-seen.ts';
import { startPintally } from './pintally.ts';
import { excludeButtons, openDemoYard, picture, pressRedo, startRound } from './walk.ts';

/**
 * A meter that nobody described before, with a packet made up for this test: text with a count, a comma, a unit, a letter
 * while its button is pressed, and a temperature. It is set up in the window, over a real link.
 */
test('an unknown meter is set up by watching it, in under ten clicks, and its button takes a reading', async ({
  page,
}) => {
  const { radio, meter, stop } = await startMeterServer({
    name: 'Odd meter',
    selfDescribed: false,
    batteryPct: null,
    packet: 'text',
  });
  const acts = watchActs(page);
  const pintally = await startPintally(page, { env: radio.env });
  await openDemoYard(page);

  let clicks = 0;
  const click = async (target: Locator): Promise<void> => {
    clicks++;
    await target.click({ timeout: 20_000 });
  };
  await click(page.getByRole('navigation').getByRole('link', { name: 'Meter' }));
  await click(page.getByRole('button', { name: 'Look for Bluetooth meters' }));
  await click(page.getByRole('button', { name: 'Connect Odd meter' }));

  // What moves with the pins comes first.
  const places = page.getByRole('list', { name: 'What the meter sends' });
  await expect(places.getByRole('listitem').first()).toBeVisible({ timeout: 20_000 });
  await page.waitForTimeout(1500);
  meter.press(13.4);
  await expect(places.getByRole('listitem').first()).toContainText('Moves', { timeout: 15_000 });
  await page.waitForTimeout(3000);

  const shown = page.getByRole('textbox', { name: 'Number on its display' });
  await click(shown);
  await page.keyboard.type('13.4');
  await page.keyboard.press('Enter');
  const proposals = page.getByRole('group', { name: 'Which one does its display show now?' });
  await expect(proposals.getByRole('radio').first()).toBeChecked();
  await picture(page, 'describe-first', { fullPage: true });
  meter.lift();
  await page.waitForTimeout(1000);
  meter.press(21.7);
  await page.waitForTimeout(3500);
  await page.keyboard.type('21.7');
  await page.keyboard.press('Enter');
  await expect(page.getByText('Found. It matches your numbers.')).toBeVisible();
  await expect(proposals.getByRole('radio').first()).toBeChecked();
  await expect(proposals).toContainText('21.7%');

  await click(page.getByRole('button', { name: 'Find the meter’s button' }));
  meter.hold(true);
  await expect(page.getByText('Button found. Pressed now: yes.')).toBeVisible();
  meter.hold(false);
  await expect(page.getByText('Button found. Pressed now: no.')).toBeVisible();
  clicks += 2; // A list is opened, and one of it chosen.
  const temperature = page.getByLabel('Temperature');
  await expect(temperature.locator('option').nth(1)).toHaveText(/^21\D*°C$/);
  await temperature.selectOption({ index: 1 });
  await picture(page, 'describe-found', { fullPage: true });
  await click(page.getByRole('button', { name: 'Save' }));
  await expect(page.getByRole('region', { name: 'Live' })).toContainText('21.7%');
  expect(clicks).toBeLessThan(10);
  await page.getByRole('status').getByRole('button', { name: 'Undo', exact: true }).last().click();
  await expect(shown).toBeVisible();
  await expect(page.getByRole('region', { name: 'Live' })).toBeHidden();
  await pressRedo(page);
  await expect(page.getByRole('region', { name: 'Live' })).toContainText('21.7%', { timeout: 15_000 });
  await expect.poll(() => acts.newest()).toMatchObject({ name: 'meter.describe', isRedone: true });
  meter.lift();

  await startRound(page, 'Walnut from the lane', 9);
  meter.press(12.5);
  meter.hold(true);
  await expect(excludeButtons(page)).toHaveCount(1, { timeout: 15_000 });
  await pintally.stop();
  await stop();

  // The button took it before the scale came to rest.
  const disk = new Database(`${pintally.dataDir}/demo-yard.sqlite`, { readonly: true });
  const saved = disk
    .prepare('SELECT raw, how, settled FROM reading WHERE round_id = (SELECT max(id) FROM round)')
    .all();
  disk.close();
  expect(saved).toEqual([{ raw: expect.any(Number), how: 'at-once', settled: 0 }]);
});

/** One that sends nothing before a command, and one that is watched by what it broadcasts. */
test('a meter that waits for a command, and one that broadcasts, are set up by watching', async ({
  page,
}) => {
  const of = { library: 'ble-host', selfDescribed: false, batteryPct: null } as const;
  const { radio, meter, stop } = await startMeterServer({ ...of, name: 'Silent meter', startHex: '01a0' });
  const broadcasting = await radio.startMeter({ ...of, name: 'Broadcast meter', gives: 'manufacturer-data' });
  const pintally = await startPintally(page, { env: radio.env });
  await openDemoYard(page);
  await page.getByRole('navigation').getByRole('link', { name: 'Meter' }).click();
  const live = page.getByRole('region', { name: 'Live' });

  async function connect(name: string): Promise<void> {
    await page.getByRole('button', { name: 'Look for Bluetooth meters' }).click();
    await page.getByRole('button', { name: `Connect ${name}` }).click({ timeout: 20_000 });
    await expect(page.getByText(/^Nothing moves yet/)).toBeVisible({ timeout: 20_000 });
  }
  async function typeTwo(pins: { press(pct: number): void; lift(): void }): Promise<void> {
    for (const shown of [13.4, 21.7]) {
      pins.press(shown);
      await page.waitForTimeout(4000);
      await page.getByRole('textbox', { name: 'Number on its display' }).fill(String(shown));
      await page.keyboard.press('Enter');
      await expect(page.getByRole('radio').first()).toBeChecked();
      if (shown === 13.4) pins.lift();
    }
    await page.getByRole('button', { name: 'Save' }).click();
    await expect(live).toContainText(/21[.]7/);
    pins.lift();
  }

  await connect('Silent meter');
  const command = page.getByRole('form', { name: 'Start command' });
  await page.getByText('Start command', { exact: true }).click();
  await command.getByLabel('Bytes').fill('01 A0');
  await command.getByRole('button', { name: 'Send it' }).click();
  await typeTwo(meter);
  await page.getByRole('button', { name: 'Disconnect' }).click();

  await connect('Broadcast meter');
  await page.getByRole('button', { name: 'Watch what it broadcasts' }).click();
  await expect(page.getByText(/^Listening to Broadcast meter/)).toBeVisible({ timeout: 15_000 });
  await picture(page, 'describe-broadcasts', { fullPage: true });
  await typeTwo(broadcasting);
  await expect(page.getByText(/^Listening to Broadcast meter. It sends its values/)).toBeVisible();
  await pintally.stop();
  await stop();
});
