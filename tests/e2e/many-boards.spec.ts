import { mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, test } from '@playwright/test';
import { openYard } from '../../electron/store/yard.ts';
import { newBoardSchema, unknownOfBoard } from '../../shared-core/contract/yard.ts';
import { builtInEndUses, builtInSpecies } from '../../shared-core/wood/species/built-in.ts';
import { startPintally } from './pintally.ts';
import { picture } from './walk.ts';

const BOARDS = 100_000;

test('100,000 boards scroll, and are walked and selected by keys alone', async ({ page }) => {
  const dataDir = mkdtempSync(join(tmpdir(), 'pintally-many-'));
  fill(join(dataDir, 'yard.sqlite'));
  const { stop } = await startPintally(page, { dataDir });
  await page.evaluate(() => {
    location.hash = '#/boards';
  });
  const table = page.getByRole('table', { name: 'Boards' });
  await expect(table.getByRole('link', { name: 'B000001' })).toBeVisible();
  await expect(table).toHaveAttribute('aria-rowcount', `${BOARDS + 1}`);

  // The wheel leads far down, and the rows there come.
  const frame = page.getByRole('group', { name: 'Boards' });
  await frame.evaluate((element) => element.scrollTo(0, element.scrollHeight / 2));
  const middle = table.getByRole('link', { name: /^B0[45]/ }).first();
  await expect(middle).toBeVisible();
  expect(await table.getByRole('row').count()).toBeLessThan(80);

  await table.getByRole('link', { name: 'B000001' }).focus();
  await page.keyboard.press('End');
  await expect(table.getByRole('link', { name: `B${BOARDS}` })).toBeFocused();
  await expect(table.getByRole('link', { name: `B${BOARDS}` })).toBeInViewport();
  await picture(page, 'boards-100000');
  await page.keyboard.press('PageUp');
  await expect(page.getByRole('row').filter({ has: page.locator(':focus') })).toBeInViewport();
  await page.keyboard.press('Home');
  await page.keyboard.press('Space');
  await page.keyboard.press('ArrowDown');
  await page.keyboard.press('ArrowDown');
  await page.keyboard.press('Shift+Space');
  await expect(page.getByText('3 of 100,000 boards selected')).toBeVisible();
  await page.keyboard.press('Enter');
  await expect(page.getByRole('heading', { level: 1 })).toContainText('B000003');
  await page.goto('about:blank');
  await stop();
});

/** Of every board, but its ID. */
const board = newBoardSchema.omit({ code: true, stackId: true }).parse({
  speciesId: 'walnut-black',
  thicknessMm: 27,
  ...unknownOfBoard,
});

function fill(file: string): void {
  const yard = openYard(file);
  yard.species.bringUpToDate(builtInSpecies);
  yard.endUses.bringUpToDate(builtInEndUses);
  yard.transaction(() => {
    const air = Array.from({ length: 12 }, () => ({ tempC: 12, rh: 0.7 }));
    const placeId = yard.places.add({
      name: 'Yard',
      kind: 'outdoors',
      air,
      airSource: null,
      airMovement: null,
    });
    const stackId = yard.stacks.add({
      name: 'All',
      placeId,
      endUseId: 'furniture',
      topCover: 'covered',
      note: '',
    });
    for (let number = 1; number <= BOARDS; number++) {
      const code = `B${String(number).padStart(6, '0')}`;
      yard.boards.add({ ...board, code, stackId }, placeId, '2026-01-01T00:00:00.000Z');
    }
  });
  yard.close();
}
