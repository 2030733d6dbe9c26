import { expect, type Locator, type Page } from '@playwright/test';
import { openDemoYard, startRound, typeReading } from './walk.ts';

/** Every screen of the demo yard but those of a round. The board has readings, the species oven checks. */
const screens = [
  'stacks',
  'stacks/1',
  'boards',
  'boards/8',
  'round?stack=1',
  'past-round/1',
  'labels',
  'labels?boards=1,2',
  'tally?stack=1',
  'report/8?kind=passport',
  'check',
  'places',
  'dates',
  'air',
  'species',
  'species/pine-eastern-white',
  'meter',
  'settings',
  'backups',
  'files',
  'import-table',
  'history',
  'help',
  'help/pins',
  'methods',
  'licenses',
  'nowhere',
];

/** What lies over a screen: a dialog, a menu, a list of choices, a popover. */
const layers =
  '[role=dialog]:visible, [role=alertdialog]:visible, [role=menu]:visible, [role=listbox]:visible, :popover-open';

/** Looks at what is on screen. `layer` is what lies over it, if anything does. */
export type Look = (where: string, layer: Locator | null) => Promise<void>;

/** Waits until the screen shows what it asked for: on a busy computer a forecast takes long. */
export async function settled(page: Page): Promise<void> {
  await expect(page.getByRole('heading', { level: 1 })).toBeVisible();
  await expect(page.locator('.loading')).toHaveCount(0, { timeout: 30_000 });
  // Waited for in the page, which takes a third of the time. Twice: a list that has come may ask for more.
  const stays = await page.evaluate(async () => {
    const until = performance.now() + 20_000;
    for (let frames = 0; frames < 2 && performance.now() < until; ) {
      await new Promise((drawn) => requestAnimationFrame(() => setTimeout(drawn, 20)));
      if (document.querySelector('.loading')) frames = 0;
      else frames++;
    }
    return document.querySelector('.loading') === null;
  });
  expect(stays, 'what the screen asked for has come').toBe(true);
}

/** Words of a button without numbers and IDs, so that those of several rows are of one kind. */
const kindOf = (words: string): string => words.replaceAll(/[A-Z]+-\d+|\d[\d.,]*/g, '#').trim();

/** Not pressed: what leaves the yard, prints or saves a file, or connects a meter or goes far away, which comes later. */
const isLeftAlone = /own yard|demo yard|^Print$|PDF|CSV|Export \w|simulated|Look for|^Far view/i;

async function layerOn(page: Page): Promise<Locator | null> {
  const open = page.locator(layers);
  return (await open.count()) > 0 ? open.last() : null;
}

async function closeLayers(page: Page): Promise<void> {
  for (let presses = 0; presses < 4 && (await layerOn(page)); presses++) {
    await page.keyboard.press('Escape');
    await page.evaluate(() => new Promise((drawn) => requestAnimationFrame(() => setTimeout(drawn, 30))));
  }
  expect(await layerOn(page), 'Escape closes what lies over the screen').toBeNull();
}

/** A walk through all screens. What opens the same thing from several screens is pressed once. */
interface Walk {
  page: Page;
  look: Look;
  pressed: Set<string>;
  /** What was opened over a screen. */
  opened: string[];
}

/** Parts that every screen has the same: their layers are looked at once. */
const isShared = /^(Export|Columns|Calendar)/;

/** Presses each kind of button on screen, and looks at what opens. `back` brings the screen back as it was. */
async function openAll(
  { page, look, pressed, opened }: Walk,
  where: string,
  back: () => Promise<void>,
): Promise<void> {
  const isNew = (screen: string, kind: string): boolean => {
    const key = isShared.test(kind) ? kind : `${screen.replace(/[/?\d].*/, '')} > ${kind}`;
    if (pressed.has(key)) return false;
    pressed.add(key);
    return true;
  };
  const buttons = page.locator('main button:enabled:visible:not([aria-disabled=true])');
  for (const kind of new Set((await buttons.allInnerTexts()).map(kindOf))) {
    if (isLeftAlone.test(kind) || !isNew(where, kind)) continue;
    const all = await buttons.all();
    const button = all[(await buttons.allInnerTexts()).findIndex((text) => kindOf(text) === kind)];
    if (!button) continue;
    const address = page.url();
    await button.click();
    await settled(page);
    const layer = await layerOn(page);
    if (layer) {
      const name = `${where} > ${kind}`;
      opened.push(name);
      await look(name, layer);
      const closed = layer.locator('[type=checkbox]:not(:checked), details:not([open]) > summary');
      if ((await closed.count()) > 0) {
        for (const each of await closed.elementHandles()) {
          await each.click();
          // A column that is shown moves what lies over its table.
          await settled(page);
        }
        await look(`${name}, with all its fields`, layer);
      }
      // A calendar or a list of choices in a form.
      for (const more of await layer.locator('button[aria-haspopup]:visible').elementHandles()) {
        const words = (await more.getAttribute('aria-label')) ?? (await more.textContent()) ?? '';
        if (!isNew(where, words)) continue;
        await more.click();
        await settled(page);
        opened.push(`${name} > ${words}`);
        await look(`${name} > ${words}`, await layerOn(page));
        await page.keyboard.press('Escape');
      }
      for (const item of await page.locator('[role=menuitem]:visible').allInnerTexts()) {
        if (isLeftAlone.test(item) || !isNew(where, item)) continue;
        if (!(await layerOn(page))) await button.click();
        await page.getByRole('menuitem', { name: item }).click();
        await settled(page);
        if (page.url() !== address) {
          await back();
          continue;
        }
        opened.push(`${where} > ${item}`);
        await look(`${where} > ${item}`, await layerOn(page));
        await closeLayers(page);
      }
      await closeLayers(page);
    }
    if (page.url() !== address || (await buttons.count()) !== all.length) await back();
  }
}

/** Shows what is folded and each tab of the screen: what it holds, and what its buttons open. */
async function lookThrough(walk: Walk, where: string, back: () => Promise<void>): Promise<void> {
  const { page, look } = walk;
  await look(where, null);
  const folded = page.locator('main details:not([open]) > summary');
  if ((await folded.count()) > 0) {
    for (const each of await folded.elementHandles()) await each.click();
    await settled(page);
    await look(`${where}, unfolded`, null);
    await back();
  }
  const tabs = page.getByRole('main').getByRole('tab');
  const count = await tabs.count();
  if (count === 0) await openAll(walk, where, back);
  for (let index = 0; index < count; index++) {
    const show = async () => {
      await tabs.nth(index).click();
      await settled(page);
    };
    await show();
    const name = `${where}, tab ${await tabs.nth(index).textContent()}`;
    await look(name, null);
    await openAll(walk, name, () => back().then(show));
  }
}

/** Cuts sections of the board on screen, so that it is followed by weight. The weights are invented. */
async function cutSections(page: Page): Promise<void> {
  await settled(page);
  const cut = page.getByRole('button', { name: 'Cut sections' });
  // It may be behind a tab.
  for (const tab of await page.getByRole('main').getByRole('tab').all()) {
    if (!(await cut.isVisible())) await tab.click();
  }
  await cut.click();
  const form = page.getByRole('dialog');
  await form.getByLabel('First section').fill('81.4');
  await form.getByLabel('Weight of the board').fill('4.2');
  await form.getByRole('button', { name: 'Save' }).click();
  await expect(form).toHaveCount(0);
}

/**
 * From the empty yard through the demo yard: looks at every screen, its tabs, and what its buttons open.
 * @returns the names of what was opened over a screen
 */
export async function everywhere(page: Page, look: Look): Promise<string[]> {
  page.setDefaultTimeout(30_000);
  await settled(page);
  await look('first start', null);
  await page.getByRole('combobox', { name: 'Species' }).fill('oak');
  await look('first start > species', await layerOn(page));
  await page.keyboard.press('Escape');
  await openDemoYard(page);
  const base = page.url().replace(/#.*/, '');
  const walk: Walk = { page, look, pressed: new Set(), opened: [] };
  const visit = async (path: string, prepare = async () => {}) => {
    const open = async () => {
      // A screen that was left is shown as new.
      for (const next of [path === 'nowhere' ? 'stacks' : 'nowhere', path]) {
        await page.goto(`${base}#/${next}`);
        await settled(page);
      }
      await prepare();
      await settled(page);
    };
    await open();
    await lookThrough(walk, path, open);
  };
  await page.getByRole('button', { name: 'Demo yard: invented data.' }).click();
  await look('stacks > Demo yard', await layerOn(page));
  await page.getByRole('menuitem', { name: 'Remove the demo yard' }).click();
  await look('stacks > Remove the demo yard', await layerOn(page));
  await closeLayers(page);
  for (const path of screens) await visit(path);
  await visit('boards?selected', async () => {
    const all = page.getByRole('checkbox', { name: 'Select all' });
    await all.click();
    await expect(all).toBeChecked();
  });
  await page.goto(`${base}#/boards/8`);
  await cutSections(page);
  await visit('boards/8?cut');
  await startRound(page, 'Walnut from the lane', 9);
  await typeReading(page, '11.9');
  await typeReading(page, '145');
  await expect(page.getByRole('button', { name: /^Use 14/ })).toBeVisible();
  const round = page.url().replace(/.*#\//, '');
  await visit(round);
  await page.goto(`${base}#/meter`);
  await page.getByRole('button', { name: /simulated/ }).click();
  await look('meter, live', null);
  await visit(round);
  await page.keyboard.press('f');
  await look(`${round}, far view`, null);
  await page.keyboard.press('f');
  await page.getByRole('button', { name: 'Finish' }).click();
  await page.getByRole('button', { name: 'Finish the round' }).click();
  await expect(page.getByRole('heading', { name: 'Board by board' })).toBeVisible();
  await visit(round);
  return [...walk.opened, 'stacks > Remove the demo yard'];
}
