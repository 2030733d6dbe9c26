import { expect, type Page } from '@playwright/test';
import { unansweredOf } from './unanswered.ts';

/** The address of every screen in the demo yard, but for those of a round. */
export const screens = [
  'stacks',
  'stacks/1',
  'boards',
  'boards/8',
  'round?stack=1',
  'past-round/1',
  'meter',
  'labels',
  'labels?boards=1,2',
  'tally?stack=1',
  'report/8?kind=passport',
  'check',
  'places',
  'dates',
  'air',
  'species',
  'species/oak-northern-red',
  'settings',
  'backups',
  'licenses',
  'nowhere',
];

export interface Read {
  text: string;
  /** Whether it is a person's own, a meter's, or a citation: nothing that a browser should translate. */
  isOwn: boolean;
  /** Which element it is in, to find it again. */
  where: string;
}

/** Every text of the page that a person reads or hears, those out of sight too. */
export const textsOf = async (page: Page): Promise<Read[]> => JSON.parse(await writtenTextsOf(page));

/** The same as JSON, which crosses from the page in half the time. */
const writtenTextsOf = (page: Page): Promise<string> =>
  page.evaluate(() => {
    const read: { text: string; isOwn: boolean; where: string }[] = [];
    const take = (element: Element | null, text: string | null, attribute = '') => {
      if (!element || !text || element.closest('script, style')) return;
      // SVG has no `translate`; there, browsers go by the class.
      const isOwn = element.closest('[translate="no"], .notranslate, textarea') !== null;
      const names = [element.parentElement, element].map((each) =>
        each ? [each.localName, ...each.classList].join('.') : '',
      );
      read.push({ text, isOwn, where: `${names.join(' > ')}${attribute && ` ${attribute}`}` });
    };
    const nodes = document.createTreeWalker(document.documentElement, NodeFilter.SHOW_TEXT);
    const isWhole = (text: string | null) => text?.split('[').length === text?.split(']').length;
    while (nodes.nextNode()) {
      const { parentElement: element, textContent: text } = nodes.currentNode;
      // A sentence in several elements, so that its line breaks between them, is read whole.
      if (isWhole(text)) take(element, text);
      else take(element, element?.parentElement?.textContent ?? null);
    }
    for (const element of document.querySelectorAll('*')) {
      for (const name of [
        'aria-label',
        'aria-description',
        'aria-valuetext',
        'title',
        'placeholder',
        'alt',
      ]) {
        take(element, element.getAttribute(name), name);
      }
    }
    return JSON.stringify(read);
  });

/** The texts once the page stays as it is: what it asked for has come, a dialog that waits for it too. */
export async function settledTextsOf(page: Page): Promise<Read[]> {
  await expect(page.getByRole('heading', { level: 1 })).toBeVisible();
  await expect(page.locator('.loading')).toHaveCount(0);
  let now = '';
  await expect
    .poll(
      async () => {
        const before = unansweredOf(page) > 0 ? '' : now;
        now = await writtenTextsOf(page);
        return before === now;
      },
      { intervals: [100] },
    )
    .toBe(true);
  return JSON.parse(now);
}
