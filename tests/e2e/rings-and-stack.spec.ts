import { expect } from '@playwright/test';
import { DAY_MS } from '../../shared-core/time.ts';
import { test } from './pintally.ts';
import { openDemoYard, picture } from './walk.ts';

test('boards added together fill the stack, and their end grain reaches the forecast and the cup', async ({
  pintally: { page },
}) => {
  await openDemoYard(page);
  await page.getByRole('link', { name: 'Red oak, north stack', exact: true }).click();
  await page.getByRole('button', { name: 'Add boards' }).first().click();
  const form = page.getByRole('dialog');
  await form.getByLabel('How many').fill('3');
  await form.getByLabel('Thickness').fill('54');
  // Nine boards are there, three to a layer.
  await form.getByLabel('Boards per layer').fill('2');
  await expect(form.getByText('Layers 4 to 5, from the bottom up.')).toBeVisible();
  await form.getByText('More fields').click();
  await form.getByLabel('Width').fill('240');
  const [year = '', month = '', day = ''] = new Date(Date.now() - 100 * DAY_MS)
    .toISOString()
    .slice(0, 10)
    .split('-');
  for (const [part, digits] of Object.entries({ year, month, day })) {
    await form.getByRole('spinbutton', { name: new RegExp(`^${part}, Sawn on`) }).focus();
    await page.keyboard.type(digits);
  }
  await form
    .getByRole('group', { name: 'Have they been here since they were sawn?' })
    .getByRole('radio', { name: 'Yes' })
    .check();
  await form.getByLabel('Sawing').selectOption('Flat-sawn');
  await form.getByLabel('Bark side').selectOption('Up');
  await form.getByRole('button', { name: 'Add 3 boards' }).click();

  const stackOrder = page.getByRole('table', { name: 'The stack, from its end' });
  const top = stackOrder.getByRole('row', { name: /^Layer 5/ }).getByRole('link');
  await expect(top).toHaveAccessibleName(
    // What comes after it is the plan's word on what to probe next.
    /^OAK-12 not probed yet flat-sawn, bark side up( probe next)?$/,
  );
  await expect(stackOrder.getByRole('row', { name: /^Layer 4/ }).getByRole('link')).toHaveCount(2);
  await picture(page, 'stack-filled');

  // Two of them are turned and moved down into the lowest layer, bark and all.
  for (const code of ['OAK-11', 'OAK-12']) await page.getByLabel(`Select ${code}`).check();
  await page.getByRole('button', { name: 'Edit boards' }).click();
  await form.getByRole('checkbox', { name: 'Bark side' }).check();
  await form.getByRole('checkbox', { name: 'Layers' }).check();
  await form.getByRole('combobox', { name: 'Bark side' }).selectOption('Up, bark still on');
  await form.getByLabel('Boards per layer').fill('5');
  await form.getByLabel('First column').fill('4');
  await form.getByRole('button', { name: 'Save' }).click();
  const lowest = stackOrder.getByRole('row', { name: /^Layer 1/ }).getByRole('link');
  await expect(lowest).toHaveCount(5);
  await expect(lowest.last()).toHaveAccessibleName(
    /^OAK-12 not probed yet flat-sawn, bark side up, bark still on( probe next)?$/,
  );

  await lowest.last().click();
  await page.getByText('Based on', { exact: true }).click();
  const basis = page.getByRole('region', { name: 'Worth knowing' });
  await expect(basis.getByText(/^Layer 1, over the ground in Fence row/)).toBeVisible();
  await expect(basis.getByText(/^Bark on its upper face/)).toBeVisible();
  await page.getByRole('tab', { name: 'Shrinkage and cup' }).click();
  const cup = page.getByRole('region', { name: 'Cup' });
  await expect(cup.getByText(/Distance from pith unknown: 150 mm assumed/)).toBeVisible();
  await expect(cup.getByText(/Take the bark off its upper face/)).toBeVisible();

  // The pith is found: nothing is left to guess of its rings, and so near to it the board cups more.
  const cupAtTarget = async () =>
    Number(
      /^At 13.5%([\d.]+) mm across/.exec((await cup.getByRole('figure').last().textContent()) ?? '')?.[1],
    );
  const guessed = await cupAtTarget();
  await page.getByRole('button', { name: 'Edit', exact: true }).click();
  await form.getByLabel('Distance from pith').fill('75');
  await form.getByRole('button', { name: 'Save' }).click();
  await expect(cup.getByText(/Distance from pith unknown/)).toHaveCount(0);
  await expect.poll(cupAtTarget).toBeGreaterThan(1.3 * guessed);
  await picture(page, 'board-with-bark');
});

test('a stack and its table fill a wide window', async ({ pintally: { page } }) => {
  await page.setViewportSize({ width: 2560, height: 1300 });
  await openDemoYard(page);
  await page.getByRole('link', { name: 'Red oak, north stack', exact: true }).click();
  const box = await page.getByRole('table', { name: 'Boards' }).boundingBox();
  expect(box!.x + box!.width).toBeGreaterThan(2400);
  await picture(page, 'stack-wide');
});

test('the boards of a stack begin on the first screen', async ({ pintally: { page } }) => {
  await openDemoYard(page);
  await page.getByRole('link', { name: 'Maple for the kitchen', exact: true }).click();
  for (const [width, height] of [
    [1280, 860],
    [800, 600],
  ] as const) {
    await page.setViewportSize({ width, height });
    const head = page.getByRole('table', { name: 'Boards' }).getByRole('row').first();
    const { y, height: high } = (await head.boundingBox())!;
    // With room for another font's lines.
    expect(y + high, `${width} x ${height}`).toBeLessThan(height - 12);
  }
});
