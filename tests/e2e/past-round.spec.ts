/** A page of a notebook is typed from the keyboard alone. Its values are invented. */
import { expect } from '@playwright/test';
import { settled } from './everywhere.ts';
import { hands } from './hands.ts';
import { test } from './pintally.ts';
import { findings, openDemoYard, picture, pressRedo, pressUndo, startRound, typeReading } from './walk.ts';

/** The demo's walnut was sawn by then. Canada writes year, month and day. */
const monthsAgo = new Date(Date.now() - 250 * 24 * 3600 * 1000).toLocaleDateString('sv').replaceAll('-', '');

test('a past round is typed as a grid, survives a reload, and is dated', async ({ pintally: { page } }) => {
  await openDemoYard(page);
  const { key, press, tabTo, fill } = hands(page);
  await page.goto(`${page.url().replace(/#.*/, '')}#/stacks/1`);
  await settled(page);
  const newestBefore = await page
    .getByRole('main')
    .getByText(/^Probed|probed/)
    .first()
    .textContent();

  await press('button', 'More');
  await page.getByRole('menuitem', { name: 'Enter a past round' }).focus();
  await key('Enter');
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('Enter a past round');
  await tabTo('spinbutton', /year/);
  await page.keyboard.type(monthsAgo);
  await fill('textbox', 'Wood temperature', '14');

  // Down the first column: the second is a slip of the decimal point.
  await tabTo('textbox', /^WAL-01, reading 1:/);
  for (const value of ['24.2', '241', '23.8', '24.6', '24.1', '23.9']) {
    await page.keyboard.type(value);
    await key('Enter');
  }
  // Enter went on at the top of the next column.
  await expect(page.getByRole('textbox', { name: /^WAL-01, reading 2:/ })).toBeFocused();
  await page.keyboard.type('26.1');
  await key('ArrowDown');
  await page.keyboard.type('26.4');
  await key('ArrowLeft');
  await key('ArrowLeft');
  await expect(page.getByRole('row', { name: /^WAL-02/ })).toContainText('241% was typed');
  await picture(page, 'past-round', { fullPage: true });
  await press('button', /^Use 24[.,]1/);
  await expect(page.getByRole('textbox', { name: /^WAL-02, reading 1:/ })).toHaveValue('24.1');

  // Two columns of a spreadsheet, pasted into a cell.
  await page.getByRole('textbox', { name: /^WAL-03, reading 2:/ }).focus();
  await page.evaluate(() => {
    const clipboardData = new DataTransfer();
    clipboardData.setData('text', '26.0\t24.0\r\n26.8\t24.7\r\n');
    const pasted = new ClipboardEvent('paste', { clipboardData, bubbles: true, cancelable: true });
    document.activeElement?.dispatchEvent(pasted);
  });
  await expect(page.getByRole('textbox', { name: /^WAL-04, reading 3:/ })).toHaveValue('24.7');

  await page.reload();
  await settled(page);
  await expect(page.getByRole('textbox', { name: /^WAL-06, reading 1:/ })).toHaveValue('23.9');
  await press('button', 'Save 12 readings');
  await expect(page.getByRole('heading', { name: 'Board by board' })).toBeVisible();
  await expect(page.getByText('12 readings of')).toBeVisible();
  expect(await findings(page)).toHaveLength(6);
  await press('link', 'Go to the stack');
  await settled(page);
  // The newest round stays the one of the newest day.
  expect(
    await page
      .getByRole('main')
      .getByText(/^Probed|probed/)
      .first()
      .textContent(),
  ).toBe(newestBefore);
  await press('button', 'More');
  await page.getByRole('menuitem', { name: 'Enter a past round' }).focus();
  await key('Enter');
  await expect(page.getByRole('textbox', { name: /^WAL-06, reading 1:/ })).toHaveValue('');
});

test('a past round tells where its boards were then; undone and redone as one', async ({
  pintally: { page },
}) => {
  const field = (label: string) => page.getByLabel(label, { exact: true }).and(page.locator('input'));
  await field('What do you call this stack?').fill('Oak by the mill');
  await field('Species').fill('white oak');
  await page.keyboard.press('Enter');
  await field('Thickness').fill('52');
  await field('How many boards?').fill('2');
  await page.getByRole('spinbutton', { name: /year/ }).focus();
  await page.keyboard.type('20250315');
  await page.getByRole('radio', { name: 'No, since today' }).check();
  await page.getByRole('button', { name: 'Add the stack only' }).click();
  await page.getByRole('button', { name: 'More', exact: true }).click();
  await page.getByRole('menuitem', { name: 'Enter a past round' }).click();
  await page.getByRole('spinbutton', { name: /year/ }).focus();
  await page.keyboard.type('20250610');
  await page.getByRole('radio', { name: 'Unknown' }).first().check();
  await page.getByRole('textbox', { name: /^OAK-01, reading 1:/ }).fill('24%');
  await page.getByRole('textbox', { name: /^OAK-02, reading 1:/ }).fill('25');
  await page.getByRole('button', { name: 'Save 2 readings' }).click();
  await expect(page.getByText('Choose where the boards were. Nothing was saved.')).toBeVisible();
  await expect(
    page.getByText(/^2 boards have been in Outdoors only since .* Were they there on Jun.* 2025\?$/),
  ).toBeVisible();
  await page.getByRole('radio', { name: 'Yes, since they were sawn' }).check();
  await picture(page, 'past-round-place', { fullPage: true });
  await page.getByRole('button', { name: 'Save 2 readings' }).click();
  await expect(page.getByRole('heading', { name: 'Board by board' })).toBeVisible();
  await expect(page.getByRole('main')).not.toContainText(/12:00|noon/);

  await page.getByRole('button', { name: 'Write a note' }).click();
  await page.getByRole('textbox', { name: 'Note' }).fill('Rain since noon');
  await page.keyboard.press('Enter');
  const note = page.getByRole('main').getByText('Rain since noon');
  await expect(note).toBeVisible();
  await pressUndo(page);
  await expect(note).toBeHidden();
  await pressRedo(page);
  await expect(note).toBeVisible();
  // The page itself is undone after what was written on it.
  await pressUndo(page);
  await expect(note).toBeHidden();

  await page.evaluate(() => (location.hash = '#/boards/1'));
  const since = page.getByRole('main').getByText(/Outdoors since Mar.* 2025/);
  await expect(since).toBeVisible();
  await pressUndo(page);
  await expect(
    page.getByText(/^Undone: Round of Jun.* 2025 entered for stack Oak by the mill\./),
  ).toBeVisible();
  await expect(since).toBeHidden();
  await pressRedo(page);
  await expect(since).toBeVisible();
});

test('a note on a reading is written in the round by one key, undone and redone', async ({
  pintally: { page },
}) => {
  await openDemoYard(page);
  await startRound(page, 'Walnut from the lane', 14);
  await typeReading(page, '14.2');
  await expect(page.getByRole('button', { name: /^Exclude .* reading 14\.2%/ })).toBeVisible();
  await page.keyboard.press('*');
  await page.getByRole('radio', { name: /^Last reading, 14\.2%/ }).check();
  const field = page.getByRole('dialog').getByRole('textbox', { name: 'Note' });
  await field.fill('Beside a knot');
  await field.press('Enter');
  await expect(field).toBeHidden();

  // In the round, the keys of undo are those of what is typed.
  await page.evaluate(() => (location.hash = '#/boards/1'));
  const note = page.getByRole('main').getByText('Beside a knot');
  await expect(note).toBeVisible();
  await pressUndo(page);
  await expect(note).toBeHidden();
  await pressRedo(page);
  await expect(note).toBeVisible();
});

test('a past page is typed in one window at a time, and saved twice only where a person says so', async ({
  pintally: { page },
  context,
}) => {
  await openDemoYard(page);
  const address = `${page.url().replace(/#.*/, '')}#/past-round/1`;
  const cell = (window: typeof page, name: RegExp) => window.getByRole('textbox', { name });
  await page.goto(address);
  const typePage = async (window: typeof page) => {
    await window.getByRole('spinbutton', { name: /year/ }).focus();
    await window.keyboard.type(monthsAgo);
    await window.getByRole('radio', { name: 'Unknown' }).first().check();
    await cell(window, /^WAL-01, reading 1:/).fill('24.2');
    await cell(window, /^WAL-02, reading 1:/).fill('23.9');
  };
  await typePage(page);

  const second = await context.newPage();
  await second.goto(address);
  await expect(second.getByText('This page is open in another window.')).toBeVisible();
  await expect(cell(second, /^WAL-01/)).toHaveCount(0);
  await picture(second, 'past-round-elsewhere');
  await second.getByRole('button', { name: 'Type it here' }).click();
  await expect(cell(second, /^WAL-02, reading 1:/)).toHaveValue('23.9');
  await expect(page.getByText('This page is open in another window.')).toBeVisible();
  await second.getByRole('button', { name: 'Save 2 readings' }).click();
  await expect(second.getByRole('heading', { name: 'Board by board' })).toBeVisible();
  // The first one has it again: blank, because it was saved.
  await expect(cell(page, /^WAL-01, reading 1:/)).toHaveValue('');
  await second.close();

  await typePage(page);
  await page.getByRole('button', { name: 'Save 2 readings' }).click();
  await expect(page.getByText('These readings were already saved')).toBeVisible();
  await picture(page, 'past-round-twice', { fullPage: true });
  // Another reading is another page.
  await cell(page, /^WAL-02, reading 1:/).fill('23.8');
  await expect(page.getByRole('button', { name: 'Save 2 readings' })).toBeVisible();
  await cell(page, /^WAL-02, reading 1:/).fill('23.9');
  await page.getByRole('button', { name: 'Yes, save again' }).click();
  await expect(page.getByRole('heading', { name: 'Board by board' })).toBeVisible();
  await pressUndo(page);
  await expect(page.getByText(/^Undone: Round of .* entered for stack/)).toBeVisible();
  await pressRedo(page);
  await expect(page.getByText(/^Redone: Round of .* entered for stack/)).toBeVisible();
});

test('boards are added as a grid, one comes to a past page by its ID, and sold ones are found by buyer', async ({
  pintally: { page },
}) => {
  await openDemoYard(page);
  const open = (at: string) => page.goto(`${page.url().replace(/#.*/, '')}#/${at}`);
  const dialog = page.getByRole('dialog');
  await open('stacks/1');
  await page.getByRole('button', { name: 'Add boards' }).first().click();
  await dialog.getByLabel('How many').fill('2');
  await dialog.getByLabel('Thickness', { exact: true }).fill('27');
  await dialog.getByRole('button', { name: 'Type the size of each board' }).click();
  await dialog.getByRole('textbox', { name: 'Board 1: ID' }).fill('slab-1');
  await dialog.getByRole('textbox', { name: /^Board 1: Width/ }).fill('210');
  await page.keyboard.press('Enter');
  await expect(dialog.getByRole('textbox', { name: /^Board 2: Width/ })).toBeFocused();
  await page.keyboard.type('195');
  await dialog.getByRole('radio', { name: 'Yes' }).check();
  await dialog.getByRole('button', { name: 'Add 2 boards' }).click();
  await expect(page.getByRole('link', { name: 'SLAB-2' }).first()).toBeVisible();

  // Boards of one stack are no lines of another’s page.
  await open('past-round/2');
  await page.getByRole('spinbutton', { name: /year/ }).focus();
  await page.keyboard.type(monthsAgo);
  const other = page.getByLabel('ID of another board on the page');
  await other.fill('slab-9');
  await page.keyboard.press('Enter');
  await expect(page.getByRole('button', { name: 'Add board SLAB-9' })).toBeVisible();
  await other.fill('wal-01');
  await page.keyboard.press('Enter');
  await page.getByRole('textbox', { name: /^WAL-01, reading 1:/ }).fill('>40');
  await expect(page.getByRole('row', { name: /^WAL-01/ })).toContainText(/Corrected: above [\d.]+%/);

  for (const [id, buyer] of [
    [1, 'Smith'],
    [2, 'smith '],
  ] as const) {
    await open(`boards/${id}`);
    await settled(page);
    await page.getByRole('button', { name: 'More', exact: true }).click();
    await page.getByRole('menuitem', { name: 'Mark as sold' }).click();
    await dialog.getByLabel('Sold to').fill(buyer);
    await dialog.getByRole('button', { name: 'Mark as sold' }).click();
    await expect(page.getByText(/^Sold on /)).toBeVisible();
  }
  await open('boards');
  await page.getByRole('radio', { name: 'Left the yard' }).check();
  await page.getByRole('radio', { name: 'Sold' }).check();
  await page.getByLabel('Sold to').selectOption('Smith');
  const table = page.getByRole('table', { name: 'Boards' });
  await expect(table.getByRole('link', { name: /^WAL-0[12]$/ })).toHaveCount(2);
  const exportCsv = page.getByRole('button', { name: 'Export CSV' });
  await exportCsv.click();
  await expect(page.getByText(/^Exported\./)).toBeVisible();
  await expect(exportCsv).toBeFocused();
});
