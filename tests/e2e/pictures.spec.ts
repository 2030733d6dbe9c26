/** Pictures of a board: added by every way, viewed by keys, deleted, and still there after a restart and a restore. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, type Page, test } from '@playwright/test';
import { settled } from './everywhere.ts';
import { hands } from './hands.ts';
import { startPintally } from './pintally.ts';
import { picture } from './walk.ts';

const files = join(import.meta.dirname, '../unit/pictures/files');
const fileAt = (name: string): string => join(files, name);

/** Gives the page a picture file as the clipboard, or a hand that drops it, would. */
async function give(page: Page, how: 'paste' | 'drop', name: string, mediaType: string): Promise<void> {
  const base64 = readFileSync(fileAt(name)).toString('base64');
  await page.evaluate(
    ([how, name, mediaType, base64]) => {
      const bytes = Uint8Array.from(atob(base64), (letter) => letter.charCodeAt(0));
      const given = new DataTransfer();
      given.items.add(new File([bytes], name, { type: mediaType }));
      const event = { bubbles: true, cancelable: true };
      const to = document.querySelector('h1') as HTMLElement;
      if (how === 'paste') to.dispatchEvent(new ClipboardEvent('paste', { ...event, clipboardData: given }));
      else {
        to.dispatchEvent(new DragEvent('dragover', { ...event, dataTransfer: given }));
        to.dispatchEvent(new DragEvent('drop', { ...event, dataTransfer: given }));
      }
    },
    [how, name, mediaType, base64] as const,
  );
}

test.use({ actionTimeout: 15_000 });
test('pictures go in, are viewed and deleted, and come back', async ({ page, browser }) => {
  const { dataDir, stop } = await startPintally(page);
  const { addFirstStack, press, key } = hands(page);
  await addFirstStack(2);
  const base = page.url().replace(/#.*/, '');
  await page.goto(`${base}#/boards/1`);
  await settled(page);
  const tiles = (on = page) => on.getByRole('list', { name: /^Pictures of/ }).getByRole('button');
  const told = (sentence: string | RegExp, on = page) => expect(on.getByText(sentence)).toBeVisible();

  await test.step('chosen, pasted and dropped', async () => {
    const asked = page.waitForEvent('filechooser');
    await press('button', 'Add pictures');
    const notes = { name: 'notes.txt', mimeType: 'text/plain', buffer: Buffer.from('no picture') };
    await (await asked).setFiles([
      { name: 'end.jpg', mimeType: 'image/jpeg', buffer: readFileSync(fileAt('board-end.jpg')) },
      notes,
    ]);
    await told('Picture added.');
    await told(/This is not a JPEG, PNG, or WebP picture/);
    await give(page, 'paste', 'board-end.png', 'image/png');
    await expect(tiles()).toHaveCount(2);
    await give(page, 'drop', 'board-end.webp', 'image/webp');
    await expect(tiles()).toHaveCount(3);
    await expect(page.getByText(/This is not a JPEG/)).toHaveCount(0);
    // Small pictures are drawn, each from bytes that the window may show.
    const widths = await tiles()
      .locator('img')
      .evaluateAll((images) => images.map((image) => (image as HTMLImageElement).naturalWidth));
    expect(widths).toEqual([24, 24, 24]);
  });

  await test.step('viewed and given a caption by keys', async () => {
    await press('button', /^Picture 1 of OAK-01/);
    const viewer = page.getByRole('dialog');
    await expect(viewer.getByRole('img')).toHaveJSProperty('naturalWidth', 24);
    await key('ArrowRight');
    await expect(page.getByRole('dialog', { name: 'Picture 2 of 3' })).toBeVisible();
    await press('button', 'Edit caption');
    await page.keyboard.type('Blue stain at the north end');
    await key('Enter');
    await expect(viewer.getByRole('figure')).toContainText('Blue stain at the north end');
    await picture(page, 'picture-viewer');
    await key('Escape');
    await expect(viewer).toHaveCount(0);
    await picture(page, 'pictures', { fullPage: true });
  });

  await test.step('deleted, undone and redone', async () => {
    await press('button', 'Blue stain at the north end');
    await press('button', 'Delete');
    await told('Picture deleted.');
    await expect(tiles()).toHaveCount(2);
    await page.getByRole('button', { name: 'Undo', exact: true }).last().click();
    await expect(tiles()).toHaveCount(3);
    await page.getByRole('button', { name: 'Redo', exact: true }).last().click();
    await expect(tiles()).toHaveCount(2);
    await page.getByRole('button', { name: 'Undo', exact: true }).last().click();
    await expect(page.getByRole('button', { name: 'Blue stain at the north end' })).toBeVisible();
  });

  await test.step('in a backup that is restored', async () => {
    await page.goto(`${base}#/backups`);
    await settled(page);
    await press('button', 'Back up now');
    await press('button', /^Look inside the backup of/);
    await expect(page.getByRole('dialog')).toContainText(/Pictures\s*3/);
    await key('Escape');
    await page.goto(`${base}#/boards/1`);
    await settled(page);
    await press('button', 'Blue stain at the north end');
    await press('button', 'Delete');
    await expect(tiles()).toHaveCount(2);
    await page.goto(`${base}#/backups`);
    await settled(page);
    await press('button', /^Restore the backup of/);
    await press('button', 'Restore this backup');
    await told('Yard restored.');
  });

  await test.step('there after a restart', async () => {
    await page.goto('about:blank');
    await stop();
    const other = await browser.newPage();
    const again = await startPintally(other, { dataDir });
    await other.goto(`${other.url().replace(/#.*/, '')}#/boards/1`);
    await expect(tiles(other)).toHaveCount(3);
    await other.getByRole('button', { name: 'Blue stain at the north end' }).click();
    await expect(other.getByRole('dialog').getByRole('img')).toHaveJSProperty('naturalWidth', 24);
    await other.close();
    await again.stop();
  });
});
