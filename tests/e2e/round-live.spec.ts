import { expect, test } from '@playwright/test';
import Database from 'better-sqlite3';
import { startMeterServer } from '../ble/emulated-radio.ts';
import { startPintally } from './pintally.ts';
import {
  excludeButtons,
  findings,
  finishRound,
  nextStep,
  openDemoYard,
  picture,
  startRound,
} from './walk.ts';

/**
 * The main job, over a real link: noble, a GATT server and BlueZ's emulated controllers, the real store, Chromium.
 * What the meter shows is invented; what is checked is that all of it arrives, once, corrected, judged and on disk.
 */
const boards = [
  { code: 'WAL-01', shell: 11.9, core: 12.6 },
  { code: 'WAL-02', shell: 12.3, core: 13.1 },
  { code: 'WAL-03', shell: 11.7, core: 12.4 },
  { code: 'WAL-04', shell: 11.6, core: 12.2 },
  { code: 'WAL-05', shell: 12.8, core: 14.0 },
  { code: 'WAL-06', shell: 12.0, core: 12.7 },
];

test('a stack of six boards is probed live over Bluetooth and ends with a call for each', async ({
  page,
}) => {
  test.setTimeout(300_000);
  const { radio, meter, stop } = await startMeterServer({ name: 'Yard meter' });
  const pintally = await startPintally(page, { env: radio.env });
  await openDemoYard(page);

  await page.getByRole('navigation').getByRole('link', { name: 'Meter' }).click();
  await page.getByRole('button', { name: 'Look for Bluetooth meters' }).click();
  await page.getByRole('button', { name: 'Connect Yard meter' }).click({ timeout: 20_000 });
  await expect(page.getByRole('button', { name: 'Disconnect' })).toBeVisible({ timeout: 20_000 });
  await expect(page.getByText('76%').first()).toBeVisible({ timeout: 20_000 });
  await expect(page.getByText('This computer’s Bluetooth is used.')).toBeVisible();
  meter.press(12.5);
  await expect(page.getByText('Settled')).toBeVisible({ timeout: 15_000 });
  await picture(page, 'meter-live');
  meter.lift();
  await expect(page.getByText('Pins out').first()).toBeVisible({ timeout: 15_000 });

  // Its pins reach the core and are insulated: the plan has two depths.
  await page.getByRole('button', { name: 'Answer' }).click();
  const form = page.getByRole('dialog', { name: 'About Yard meter' });
  await form.getByLabel('How long are the pins?').selectOption('Another length');
  await form.getByLabel('Pin length').fill('30');
  await form.getByRole('radio', { name: 'Yes, except the tips' }).check();
  await form.getByRole('button', { name: 'Save' }).click();
  await expect(form).toHaveCount(0);
  const ofYard = page.getByRole('listitem').filter({ hasText: 'Yard meter' });
  await expect(ofYard.getByText('30 mm, insulated')).toBeVisible();
  await expect(page.getByRole('button', { name: 'Answer' })).toHaveCount(0);

  await startRound(page, 'Walnut from the lane', 9);
  for (const [index, board] of boards.entries()) {
    await expect(page.getByRole('heading', { level: 1 })).toContainText(board.code);
    for (const depth of ['Shell', 'Core', 'Shell', 'Core'] as const) {
      await expect(nextStep(page)).toContainText(depth);
      await expect(page.getByText('Pins out')).toBeVisible();
      const shown = depth === 'Shell' ? board.shell : board.core;
      const savedBefore = await excludeButtons(page).count();
      meter.press(shown);
      await expect(excludeButtons(page)).toHaveCount(savedBefore + 1, {
        timeout: 15_000,
      });
      if (index === 2 && savedBefore === 1) await picture(page, 'round-live');
      meter.lift();
    }
    await expect(nextStep(page)).toContainText('All spots read');
    if (index < boards.length - 1) await page.keyboard.press('Enter');
  }
  await finishRound(page);
  await picture(page, 'round-live-summary');

  const found = await findings(page);
  expect(found.map(([code]) => code)).toEqual(boards.map(({ code }) => code));
  for (const [, average, call, why] of found) {
    expect(average).toMatch(/^\d+\.\d% \d+\.\d–\u2060\d+\.\d%$/);
    expect(call).toMatch(/Ready|Bring in|Keep drying|Probe again/i);
    expect(why?.length).toBeGreaterThan(20);
  }
  await pintally.stop();
  await stop();

  // Each insertion gave one reading, within the meter's own noise of what its scale came to rest at, and no other.
  const disk = new Database(`${pintally.dataDir}/demo-yard.sqlite`, { readonly: true });
  const saved = disk
    .prepare(
      `SELECT b.code, r.spot ->> 'depth' AS depth, r.raw, r.how, r.settled FROM reading r JOIN board b ON b.id = r.board_id
       WHERE r.round_id = (SELECT max(id) FROM round) ORDER BY r.id`,
    )
    .all() as { code: string; depth: 'shell' | 'core'; raw: number; how: string; settled: number }[];
  disk.close();
  expect(saved.map(({ code, depth }) => `${code} ${depth}`)).toEqual(
    boards.flatMap(({ code }) => [`${code} shell`, `${code} core`, `${code} shell`, `${code} core`]),
  );
  for (const { code, depth, raw, how, settled } of saved) {
    const board = boards.find((each) => each.code === code)!;
    expect(Math.abs(raw - board[depth])).toBeLessThan(0.15);
    expect({ how, settled }).toEqual({ how: 'settled', settled: 1 });
  }
});
