/** A board is sold, another ripped, of which a piece is sold, and two are merged; each is undone and redone in the window. */
import { expect, type Page } from '@playwright/test';
import { settled } from './everywhere.ts';
import { test } from './pintally.ts';
import { openDemoYard, picture, pressRedo, pressUndo } from './walk.ts';

const openBoard = async (page: Page, id: number): Promise<void> => {
  await page.goto(`${page.url().replace(/#.*/, '')}#/boards/${id}`);
  await settled(page);
};
const chooseMore = async (page: Page, what: string): Promise<void> => {
  await page.getByRole('button', { name: 'More', exact: true }).click();
  await page.getByRole('menuitem', { name: what }).click();
};
/** The notice of what was done offers to undo it, and that of the undoing to redo it. */
async function undoAndRedo(page: Page, done: string, line: string): Promise<void> {
  const notice = (text: string) => page.getByRole('status').filter({ hasText: text });
  await notice(done).getByRole('button', { name: 'Undo' }).click();
  await notice(`Undone: ${line}`).getByRole('button', { name: 'Redo' }).click();
  await expect(notice(`Redone: ${line}`)).toBeVisible();
}

test('life of boards: sold, ripped into three, one piece sold, each undone and redone', async ({
  pintally: { page },
}) => {
  await openDemoYard(page);
  await openBoard(page, 2);
  await chooseMore(page, 'Mark as sold');
  await page.getByRole('dialog').getByRole('button', { name: 'Mark as sold' }).click();
  await undoAndRedo(page, 'WAL-02 marked as sold.', 'Marked as sold: board WAL-02.');
  await expect(page.getByText(/^Sold on /)).toBeVisible();

  await openBoard(page, 3);
  await chooseMore(page, 'Rip or crosscut');
  const cut = page.getByRole('dialog');
  await cut.getByLabel('Pieces').fill('3');
  await cut.getByLabel('Width of piece 3').fill('60 mm');
  await picture(page, 'life-cut');
  await cut.getByRole('button', { name: 'Save the cut' }).click();
  await undoAndRedo(page, 'WAL-03 ripped into 3 boards.', 'Board WAL-03 ripped into 3 boards.');
  await expect(page.getByText(/^Ripped on /)).toBeVisible();

  await page.getByRole('link', { name: 'WAL-03-1' }).click();
  await expect(page.getByRole('heading', { level: 1, name: 'WAL-03-1' })).toBeVisible();
  await settled(page);
  await expect(page.getByText(/, on WAL-03/).first()).toBeVisible();
  await chooseMore(page, 'Mark as sold');
  await page.getByRole('dialog').getByRole('button', { name: 'Mark as sold' }).click();
  await undoAndRedo(page, 'WAL-03-1 marked as sold.', 'Marked as sold: board WAL-03-1.');
  await picture(page, 'life-piece', { fullPage: true });
});

test('life of boards: two records of one board are merged, and it is renamed, each undone and redone', async ({
  pintally: { page },
}) => {
  await openDemoYard(page);
  await openBoard(page, 2);
  await chooseMore(page, 'Merge with another board');
  const merge = page.getByRole('dialog');
  await merge.getByLabel('Find the other board by its ID').fill('wal-01');
  await merge.getByRole('radio', { name: /^WAL-01 / }).check();
  await expect(merge.getByRole('group', { name: 'Which ID stays?' })).toBeVisible();
  await picture(page, 'life-merge');
  await merge.getByRole('button', { name: 'Merge', exact: true }).click();
  await undoAndRedo(page, 'WAL-01 merged into WAL-02.', 'Board WAL-01 merged into WAL-02.');
  await expect(page.getByText(/ · Merged with WAL-01/)).toBeVisible();
  await expect(page.getByText(/, on WAL-01/).first()).toBeVisible();
  await openBoard(page, 1);
  await expect(page.getByText(/^Merged into WAL-02 on /)).toBeVisible();
  await page.getByRole('link', { name: 'WAL-02' }).click();
  await expect(page.getByRole('heading', { level: 1, name: 'WAL-02' })).toBeVisible();

  await settled(page);
  await page.getByRole('button', { name: 'Edit', exact: true }).click();
  await page.getByRole('dialog').getByLabel('ID', { exact: true }).fill('slab-9');
  await page.getByRole('dialog').getByRole('button', { name: 'Save' }).click();
  await expect(page.getByRole('heading', { level: 1, name: 'SLAB-9' })).toBeVisible();
  await pressUndo(page);
  await expect(page.getByText(/^Undone: ID changed from WAL-02 to SLAB-9/)).toBeVisible();
  await expect(page.getByRole('heading', { level: 1, name: 'WAL-02' })).toBeVisible();
  await pressRedo(page);
  await expect(page.getByText(/^Redone: ID changed from WAL-02 to SLAB-9/)).toBeVisible();
  await expect(page.getByRole('heading', { level: 1, name: 'SLAB-9' })).toBeVisible();
});
