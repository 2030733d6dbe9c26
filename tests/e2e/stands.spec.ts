/**
 * Moves, and how stacks and places end and come back: each is done, undone and redone in the window, by its notice, by
 * keys, or in the history.
 */
import { expect, type Page } from '@playwright/test';
import { settled } from './everywhere.ts';
import { test } from './pintally.ts';
import { goTo, openDemoYard, picture, pressRedo, pressUndo } from './walk.ts';

const open = async (page: Page, hash: string): Promise<void> => {
  await page.evaluate((to) => {
    location.hash = to;
  }, hash);
  await settled(page);
};
const dialogOf = (page: Page) => page.getByRole('dialog').last();
const choose = async (page: Page, more: string, what: string): Promise<void> => {
  await page.getByRole('button', { name: more, exact: true }).click();
  await page.getByRole('menuitem', { name: what, exact: true }).click();
};
/** Presses a button of the dialog, and waits until what it does is done. */
const press = async (page: Page, button: string): Promise<void> => {
  const dialogs = await page.getByRole('dialog').count();
  await dialogOf(page).getByRole('button', { name: button, exact: true }).click();
  await expect(page.getByRole('dialog')).toHaveCount(dialogs - 1);
};
const heading = (page: Page, name: string) => page.getByRole('heading', { level: 1, name });
const link = (page: Page, name: string) => page.getByRole('link', { name, exact: true });
/** A stack of the list, or a place. */
const card = (page: Page, name: string) => page.getByRole('heading', { level: 2, name, exact: true });

/**
 * Undoes what was just done, and redoes it.
 *
 * @param line    of the history
 * @param expect  what is seen where it is done, or is not
 */
async function undoAndRedo(
  page: Page,
  by: 'notice' | 'keys' | 'history',
  line: string,
  isSeen: (isDone: boolean) => Promise<void>,
): Promise<void> {
  const from = new URL(page.url()).hash;
  const row = page.getByRole('row').filter({ hasText: line }).first();
  await isSeen(true);
  for (const [what, told] of [
    ['Undo', `Undone: ${line}`],
    ['Redo', `Redone: ${line}`],
  ] as const) {
    if (by === 'keys') await (what === 'Undo' ? pressUndo : pressRedo)(page);
    if (by === 'notice')
      await page.getByRole('status').getByRole('button', { name: what, exact: true }).last().click();
    if (by === 'history') {
      await open(page, '#/history');
      await row.getByRole('button', { name: what }).click();
    }
    await expect(page.getByRole('status').filter({ hasText: told })).toBeVisible();
    if (by === 'history') {
      await expect(row.getByText('Undone', { exact: true })).toHaveCount(what === 'Undo' ? 1 : 0);
      await open(page, from);
    }
    await isSeen(what === 'Redo');
  }
}

test('moves are corrected, and a board put in another stack, each undone and redone', async ({
  pintally: { page },
}) => {
  await openDemoYard(page);
  await open(page, '#/boards/2');
  await page.getByRole('tab', { name: 'About' }).click();
  await page.getByRole('button', { name: 'Move', exact: true }).click();
  await dialogOf(page).getByLabel('To', { exact: true }).selectOption('Shop');
  await press(page, 'Move');
  const at = (place: string) => page.getByRole('button', { name: `Edit the move to ${place}` });
  await undoAndRedo(page, 'notice', 'Board WAL-02 moved to Shop.', (isDone) =>
    expect(at('Shop')).toHaveCount(isDone ? 1 : 0),
  );

  await test.step('a move is edited', async () => {
    await at('Shop').click();
    await dialogOf(page).getByLabel('To', { exact: true }).selectOption('Bench room');
    await picture(page, 'stands-edit-move');
    await press(page, 'Save');
    await undoAndRedo(
      page,
      'keys',
      'Place changed from Shop to Bench room on a move of board WAL-02.',
      async (isDone) => {
        await expect(at('Bench room')).toHaveCount(isDone ? 1 : 0);
        await expect(at('Shop')).toHaveCount(isDone ? 0 : 1);
      },
    );
  });

  await test.step('a move is deleted, which the changes of the board tell', async () => {
    await page.getByRole('button', { name: 'Delete the move to Bench room' }).click();
    await picture(page, 'stands-delete-move');
    await press(page, 'Delete');
    const line = 'A move of board WAL-02 to Bench room deleted.';
    await undoAndRedo(page, 'history', line, (isDone) =>
      expect(at('Bench room')).toHaveCount(isDone ? 0 : 1),
    );
    await page.getByRole('tab', { name: 'History' }).click();
    await expect(page.getByRole('table', { name: 'What was done' }).getByRole('row')).toHaveText([
      /What was done/,
      RegExp(line),
      /^Place changed/,
      /moved to/,
    ]);
    await picture(page, 'stands-changes', { fullPage: true });
  });

  await test.step('the board is put in another stack', async () => {
    await choose(page, 'More', 'Put in another stack');
    await dialogOf(page).getByLabel('Stack').selectOption('Red oak, north stack');
    await picture(page, 'stands-put-in-stack');
    await press(page, 'Put in stack');
    await undoAndRedo(
      page,
      'notice',
      'Board WAL-02 put in Red oak, north stack. Board WAL-02 moved to Fence row.',
      async (isDone) => {
        await expect(link(page, 'Red oak, north stack')).toHaveCount(isDone ? 1 : 0);
        await expect(link(page, 'Walnut from the lane')).toHaveCount(isDone ? 0 : 1);
      },
    );
  });
});

test('stacks are merged, reopened, closed and deleted, each undone and redone', async ({
  pintally: { page },
}) => {
  await openDemoYard(page);
  const maple = 'Maple for the kitchen';
  const isListed = async (name: string, isHere: boolean) => {
    const from = new URL(page.url()).hash;
    await open(page, '#/stacks');
    await expect(card(page, name)).toHaveCount(isHere ? 1 : 0);
    await open(page, from);
  };

  await test.step('merged', async () => {
    await open(page, '#/stacks/3');
    await choose(page, 'More', 'Merge into another stack');
    await dialogOf(page).getByLabel('Merge into').selectOption('Walnut from the lane');
    await picture(page, 'stands-merge-stack');
    await press(page, 'Merge');
    await expect(heading(page, 'Walnut from the lane')).toBeVisible();
    const line = `Stack ${maple} merged into Walnut from the lane: 8 boards.`;
    await undoAndRedo(page, 'keys', line, (isDone) => isListed(maple, !isDone));
    await expect(page.getByText('14 boards').first()).toBeVisible();
  });

  await test.step('reopened', async () => {
    await open(page, '#/stacks');
    await page.getByText('Closed stacks: 1').click();
    await picture(page, 'stands-closed-stacks', { fullPage: true });
    await link(page, maple).click();
    await expect(page.getByText(/^Closed on .*\. Merged into Walnut from the lane\./)).toBeVisible();
    await picture(page, 'stands-closed-stack');
    await page.getByRole('button', { name: 'Reopen' }).click();
    await press(page, 'Reopen');
    await undoAndRedo(page, 'notice', `Reopened: stack ${maple}.`, (isDone) =>
      expect(page.getByText(/^Closed on /)).toHaveCount(isDone ? 0 : 1),
    );
  });

  await test.step('not deleted, as rounds are on record, but closed', async () => {
    await choose(page, 'More', 'Delete stack');
    await dialogOf(page).getByRole('button', { name: 'Delete', exact: true }).click();
    await expect(dialogOf(page).getByText(/Nothing was deleted\. Close it instead\./)).toBeVisible();
    await picture(page, 'stands-delete-refused');
    await press(page, 'Cancel');
    await choose(page, 'More', 'Close stack');
    await press(page, 'Close stack');
    await undoAndRedo(page, 'history', `Closed: stack ${maple}.`, (isDone) =>
      expect(page.getByText(/^Closed on /)).toHaveCount(isDone ? 1 : 0),
    );
  });

  await test.step('one that was added by mistake is deleted', async () => {
    await open(page, '#/stacks');
    await page.getByRole('button', { name: 'Add a stack' }).click();
    await dialogOf(page).getByLabel('Name').fill('Mistake');
    await dialogOf(page).getByLabel('Place').selectOption('Shop');
    await dialogOf(page).getByLabel('Use').selectOption({ index: 1 });
    await press(page, 'Add stack');
    await open(page, '#/stacks');
    await page.getByRole('link', { name: 'Mistake' }).first().click();
    await expect(heading(page, 'Mistake')).toBeVisible();
    await choose(page, 'More', 'Delete stack');
    await press(page, 'Delete');
    await expect(heading(page, 'Stacks')).toBeVisible();
    await undoAndRedo(page, 'keys', 'Stack Mistake deleted.', (isDone) => isListed('Mistake', !isDone));
  });
});

test('places are merged, reopened, closed and deleted, each undone and redone', async ({
  pintally: { page },
}) => {
  await openDemoYard(page);
  await goTo(page, 'Places');
  const isListed = (name: string, isHere: boolean) => expect(card(page, name)).toHaveCount(isHere ? 1 : 0);

  await test.step('merged', async () => {
    await choose(page, 'More: Shop', 'Merge into another place');
    await dialogOf(page).getByLabel('Merge into').selectOption('Bench room');
    await dialogOf(page).getByText('The air of Shop').click();
    await picture(page, 'stands-merge-place');
    await press(page, 'Merge');
    const line = 'Place Shop merged into Bench room, with the air of Shop.';
    await undoAndRedo(page, 'notice', line, async (isDone) => {
      await isListed('Shop', !isDone);
      await expect(
        page.getByRole('list', { name: `Stacks at ${isDone ? 'Bench room' : 'Shop'}` }),
      ).toContainText('Pine for the porch');
    });
  });

  await test.step('reopened', async () => {
    await page.getByText('Closed places: 1').click();
    await page.getByRole('button', { name: 'Reopen Shop' }).click();
    await picture(page, 'stands-reopen-place');
    await press(page, 'Reopen');
    await undoAndRedo(page, 'keys', 'Reopened: place Shop.', (isDone) => isListed('Shop', isDone));
  });

  await test.step('closed, where nothing is there', async () => {
    await choose(page, 'More: Bench room', 'Close place');
    await dialogOf(page).getByRole('button', { name: 'Close place' }).click();
    await expect(dialogOf(page).getByText(/^Bench room is in use by Pine for the porch\./)).toBeVisible();
    await press(page, 'Cancel');
    await choose(page, 'More: Shop', 'Close place');
    await press(page, 'Close place');
    await undoAndRedo(page, 'history', 'Closed: place Shop.', (isDone) => isListed('Shop', !isDone));
  });

  await test.step('one where nothing ever was is deleted', async () => {
    await page.getByText('Closed places: 1').click();
    await page.getByRole('button', { name: 'Delete Shop' }).click();
    await press(page, 'Delete');
    await undoAndRedo(page, 'notice', 'Place Shop deleted.', (isDone) =>
      expect(page.getByText('Closed places: 1')).toHaveCount(isDone ? 0 : 1),
    );
    await open(page, '#/history');
    await picture(page, 'stands-history', { fullPage: true });
  });
});
