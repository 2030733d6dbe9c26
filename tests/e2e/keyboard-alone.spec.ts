/** Every task without a mouse. Each stop of Tab must show that it has the focus, and no step may lose it. */
import { expect } from '@playwright/test';
import { settled } from './everywhere.ts';
import { hands } from './hands.ts';
import { test } from './pintally.ts';
import { excludeButtons, nextStep } from './walk.ts';

test('from an empty yard to the summary of a round', async ({ pintally: { page } }) => {
  const { key, tabTo, press, fill, reading, addFirstStack } = hands(page);
  await addFirstStack(2);
  await fill('textbox', 'Wood temperature', '12');
  await key('Enter');
  await expect(page.getByRole('heading', { level: 1 })).toContainText('OAK-01');
  await reading('12.4');
  await reading('12.9');
  await expect(excludeButtons(page)).toHaveCount(2);
  await press('button', /^Exclude average reading 12[.,]4/);
  await press('button', 'Wet face');
  await expect(page.getByRole('button', { name: /^Include average reading/ })).toBeVisible();
  // The hands go on where they were: the next digits are the next reading.
  for (const value of ['12.5', '12.6']) await reading(value);
  await expect(nextStep(page)).toContainText('All spots read');
  await expect(page.getByRole('heading', { level: 1 })).toContainText('OAK-01');
  await key('Enter');
  await expect(page.getByRole('heading', { level: 1 })).toContainText('OAK-02');
  for (const value of ['12.4', '12.9', '12.6']) await reading(value);
  await key('Enter');
  await tabTo('button', 'Finish the round');
  // A key pressed at once is taken for one pressed twice.
  await page.waitForTimeout(500);
  await key('Enter');
  await expect(page.getByRole('heading', { name: 'Board by board' })).toBeVisible();
  await press('link', 'Go to the stack');
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('Oak by the gate');
});

test.describe('in the demo yard', () => {
  test.beforeEach(async ({ pintally: { page } }) => {
    await hands(page).press('button', 'Open the demo yard');
    await expect(page.getByText('Demo yard: invented data.')).toBeVisible();
  });

  test('a stack is added, boards to it, and the stack is moved', async ({ pintally: { page } }) => {
    const { key, press, fill, tabTo } = hands(page);
    await press('button', 'Add a stack');
    await fill('textbox', 'Name', 'Ash at the fence');
    await press('button', 'Add stack');
    await expect(page.getByRole('heading', { level: 1 })).toHaveText('Ash at the fence');
    await press('button', 'Add boards');
    await fill('combobox', 'Species', 'white ash');
    await key('Enter');
    await fill('textbox', 'Thickness', '27');
    await fill('textbox', 'How many', '3');
    await press('button', 'Add 3 boards');
    await expect(page.getByRole('link', { name: 'ASH-03' }).first()).toBeVisible();
    await press('button', 'More');
    // The first letter of Move stack.
    await key('m');
    await key('Enter');
    await tabTo('combobox', 'To');
    await key('End');
    await press('button', 'Move');
    await expect(page.getByText(/^Ash at the fence moved to/)).toBeVisible();
  });

  test('a board is opened, read, edited and moved', async ({ pintally: { page } }) => {
    const { key, press, fill, tabTo } = hands(page);
    await press('link', 'All boards');
    await tabTo('link', /^[A-Z]+-\d+$/);
    await key('ArrowDown');
    await key('Enter');
    await expect(page.getByRole('heading', { level: 1 })).toHaveText(/^[A-Z]+-\d+$/);
    // The forecast that comes pushes down what is below it.
    await settled(page);
    await tabTo('slider', /Moisture content/);
    const reader = page.locator(':focus');
    const last = await reader.getAttribute('aria-valuetext');
    await key('ArrowLeft');
    await expect(reader).not.toHaveAttribute('aria-valuetext', last ?? '');
    await tabTo('tab', /Readings/);
    await key('ArrowRight');
    await expect(page.getByRole('tab', { selected: true })).not.toHaveText(/Readings/);
    await key('End');
    await key('ArrowLeft');
    await expect(page.getByRole('heading', { name: 'About this board' })).toBeVisible();
    await press('button', 'Edit');
    await fill('textbox', 'Log', 'The gate log');
    await press('button', 'Save');
    await expect(page.getByRole('dialog')).toHaveCount(0);
    await expect(page.getByText('The gate log')).toBeVisible();
    await press('button', 'Move');
    await tabTo('combobox', 'To');
    await key('End');
    await press('button', 'Move');
    await expect(page.getByText(/ moved to /)).toBeVisible();
  });

  test('several boards are edited at once, and get labels', async ({ pintally: { page } }) => {
    const { key, press, fill } = hands(page);
    await press('link', 'All boards');
    await press('checkbox', /^Select [A-Z]+-\d+$/, ' ');
    await key('ArrowDown');
    await key(' ');
    await expect(page.getByText(/^2 of /)).toBeVisible();
    await press('button', 'Edit boards');
    await press('checkbox', 'Log', ' ');
    await fill('textbox', 'Log', 'The gate log');
    await press('button', 'Save');
    await expect(page.getByText(/^2 boards changed\./)).toBeVisible();

    await press('link', 'Labels');
    // Nobody tabs past a list that is still to come. Before calls are up to date, Save as PDF asks.
    await settled(page);
    await expect(page.getByText(/^Updating calls/)).toHaveCount(0, { timeout: 30_000 });
    await press('checkbox', 'Select all', ' ');
    const download = page.waitForEvent('download');
    await press('button', 'Save as PDF');
    expect((await download).suggestedFilename()).toMatch(/\.pdf$/);
    await page.evaluate(() => {
      window.print = () => {
        document.body.setAttribute('data-printed', '');
        dispatchEvent(new Event('afterprint'));
      };
    });
    await press('button', 'Print');
    await expect(page.locator('body')).toHaveAttribute('data-printed', '');
    await press('button', 'Yes, printed');
    await expect(page.getByText('27 labels marked as printed.')).toBeVisible();
  });

  test('what comes in above the focus leaves it in sight', async ({ pintally: { page, stall } }) => {
    const { tabTo, key } = hands(page);
    // The screen's code comes from the host as well, in an idle moment.
    await page.waitForFunction(() =>
      performance.getEntriesByType('resource').some(({ name }) => name.includes('LabelsScreen')),
    );
    stall(4_000);
    await page.goto(`${page.url().replace(/#.*/, '')}#/labels?boards=1,2`);
    // A choice far down, while the boards and their labels are on their way.
    const call = page.getByRole('checkbox', { name: 'Call', exact: true });
    await expect(call).toBeVisible();
    await expect(page.getByRole('table')).toHaveCount(0);
    await tabTo('checkbox', 'Call');
    await settled(page);
    await expect(page.getByRole('region', { name: /page 1 of 1/i })).toBeAttached();
    await key(' ');
    await expect(call).not.toBeChecked();
    await expect(call).toBeFocused();
    await expect(call).toBeInViewport();
  });

  test('what comes in above the focus piece by piece leaves it in sight as well', async ({
    pintally: { page },
  }) => {
    const { tabTo } = hands(page);
    await page.goto(`${page.url().replace(/#.*/, '')}#/labels?boards=1,2`);
    await settled(page);
    await tabTo('checkbox', 'Call');
    const call = page.getByRole('checkbox', { name: 'Call', exact: true });
    await call.evaluate(async (box) => {
      for (let pieces = 0; pieces < 4; pieces++) {
        await new Promise((drawn) => requestAnimationFrame(drawn));
        const piece = document.createElement('div');
        piece.style.height = '2000px';
        box.closest('fieldset')?.before(piece);
      }
    });
    await expect(call).toBeInViewport();
    await expect(call).toBeFocused();
  });

  test('a place and a use are added, and units and theme changed', async ({ pintally: { page } }) => {
    const { key, press, fill, tabTo } = hands(page);
    await press('link', 'Places');
    await press('button', 'Add a place');
    await fill('textbox', 'Name', 'Attic');
    // At first it has the air of the yard outdoors.
    await tabTo('combobox', 'Air');
    await key('ArrowDown');
    await expect(page.getByRole('combobox', { name: 'Air', exact: true })).toHaveValue('station');
    await fill('combobox', 'Nearest weather station', 'asheville nc');
    await press('button', 'Add');
    await expect(page.getByRole('heading', { name: 'Attic' })).toBeVisible();

    await press('link', 'Species');
    await tabTo('tab', 'Species');
    await key('ArrowRight');
    await press('button', 'Add a use');
    await fill('textbox', 'Name', 'Toys');
    await fill('textbox', 'Lowest average', '6');
    await fill('textbox', 'Highest average', '9');
    await fill('textbox', /^Shell–core difference/, '2');
    await press('button', 'Add');
    await expect(page.getByRole('rowheader', { name: /^Toys/ })).toBeVisible();

    await press('link', 'Settings');
    await tabTo('radio', 'Metric (mm, kg, °C)');
    await key('ArrowDown');
    await expect(page.getByRole('radio', { name: 'US (in, lb, °F)' })).toBeChecked();
    await tabTo('radio', 'Same as the computer');
    await key('ArrowDown');
    await key('ArrowDown');
    await expect(page.locator('html')).toHaveAttribute('data-theme', 'dark');
  });

  test('a meter is connected, and its readings are saved', async ({ pintally: { page } }) => {
    const { key, press, fill } = hands(page);
    await press('link', 'Meter');
    await press('button', /simulated/);
    await expect(page.getByRole('button', { name: 'Disconnect' })).toBeVisible();
    await press('link', 'Stacks');
    await press('link', 'Probe: Walnut from the lane');
    await fill('textbox', 'Wood temperature', '12');
    await key('Enter');
    await expect(page.getByRole('button', { name: 'Save now' })).toBeVisible();
    await expect(excludeButtons(page)).toHaveCount(1, { timeout: 30_000 });
    await key('Backspace');
    // The simulated meter has pins that reach the core.
    await expect(page.getByRole('button', { name: /^Include shell reading/ })).toBeVisible();
    await key('?');
    await key('Escape');
    await key('PageDown');
    await expect(page.getByRole('heading', { level: 1 })).toContainText('WAL-02');
  });

  test('the demo is left and removed', async ({ pintally: { page } }) => {
    const { key, tabTo, press } = hands(page);
    await press('link', 'Settings');
    await expect(page.getByRole('heading', { level: 1 })).toHaveText('Settings');
    await tabTo('button', /^Demo yard/, 'Shift+Tab');
    await key('Enter');
    await key('ArrowDown');
    await key('Enter');
    await expect(page.getByRole('dialog')).toContainText('Remove the demo yard?');
    await key('Escape');
    await tabTo('button', /^Demo yard/);
    await key('Enter');
    await key('ArrowDown');
    await key('Enter');
    await press('button', 'Remove the demo yard');
    await expect(page.getByLabel('What do you call this stack?')).toBeVisible();
  });
});
