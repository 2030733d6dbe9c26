/** A chart in a real window: read with the keyboard alone, and saved as files. */
import { readFileSync } from 'node:fs';
import { expect } from '@playwright/test';
import { test } from './pintally.ts';
import { openDemoYard } from './walk.ts';

test('the EMC of a place is read by arrow keys, and saved as a picture', async ({ pintally: { page } }) => {
  await openDemoYard(page);
  await page.getByRole('navigation').getByRole('link', { name: 'Places' }).click();
  const shed = page.getByRole('region', { name: 'Pole shed' });
  await shed.getByRole('slider', { name: 'Values: EMC at Pole shed, by month' }).focus();
  await page.keyboard.press('Home');
  await page.keyboard.press('ArrowRight');
  await expect(shed.getByRole('status')).toContainText(
    /February.*EMC from readings: [\d.]+%.*EMC of typical air: [\d.]+%/,
  );

  const saved = async (item: string) => {
    const download = page.waitForEvent('download');
    await shed.getByRole('button', { name: 'Export' }).click();
    await page.getByRole('menuitem', { name: item }).click();
    return { name: (await download).suggestedFilename(), bytes: readFileSync(await (await download).path()) };
  };
  const svg = await saved('Save SVG');
  expect(svg.name).toBe('EMC-at-Pole-shed-by-month.svg');
  expect(svg.bytes.toString()).toMatch(/^<svg xmlns="http:\/\/www\.w3\.org\/2000\/svg"/);
  expect(svg.bytes.toString()).not.toContain('var(');
  const png = await saved('Save PNG');
  expect(png.name).toBe('EMC-at-Pole-shed-by-month.png');
  // PNG (ISO/IEC 15948), clauses 5.2 and 11.2.2: its signature, and its width after "IHDR".
  expect(png.bytes.subarray(0, 8)).toEqual(Buffer.from('89504e470d0a1a0a', 'hex'));
  expect(png.bytes.readUInt32BE(16)).toBe(2 * 992);
});
