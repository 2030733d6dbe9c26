/** A move is planned and made, and a board is reserved for a project that needs it by a day. */
import { readFileSync } from 'node:fs';
import { expect, type Locator, type Page } from '@playwright/test';
import ICAL from 'ical.js';
import { settled } from './everywhere.ts';
import { test } from './pintally.ts';
import { goTo, openDemoYard, picture, pressRedo, pressUndo } from './walk.ts';

/** What an act brought goes with it at Ctrl+Z, and is back at Ctrl+Shift+Z. */
async function undoneAndRedone(page: Page, brought: Locator): Promise<void> {
  await expect(brought).toBeVisible();
  await pressUndo(page);
  await expect(brought).toBeHidden();
  await pressRedo(page);
  await expect(brought).toBeVisible();
}

test('dates: a move is planned, a board reserved, all of it saved for a calendar', async ({
  pintally: { page },
}) => {
  await openDemoYard(page);
  await goTo(page, 'Dates');
  await settled(page);
  await page.getByRole('button', { name: 'Plan a move' }).click();
  const form = page.getByRole('dialog');
  await form.getByLabel('What to move').selectOption('Walnut from the lane');
  await form.getByLabel('To', { exact: true }).selectOption('Bench room');
  await form.getByLabel('Note').fill('With the trailer');
  await form.getByRole('button', { name: 'Plan a move' }).click();
  await expect(page.getByText('Move Walnut from the lane to Bench room')).toBeVisible();

  await page.goto(`${page.url().replace(/#.*/, '')}#/boards/3`);
  await settled(page);
  await page.getByRole('button', { name: 'Reserve' }).click();
  const reserve = page.getByRole('dialog', { name: 'Reserve the board' });
  await expect(reserve.getByLabel('Project')).toContainText('New project');
  await reserve.getByRole('textbox', { name: 'Name' }).fill('Dining table');
  await reserve.getByRole('spinbutton', { name: /year/ }).focus();
  await page.keyboard.type('20990615');
  await reserve.getByRole('button', { name: 'Reserve' }).click();
  const reserved = page.getByRole('link', { name: /^Reserved for Dining table, needed/ });
  await undoneAndRedone(page, reserved);

  // The same board is moved by a plan made on its page, and another found by part of its ID.
  await page.getByRole('button', { name: 'More', exact: true }).click();
  await page.getByRole('menuitem', { name: 'Plan a move' }).click();
  await form.getByLabel('To', { exact: true }).selectOption('Bench room');
  await form.getByRole('button', { name: 'Plan a move' }).click();
  await undoneAndRedone(page, page.getByRole('link', { name: /^Move to Bench room planned for/ }));
  await goTo(page, 'Dates');
  await page.getByRole('button', { name: 'Plan a move' }).click();
  await form.getByLabel('What to move').selectOption('One board …');
  await form.getByRole('combobox', { name: 'Board' }).fill('al-04');
  await page.getByRole('option', { name: /^WAL-04/ }).click();
  await form.getByLabel('To', { exact: true }).selectOption('Bench room');
  await form.getByRole('button', { name: 'Plan a move' }).click();
  await expect(page.getByText('Move WAL-04 to Bench room')).toBeVisible();
  await page.getByRole('button', { name: 'Delete the planned move of WAL-04' }).click();
  await expect(page.getByText('Move WAL-04 to Bench room')).toHaveCount(0);
  await settled(page);
  const project = page.getByRole('region', { name: 'Dining table' });
  await expect(project.getByRole('row', { name: /WAL-03/ })).toContainText(/Yes|If moved|No|Unknown/);
  await picture(page, 'dates', { fullPage: true });

  const coming = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Save calendar file' }).click();
  const calendar = new ICAL.Component(ICAL.parse(readFileSync(await (await coming).path(), 'utf8')));
  const summaries = calendar.getAllSubcomponents('vevent').map((each) => new ICAL.Event(each).summary);
  expect(summaries).toContain('Move Walnut from the lane to Bench room');
  expect(summaries).toContain('Dining table needs 1 board');

  await page.getByRole('button', { name: 'Mark as moved today: Walnut from the lane' }).click();
  await expect(page.getByText('Walnut from the lane moved to Bench room.')).toBeVisible();
  await expect(page.getByText('Move Walnut from the lane to Bench room')).toHaveCount(0);
  await expect(project).toContainText('Bench room');
});
