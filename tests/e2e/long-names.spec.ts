import { expect, type Page } from '@playwright/test';
import { test } from './pintally.ts';
import { goTo, openDemoYard, picture, startRound } from './walk.ts';

/** As long as a name may be, without a space to break it at. */
const LONG = 'Quartersawnwhiteoakfromthefarendoftheorchardwallthatfellinthewinterstormof2026aa';

/** Whatever is wider than what it is in, by its class. */
const burst = (page: Page) =>
  page.evaluate(() =>
    [
      document.documentElement,
      ...document.querySelectorAll('article, dialog, [role=dialog], section, header'),
    ]
      .filter(({ scrollWidth, clientWidth }) => scrollWidth > clientWidth + 4)
      .map(({ localName, className, scrollWidth }) => `${localName}.${className} is ${scrollWidth} px`),
  );

/** What is chosen in a select, the lines that show it, and whether they are within its border. */
const chosenIn = (page: Page, label: string) =>
  page.getByLabel(label, { exact: true }).evaluate((element) => {
    const select = element as HTMLSelectElement;
    const shown = getComputedStyle(select.parentElement!, '::after');
    const { width, height } = select.getBoundingClientRect();
    return {
      isWhole: shown.content.includes(select.selectedOptions[0]!.label),
      lines: Math.round(Number.parseFloat(shown.height) / Number.parseFloat(shown.lineHeight)),
      isWithin: Number.parseFloat(shown.width) < width && Number.parseFloat(shown.height) < height,
    };
  });

for (const [locale, label, use] of [
  ['en-US', 'Use', /^Furniture and cabinets, heated rooms/],
  ['de-DE', 'Verwendung', /^Möbel und Schränke, beheizte Räume/],
] as const) {
  test.describe(locale, () => {
    test.use({ locale });
    test('a use can be read whole where it is chosen', async ({ pintally: { page } }) => {
      await expect(page.getByLabel(label, { exact: true }).locator('option:checked')).toHaveText(use);
      const lines: number[] = [];
      for (const width of [1280, 900, 720, 320]) {
        await page.setViewportSize({ width, height: 860 });
        const shown = await chosenIn(page, label);
        expect.soft(shown, `${width} px wide`).toMatchObject({ isWhole: true, isWithin: true });
        lines.push(shown.lines);
      }
      // Too long for one line at 900 px, where the demo yard is beside the form.
      expect(lines[1]).toBe(2);
    });
  });
}

test('a long name breaks within its card, its page and its forms', async ({ pintally: { page } }) => {
  await openDemoYard(page);
  const nameIn = (form: string) => page.getByRole('dialog', { name: form }).getByLabel('Name');
  await page.getByRole('button', { name: 'Add a stack' }).click();
  await page.getByRole('button', { name: 'Add another place' }).click();
  await nameIn('Add a place').fill(LONG);
  await page.getByRole('button', { name: 'Add', exact: true }).click();
  await expect(nameIn('Add a place')).toHaveCount(0);
  for (const width of [1280, 900, 720, 320]) {
    await page.setViewportSize({ width, height: 860 });
    const shown = await chosenIn(page, 'Place');
    expect.soft(shown, `its place at ${width} px`).toMatchObject({ isWhole: true, isWithin: true });
    expect.soft(shown.lines, `its place at ${width} px`).toBeGreaterThan(1);
  }
  await picture(page, 'long-place-chosen');
  await nameIn('Add a stack').fill(LONG);
  await page.getByRole('button', { name: 'Add stack' }).click();
  for (const width of [1280, 800, 320]) {
    await page.setViewportSize({ width, height: 860 });
    await expect(page.getByRole('heading', { level: 1 })).toHaveText(LONG);
    expect.soft(await burst(page), `the stack at ${width} px`).toEqual([]);
    await page.getByRole('button', { name: 'Add boards' }).first().click();
    await expect(page.getByRole('dialog')).toBeVisible();
    expect.soft(await burst(page), `its form at ${width} px`).toEqual([]);
    await page.keyboard.press('Escape');
    await page.goto(page.url().replace(/#.*/, '#/stacks'));
    await expect(page.getByRole('article', { name: LONG })).toBeVisible();
    expect.soft(await burst(page), `its card at ${width} px`).toEqual([]);
    await page.getByRole('article', { name: LONG }).scrollIntoViewIfNeeded();
    await picture(page, `long-name-${width}`);
    await page.getByRole('link', { name: LONG, exact: true }).click();
  }
});

test('a stack with a long name breaks where its place lists it', async ({ pintally: { page } }) => {
  await openDemoYard(page);
  await page.getByRole('article').first().getByRole('link').first().click();
  await page.getByRole('button', { name: 'More', exact: true }).first().click();
  await page.getByRole('menuitem', { name: 'Edit stack' }).click();
  const form = page.getByRole('dialog');
  await form.getByLabel('Name').fill(LONG);
  await form.getByRole('button', { name: 'Save' }).click();
  await expect(form).toHaveCount(0);
  for (const width of [1280, 320]) {
    await page.setViewportSize({ width, height: 860 });
    await goTo(page, 'Places');
    const stack = page.getByRole('link', { name: LONG });
    await expect(stack).toBeVisible();
    expect.soft(await burst(page), `at ${width} px`).toEqual([]);
    expect
      .soft((await stack.boundingBox())?.height, `to be pressed at ${width} px`)
      .toBeGreaterThanOrEqual(44);
  }
  await picture(page, 'long-stack-at-its-place');
});

test('a meter with a long name breaks on its page, in the round and in its choice', async ({
  pintally: { page },
}) => {
  await openDemoYard(page);
  await goTo(page, 'Meter');
  await page.getByRole('button', { name: 'Add a hand meter' }).click();
  const form = page.getByRole('dialog');
  await form.getByLabel('Name').fill(LONG);
  await form.getByText(LONG, { exact: true }).click();
  await form.getByRole('button', { name: 'Save' }).click();
  await expect(form).toHaveCount(0);
  for (const width of [1280, 800, 320]) {
    await page.setViewportSize({ width, height: 860 });
    await expect(page.getByRole('heading', { name: LONG })).toBeVisible();
    expect.soft(await burst(page), `the meter's page at ${width} px`).toEqual([]);
  }
  await page.setViewportSize({ width: 1280, height: 860 });
  await startRound(page, 'Walnut from the lane', 9);
  await page.keyboard.press('1');
  for (const width of [1280, 800, 320]) {
    await page.setViewportSize({ width, height: 860 });
    const meter = page.getByRole('button', { name: LONG });
    await expect(meter).toBeVisible();
    expect.soft(await burst(page), `the round at ${width} px`).toEqual([]);
    const { x, width: wide } = (await meter.boundingBox())!;
    expect.soft(x + wide, `the meter's button at ${width} px`).toBeLessThanOrEqual(width);
    await picture(page, `long-meter-${width}`);
    await meter.click();
    await expect(page.getByRole('dialog')).toBeVisible();
    expect.soft(await burst(page), `its choice at ${width} px`).toEqual([]);
    await page.keyboard.press('Escape');
    await expect(page.getByRole('dialog')).toHaveCount(0);
  }
});
