import { expect, type Page } from '@playwright/test';

type Role = Parameters<Page['getByRole']>[0];

/** How far Tab is pressed before something counts as out of reach. */
const MOST_TABS = 90;

/**
 * What is wrong with the focus; null if nothing is. A part that takes the focus without being a control, as a heading
 * after a change of screen, needs no ring.
 */
const focusProblem = (page: Page): Promise<string | null> =>
  page.evaluate(() => {
    const active = document.activeElement as HTMLElement | null;
    if (!active || active === document.body) return 'nothing has the focus';
    const name = `${active.localName} “${(active.ariaLabel ?? active.textContent ?? '').slice(0, 40)}”`;
    // Around it, or around the few that it belongs to, as the parts of a date.
    let ringed: Element | null = active;
    for (let up = 0; up < 3 && ringed && getComputedStyle(ringed).outlineStyle === 'none'; up++) {
      ringed = ringed.parentElement;
    }
    const { outlineStyle, outlineWidth } = getComputedStyle(ringed ?? active);
    const hasRing = outlineStyle !== 'none' && Number.parseFloat(outlineWidth) >= 2;
    if (active.tabIndex >= 0 && !hasRing) return `${name} shows no focus`;
    const { top, bottom, left, right } = active.getBoundingClientRect();
    const isInSight = bottom > 0 && top < innerHeight && right > 0 && left < innerWidth;
    return isInSight ? null : `${name} is out of sight, at ${left}, ${top}`;
  });

/** Two hands on the keyboard and none on a mouse. After each step the focus is somewhere, shown and in sight. */
export function hands(page: Page) {
  const { keyboard } = page;
  const hold = (after: string) => expect.poll(() => focusProblem(page), after).toBeNull();

  async function key(name: string): Promise<void> {
    await keyboard.press(name);
    await hold(`after ${name}`);
  }

  /** Tabs until a control has the focus. Each stop on the way is checked as well. */
  async function tabTo(role: Role, name: string | RegExp, by: 'Tab' | 'Shift+Tab' = 'Tab'): Promise<void> {
    const meant = page.getByRole(role, { name, exact: typeof name === 'string' }).and(page.locator(':focus'));
    for (let tabs = 0; tabs < MOST_TABS; tabs++) {
      if ((await meant.count()) > 0) return hold(`${role} ${name}`);
      await keyboard.press(by);
      // Past the last control the focus leaves the page, as it should, and the next Tab comes back.
      const problem = await focusProblem(page);
      if (problem !== 'nothing has the focus' && problem !== null)
        await hold(`on the way to ${role} ${name}`);
    }
    throw new Error(`Tab does not lead to the ${role} ${name}.`);
  }

  async function press(role: Role, name: string | RegExp, by: 'Enter' | ' ' = 'Enter'): Promise<void> {
    await tabTo(role, name);
    await keyboard.press(by);
    await hold(`after ${role} ${name}`);
  }

  /** Types into a field in place of what it holds. */
  async function fill(role: Role, name: string | RegExp, text: string): Promise<void> {
    await tabTo(role, name);
    await keyboard.press('ControlOrMeta+a');
    await keyboard.type(text);
    await hold(`typed into ${name}`);
  }

  return {
    key,
    tabTo,
    press,
    fill,
    /** The first stack of an empty yard, white oak 27 mm thick. */
    async addFirstStack(
      boards: number,
      by: 'Start probing' | 'Add the stack only' = 'Start probing',
    ): Promise<void> {
      await fill('textbox', 'What do you call this stack?', 'Oak by the gate');
      await fill('combobox', 'Species', 'white oak');
      await key('Enter');
      await fill('textbox', 'Thickness', '27');
      await fill('textbox', 'How many boards?', String(boards));
      await press('button', by);
      // It goes on to another screen once the stack is made.
      await page.getByRole('form', { name: 'Your first stack' }).waitFor({ state: 'detached' });
      await hold(`after ${by}`);
    },
    /** A reading at the pace of a quick hand, and Enter. */
    async reading(value: string): Promise<void> {
      await keyboard.type(value, { delay: 60 });
      await key('Enter');
    },
  };
}
