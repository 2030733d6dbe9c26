/** A move is planned and made, and a board is reserved for a project that needs it by a day. */
import { readFileSync } from 'node:fs';
import { expect } from '@playwright/test';
import ICAL from 'ical.js';
import { settled } from './everywhere.ts';
import { test } from './pintally.ts';
import { goTo, openDemoYard, picture } from './walk.ts';

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
  await page.getByRole('button', { name: 'New project …' }).click();
  await page.getByRole('textbox', { name: 'Name' }).fill('Dining table');
  await page.getByRole('spinbutton', { name: /year/ }).focus();
  await page.keyboard.type('20990615');
  await page.getByRole('button', { name: 'Add a project' }).click();
  const reserve = page.getByRole('dialog', { name: 'Reserve the board' });
  await expect(reserve.getByLabel('Project')).toContainText('Dining table');
  await reserve.getByRole('button', { name: 'Reserve' }).click();
  await page.getByRole('link', { name: /^Reserved for Dining table, needed/ }).click();
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

  await page.getByRole('button', { name: 'Done today: Walnut from the lane' }).click();
  await expect(page.getByText('Walnut from the lane moved to Bench room.')).toBeVisible();
  await expect(page.getByText('Move Walnut from the lane to Bench room')).toHaveCount(0);
  await expect(project).toContainText('Bench room');
});
