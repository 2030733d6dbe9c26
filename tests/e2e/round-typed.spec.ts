import { expect, type Locator, type Page } from '@playwright/test';
import { test } from './pintally.ts';
import {
  excludeButtons,
  findings,
  finishRound,
  goTo,
  nextStep,
  openDemoYard,
  picture,
  scanLabel,
  startRound,
  typeReading,
} from './walk.ts';

/** Shell, core, shell, core as the meter showed them; invented. The fifth board has a slip of the keys in it. */
const typed: Record<string, [string, string, string, string]> = {
  'WAL-01': ['11.9', '12.6', '12.1', '12.8'],
  'WAL-02': ['12,3', '13,1', '12,4', '13,0'],
  'WAL-03': ['11.7', '12.4', '11.8', '12.5'],
  'WAL-04': ['11.6', '12.2', '11.7', '12.3'],
  'WAL-05': ['12.8', '140', '12.9', '14.1'],
  'WAL-06': ['12.0', '12.7', '12.1', '12.6'],
};

test('the same stack is probed by typing, from the keyboard alone', { tag: '@core' }, async ({
  pintally: { page },
}) => {
  await openDemoYard(page);
  await startRound(page, 'Walnut from the lane', 9);
  for (const [code, values] of Object.entries(typed)) {
    await expect(page.getByRole('heading', { level: 1 })).toContainText(code);
    for (const value of values) {
      const savedBefore = await excludeButtons(page).count();
      await typeReading(page, value);
      await expect(excludeButtons(page)).toHaveCount(savedBefore + 1);
      if (value === '140') {
        // The slip is seen at once, and put right with one key.
        await expect(page.getByRole('region', { name: 'Reading' })).toContainText('140% was typed');
        await picture(page, 'round-typed-slip');
        await page.keyboard.press('u');
        await expect(page.getByRole('button', { name: /^Include (shell|core) reading/ })).toBeVisible();
        await expect(excludeButtons(page)).toHaveCount(savedBefore + 1);
      }
    }
    await expect(nextStep(page)).toContainText('All spots read');
    if (code !== 'WAL-06') await page.keyboard.press('Enter');
  }
  await finishRound(page);
  await picture(page, 'round-typed-summary');

  const found = await findings(page);
  expect(found.map(([code]) => code)).toEqual(Object.keys(typed));
  // 12 to 14 % is above the target for furniture (6 to 8 %, common practice, no source): none is ready.
  for (const [, , call] of found) expect(call).not.toMatch(/ready/i);
});

test('after a reading is excluded, ten values are typed on and none is lost', async ({
  pintally: { page },
}) => {
  await openDemoYard(page);
  await startRound(page, 'Walnut from the lane', 9);
  await typeReading(page, '11.9');
  await excludeButtons(page).click();
  await page.getByRole('dialog').getByRole('button', { name: 'Wet face' }).click();
  await expect(page.getByRole('button', { name: /^Include shell reading/ })).toBeVisible();
  let typedOn = 0;
  for (const board of ['WAL-01', 'WAL-02', 'WAL-03']) {
    await expect(page.getByRole('heading', { level: 1 })).toContainText(board);
    for (const value of ['12.1', '12.6', '12.3', '12.8'].slice(0, 10 - typedOn)) {
      await typeReading(page, value);
      typedOn += 1;
    }
    await expect(excludeButtons(page)).toHaveCount(board === 'WAL-03' ? 2 : 4);
    await expect(page.getByRole('textbox')).toBeFocused();
    if (board !== 'WAL-03') await page.keyboard.press('Enter');
  }
  expect(typedOn).toBe(10);
});

for (const stallMs of [0, 520, 900, 2500]) {
  test(`the next board's value typed straight after Enter is whole, with the host away for ${stallMs} ms`, async ({
    pintally: { page, stall },
  }) => {
    await openDemoYard(page);
    await startRound(page, 'Walnut from the lane', 9);
    for (const value of ['11.9', '12.6', '12.1', '12.8', '', '15.2', '13.1']) {
      // Away before the last reading of the first board is saved.
      if (value === '12.8' && stallMs > 0) stall(stallMs);
      await typeReading(page, value);
    }
    await expect(page.getByRole('heading', { level: 1 })).toContainText('WAL-02');
    await expect(excludeButtons(page)).toHaveCount(2, { timeout: 10_000 });
    const spots = page.getByRole('region', { name: 'Spots' });
    await expect(spots).toContainText('15.2%raw');
    await expect(spots).toContainText('13.1%raw');
    await expect(page.getByRole('textbox')).toHaveValue('');
    await expect(page.getByText('is not saved yet')).toHaveCount(0);
    await page.keyboard.press('PageUp');
    await expect(excludeButtons(page)).toHaveCount(4);
    await expect(spots).toContainText('12.8%raw');
  });
}

test('Enter says that spots are open before it leaves them', async ({ pintally: { page } }) => {
  await openDemoYard(page);
  await startRound(page, 'Walnut from the lane', 9);
  await typeReading(page, '11.9');
  await page.keyboard.press('Enter');
  await expect(page.getByText('3 spots are open. Press Enter again to leave them.')).toBeVisible();
  await expect(page.getByRole('heading', { level: 1 })).toContainText('WAL-01');
  await page.waitForTimeout(400);
  await page.keyboard.press('Enter');
  await expect(page.getByRole('heading', { level: 1 })).toContainText('WAL-02');
});

test('a scanned label leads to its board, wherever the focus is, and is no value', async ({
  pintally: { page },
}) => {
  await openDemoYard(page);
  await startRound(page, 'Walnut from the lane', 9);
  await scanLabel(page, 'WAL-04');
  await expect(page.getByRole('heading', { level: 1 })).toContainText('WAL-04');
  await page.getByRole('button', { name: /^Undo last/ }).focus();
  await scanLabel(page, 'WAL-02');
  await expect(page.getByRole('heading', { level: 1 })).toContainText('WAL-02');
  await scanLabel(page, '1204');
  await expect(page.getByRole('alert')).toContainText('has no board 1204');
  await expect(page.getByRole('textbox')).toHaveValue('');
  await expect(excludeButtons(page)).toHaveCount(0);
});

test('a round that was finished too early is reopened and goes on', async ({ pintally: { page } }) => {
  await openDemoYard(page);
  await startRound(page, 'Walnut from the lane', 9);
  await typeReading(page, '11.9');
  await page.keyboard.press('End');
  await page.waitForTimeout(400);
  await page.keyboard.press('PageDown');
  await page.getByRole('button', { name: 'Finish the round' }).click();
  await expect(page.getByRole('heading', { level: 1 })).toBeFocused();
  await page.getByRole('button', { name: 'Reopen' }).click();
  await expect(page.getByRole('textbox')).toBeFocused();
  await expect(page.getByRole('heading', { level: 1 })).toContainText('WAL-01');
  await typeReading(page, '12.6');
  await expect(excludeButtons(page)).toHaveCount(2);
});

test('the next board comes by itself where that was chosen', async ({ pintally: { page } }) => {
  await openDemoYard(page);
  await startRound(page, 'Walnut from the lane', 9);
  await page.keyboard.press('?');
  await page.getByRole('radio', { name: 'After 2 s' }).check();
  await picture(page, 'round-keys-and-options');
  await page.keyboard.press('Escape');
  for (const value of ['11.9', '12.6', '12.1', '12.8']) await typeReading(page, value);
  await expect(nextStep(page)).toContainText(/Next board in [12] s\. Any key stops this\./);
  await picture(page, 'round-next-board-by-itself');
  await expect(page.getByRole('heading', { level: 1 })).toContainText('WAL-02');
  for (const value of ['12.3', '13.1', '12.4', '13.0']) await typeReading(page, value);
  await expect(nextStep(page)).toContainText('Next board in');
  await page.keyboard.press('Escape');
  await expect(nextStep(page)).toContainText('Press Enter for the next board.');
});

for (const { keepsScreenOn, ...size } of [
  { width: 800, height: 600, keepsScreenOn: true },
  { width: 800, height: 600, keepsScreenOn: false },
  { width: 1280, height: 860, keepsScreenOn: true },
]) {
  const where = `${size.width} x ${size.height}${keepsScreenOn ? '' : ' where the screen may turn off'}`;
  test(`all of a round is in sight at ${where}, under the demo banner too`, async ({
    pintally: { page },
  }) => {
    await page.setViewportSize(size);
    if (!keepsScreenOn) {
      // As in a browser without it.
      await page.addInitScript(() => Reflect.deleteProperty(Navigator.prototype, 'wakeLock'));
      await page.reload();
    }
    await openDemoYard(page);
    await startRound(page, 'Walnut from the lane', 9);
    const remark = page.getByText('The screen may turn off.');
    await expect(remark).toHaveCount(keepsScreenOn ? 0 : 1);
    if (!keepsScreenOn)
      expect(await remark.evaluate(({ scrollWidth, clientWidth }) => scrollWidth - clientWidth)).toBe(0);
    const isWhole = () =>
      page.evaluate(() => document.documentElement.scrollHeight <= innerHeight && scrollY === 0);
    await typeReading(page, '11.9');
    await expect(page.getByText('1 of 4 spots')).toBeVisible();
    expect(await isWhole(), 'one read').toBe(true);
    await typeReading(page, '145');
    await expect(page.getByRole('button', { name: 'Use 14.5%' })).toBeVisible();
    expect(await isWhole(), 'a slip').toBe(true);
    await picture(page, `round-typed-${where.replaceAll(' ', '-')}`);
    await page.keyboard.press('u');
    await expect(page.getByText('2 of 4 spots')).toBeVisible();
    await page.keyboard.press('Enter');
    await expect(page.getByText('2 spots are open. Press Enter again to leave them.')).toBeVisible();
    expect(await isWhole(), 'asked').toBe(true);
    for (const button of await page.getByRole('region', { name: 'Round' }).getByRole('button').all()) {
      const box = await button.boundingBox();
      const words = (await button.textContent()) ?? '';
      // A spot's name takes presses on the value under it, too.
      if (box) expect(box.height, words).toBeGreaterThanOrEqual(/^(Shell|Core),/.test(words) ? 36 : 48);
    }
  });
}

/** Where something is in the window, and whether the page was scrolled to show it. */
async function inSight(page: Page, part: Locator): Promise<boolean> {
  const box = await part.boundingBox();
  const { height } = page.viewportSize()!;
  return box !== null && box.y >= 0 && box.y + box.height <= height;
}

for (const size of [
  { width: 640, height: 430 },
  { width: 800, height: 600 },
]) {
  test(`the value field and the spot to probe stay in sight at ${size.width} x ${size.height}`, async ({
    pintally: { page },
  }) => {
    await page.setViewportSize(size);
    await openDemoYard(page);
    await startRound(page, 'Walnut from the lane', 50);
    for (const value of ['11.9', '12.6', '12.1']) {
      await typeReading(page, value);
      await expect(page.getByRole('textbox')).toHaveValue('');
      await expect.poll(() => inSight(page, page.getByRole('textbox'))).toBe(true);
      expect(await inSight(page, nextStep(page))).toBe(true);
    }
    await typeReading(page, '145');
    await expect(page.getByRole('button', { name: 'Use 14.5%' })).toBeVisible();
    // The last row of tools, under a slip with its button.
    for (const tool of ['Go back', 'Finish']) {
      expect(await inSight(page, page.getByRole('button', { name: tool })), tool).toBe(true);
    }
    await picture(page, `round-typed-${size.width}-spots`);
  });
}

test('a question leaves the round where it is, and its buttons leave the field room', async ({
  pintally: { page },
}) => {
  await openDemoYard(page);
  await startRound(page, 'Walnut from the lane', 50);
  await typeReading(page, '11.9');
  const strip = page.getByRole('navigation', { name: 'Boards of this round' });
  const before = await strip.boundingBox();
  await page.keyboard.press('?');
  await expect(page.getByRole('dialog')).toBeVisible();
  // Below all keys, in a window that has no room for them.
  await page.setViewportSize({ width: 1280, height: 500 });
  const close = page.getByRole('dialog').getByRole('button', { name: 'Close' });
  await expect(close).toBeFocused();
  await expect(close).toBeInViewport({ ratio: 1 });
  await expect(page.getByRole('heading', { name: 'Keys and options' })).toBeInViewport();
  await picture(page, 'round-keys-in-a-low-window');
  await page.setViewportSize({ width: 1280, height: 860 });
  // Its boards are behind the question, where no reader finds them.
  expect(await page.locator('nav').last().boundingBox()).toEqual(before);
  await page.keyboard.press('Escape');
  await page.keyboard.press('Delete');
  const dialog = page.getByRole('dialog');
  const field = await dialog.getByRole('textbox').boundingBox();
  const button = await dialog.getByRole('button', { name: 'Exclude', exact: true }).boundingBox();
  expect(button!.y - (field!.y + field!.height)).toBeGreaterThanOrEqual(8);
});

test('in a narrow window, what a reading is corrected for leaves its button free', async ({
  pintally: { page },
}) => {
  await page.setViewportSize({ width: 320, height: 640 });
  await openDemoYard(page);
  await goTo(page, 'Stacks');
  await page.getByRole('link', { name: 'Probe: Walnut from the lane' }).click();
  await page.getByRole('checkbox', { name: 'I don’t know' }).check();
  await page.getByRole('button', { name: 'Start the round' }).click();
  await expect(page.getByRole('heading', { level: 1 })).toContainText('Board');
  await typeReading(page, '11.9');
  const label = await page.getByText('corrected', { exact: true }).boundingBox();
  const button = await excludeButtons(page).boundingBox();
  // The button has a line of its own under it.
  expect(label!.y + label!.height).toBeLessThanOrEqual(button!.y);
});

test('digits typed while the question why closes are all in the field', async ({ pintally: { page } }) => {
  await openDemoYard(page);
  await startRound(page, 'Walnut from the lane', 50);
  await typeReading(page, '11.9');
  await typeReading(page, '12.6');
  await expect(page.getByText('2 of 4 spots')).toBeVisible();
  await page.keyboard.press('Delete');
  await page.getByRole('dialog').getByRole('button', { name: 'Wet face' }).click();
  await page.keyboard.type('7.1');
  await expect(page.getByRole('textbox')).toHaveValue('7.1');
  // The spot that the reading left open is the one to probe.
  await expect(nextStep(page)).toContainText(/^Core, .* left end/);
  await page.waitForTimeout(100);
  await page.keyboard.press('Enter');
  await expect(page.getByText('2 of 4 spots')).toBeVisible();
});

test('a half-typed value is there again after another screen and after a reload', async ({
  pintally: { page },
}) => {
  await openDemoYard(page);
  await startRound(page, 'Walnut from the lane', 50);
  await page.keyboard.type('12.', { delay: 60 });
  await page.getByRole('navigation').getByRole('link', { name: 'Meter' }).click();
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('Meter');
  await page.goBack();
  await expect(page.getByRole('textbox')).toHaveValue('12.');
  await page.reload();
  await expect(page.getByRole('textbox')).toHaveValue('12.');
  await typeReading(page, '4');
  await expect(page.getByText('1 of 4 spots')).toBeVisible();
  await expect(page.getByRole('textbox')).toHaveValue('');
});

test('a slow scan of a label that is no board leaves the field free for the next one', async ({
  pintally: { page },
}) => {
  await openDemoYard(page);
  await startRound(page, 'Walnut from the lane', 50);
  await page.keyboard.type('x145', { delay: 20 });
  await page.keyboard.press('Enter');
  await expect(page.getByRole('alert')).toBeVisible();
  await page.keyboard.type('WAL-04', { delay: 70 });
  await page.keyboard.press('Enter');
  await expect(page.getByRole('heading', { level: 1 })).toContainText('WAL-04');
  await expect(page.getByRole('textbox')).toHaveValue('');
  await expect(page.getByText(/x145/)).toHaveCount(0);
});

test('Enter on the last board neither ends the round nor asks again and again', async ({
  pintally: { page },
}) => {
  await openDemoYard(page);
  await startRound(page, 'Walnut from the lane', 50);
  await page.keyboard.press('End');
  await page.keyboard.press('PageDown');
  await expect(page.getByRole('dialog', { name: 'Finish the round?' })).toBeVisible();
  for (let presses = 0; presses < 3; presses++) {
    await page.keyboard.press('Enter');
    await expect(page.getByRole('dialog', { name: 'Finish the round?' })).toBeVisible();
  }
  await page.keyboard.press('Escape');
  await expect(page.getByRole('textbox')).toBeFocused();
});

test('a reading that is no number saves nothing and says so', async ({ pintally: { page } }) => {
  await openDemoYard(page);
  await startRound(page, 'Walnut from the lane', 9);
  await page.getByRole('textbox').fill('twelve');
  await page.keyboard.press('Enter');
  await expect(page.getByText(/not a number\. Nothing was saved/)).toBeVisible();
  await expect(excludeButtons(page)).toHaveCount(0);
  await expect(page.getByRole('textbox')).toHaveValue('twelve');
});

test('a round goes on where it was left after the window was closed', async ({ pintally: { page } }) => {
  await openDemoYard(page);
  await startRound(page, 'Pine for the porch', 15);
  for (const value of ['10.8', '11.5']) {
    await typeReading(page, value);
  }
  await expect(excludeButtons(page)).toHaveCount(2);
  await page.reload();
  await expect(excludeButtons(page)).toHaveCount(2);
  await page.getByRole('navigation').getByRole('link', { name: 'Stacks' }).click();
  await page.getByRole('link', { name: /Resume: Pine/ }).click();
  await expect(nextStep(page)).toContainText('right end');
});

test('in a low window a banner leaves the field where it can be typed in', async ({ pintally: { page } }) => {
  await page.setViewportSize({ width: 720, height: 560 });
  await openDemoYard(page);
  await startRound(page, 'Walnut from the lane', 9);
  await typeReading(page, '12..4');
  const banner = await page.getByRole('alert').boundingBox();
  const field = await page.getByRole('textbox').boundingBox();
  expect(field?.height).toBeGreaterThan(40);
  expect((field?.y ?? 0) + (field?.height ?? 0)).toBeLessThan(banner?.y ?? 0);
});
