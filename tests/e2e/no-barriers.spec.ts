/**
 * Every screen, and every dialog, menu and popover that a button opens, against WCAG 2.1 at level AA and common good
 * practice as axe-core checks them; and in small windows, as at 200 % zoom.
 */
import { expect, type Locator, type Page } from '@playwright/test';
import { barriers } from './barriers.ts';
import { everywhere } from './everywhere.ts';
import { faintTexts } from './faint-texts.ts';
import { hidden } from './in-sight.ts';
import { test } from './pintally.ts';
import { goTo, openDemoYard, startRound, typeReading } from './walk.ts';

/** What must have been opened, whatever screens it is opened from: a name for each, as its button bears it. */
const layers = [
  'Remove the demo yard',
  'Add a stack',
  'Edit stack',
  'Add boards',
  'Edit boards',
  'Move boards',
  'Columns',
  'Move',
  'Edit',
  'Calendar',
  'Export',
  'Exclude',
  'Cut sections',
  'Weigh',
  'Add a place',
  'Add a species',
  'Add a use',
  'Add a check',
  'Go to …',
  'Wood # °C',
  'Keys and options',
  'Finish',
];

const opensAllLayers = (opened: readonly string[]) =>
  expect(
    layers.filter((layer) => !opened.some((name) => name.split('\n')[0]?.endsWith(`> ${layer}`))),
  ).toEqual([]);

/** A selector of what lies over the screen. */
const partOf = (layer: Locator): Promise<string> =>
  layer.evaluate((element) => (element.role === null ? ':popover-open' : `[role=${element.role}]`));

/** What starts to move, from now on. */
async function watchMotion(page: Page): Promise<void> {
  await page.addInitScript(() => {
    const moving: string[] = [];
    Object.assign(globalThis, { moving });
    for (const kind of ['animationstart', 'transitionrun'] as const) {
      addEventListener(
        kind,
        () => {
          for (const animation of document.getAnimations()) {
            const { target } = animation.effect as KeyframeEffect;
            if (Number(animation.effect?.getComputedTiming().endTime) > 0) {
              moving.push(`${target?.localName} ${target?.className}`);
            }
          }
        },
        true,
      );
    }
  });
}

const { poll: eventually } = expect.configure({ soft: true });

test.describe('everywhere', () => {
  test.use({ deviceScaleFactor: 2, contextOptions: { reducedMotion: 'reduce' } });

  // One walk for all of it: to go everywhere takes longer than to look.
  test('nothing has barriers in three themes, is too wide or covered in a small window, or moves', async ({
    pintally: { page },
  }) => {
    // A slow machine, busy with other tests too, was not through after ten minutes.
    test.setTimeout(1_200_000);
    await watchMotion(page);
    const usual = { width: 800, height: 600 };
    await page.setViewportSize(usual);
    await page.reload();
    // Themes change colors and nothing else: the other rules are checked once.
    const otherThemes = ['dark', 'high-contrast'].map((theme) => ({ theme, checked: new Set<string>() }));
    const show = (theme: string) =>
      page.evaluate((name) => {
        document.documentElement.dataset.theme = name;
      }, theme);
    const opened = await everywhere(page, async (where, layer) => {
      // 1280 x 860 at 200 %, and at 400 %.
      for (const [width, height] of [
        [640, 430],
        [320, 640],
      ] as const) {
        await page.setViewportSize({ width, height });
        // What measures itself is drawn again a moment later.
        await eventually(() => hidden(page), `${where}, ${width} px`).toEqual([]);
        if (layer) await expect.soft(layer, `${where}, ${width} px`).toBeVisible();
      }
      await page.setViewportSize(usual);
      // A list that opens while the page still takes on its size is closed again.
      await page.evaluate(() => new Promise((drawn) => requestAnimationFrame(() => setTimeout(drawn, 20))));
      for (const { theme, checked } of otherThemes) {
        await show(theme);
        expect.soft(await faintTexts(page, checked), `${where}, ${theme}`).toEqual([]);
      }
      await show('light');
      // What is behind was checked when it was on screen alone.
      const contrastIn = layer ? await partOf(layer) : undefined;
      // While a field's choices are shown, Tab closes them: what is hidden behind them cannot take the focus.
      const of = contrastIn === '[role=listbox]' ? contrastIn : undefined;
      expect.soft(await barriers(page, { of, contrastIn }), `${where}, light`).toEqual([]);
      const moving = await page.evaluate(() => (globalThis as unknown as { moving: string[] }).moving);
      expect.soft(moving, `${where}, moving`).toEqual([]);
    });
    opensAllLayers(opened);
  });
});

test.describe('small', () => {
  test.use({ deviceScaleFactor: 2, contextOptions: { reducedMotion: 'reduce' } });

  test('where one can go is behind one button, and what is on screen comes first', async ({
    pintally: { page },
  }) => {
    await openDemoYard(page);
    const heading = page.getByRole('heading', { level: 1 });
    const menu = page.getByRole('button', { name: 'Menu' });
    const labels = page.getByRole('link', { name: 'Labels', exact: true }).first();
    for (const [width, height] of [
      [400, 300],
      [320, 640],
    ] as const) {
      await page.setViewportSize({ width, height });
      await goTo(page, 'Stacks');
      expect((await page.getByRole('banner').boundingBox())?.height, `at ${width} px`).toBeLessThan(64);
      await menu.press('Enter');
      await page.keyboard.press('Escape');
      await expect(labels).toBeHidden();
      await expect(menu).toBeFocused();
      await page.keyboard.press('Enter');
      for (let tabs = 0; tabs < 4; tabs++) await page.keyboard.press('Tab');
      await page.keyboard.press('Enter');
      await expect(heading).toHaveText('Labels');
      await expect(heading).toBeFocused();
      await expect(labels).toBeHidden();
    }
  });
});

test('in a round every control is at least 48 px, typed and live', async ({ pintally: { page } }) => {
  await page.setViewportSize({ width: 800, height: 600 });
  await openDemoYard(page);
  await startRound(page, 'Walnut from the lane', 9);
  const tooSmall = () =>
    page.getByRole('region', { name: 'Round' }).evaluate((round) =>
      [...round.querySelectorAll('button, a, input, summary')].flatMap((control) => {
        const { width, height } = control.getBoundingClientRect();
        return width > 0 && Math.min(width, height) < 47.5
          ? [`${control.textContent}: ${width} x ${height}`]
          : [];
      }),
    );
  expect(await tooSmall(), 'typed, nothing read').toEqual([]);
  await typeReading(page, '11.9');
  await typeReading(page, '145');
  await expect(page.getByRole('button', { name: /^Use 14/ })).toBeVisible();
  expect(await tooSmall(), 'typed, a slip').toEqual([]);
  const round = page.url();
  await page.getByRole('link', { name: 'Connect a meter' }).click();
  await page.getByRole('button', { name: /simulated/ }).click();
  await page.goto(round);
  await expect(page.getByRole('button', { name: 'Save now' })).toBeVisible();
  expect(await tooSmall(), 'live').toEqual([]);
});
