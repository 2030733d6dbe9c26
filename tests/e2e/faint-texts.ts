import type { Page } from '@playwright/test';
import type axeCore from 'axe-core';
import { bringAxe, lineOf } from './barriers.ts';

/**
 * Texts with too little contrast in the theme on screen. Contrast follows from the colors, size and weight of a text and
 * from what is behind it: each such look is checked by axe once, on the first text that has it.
 *
 * @param checked  the looks that were checked before in this theme; those that are checked now are added
 */
export async function faintTexts(page: Page, checked: Set<string>): Promise<string[]> {
  await bringAxe(page);
  const { found, looks } = await page.evaluate(
    async (known) => {
      const { axe } = globalThis as unknown as { axe: typeof axeCore };
      const before = new Set(known);
      const behind = new Map<Element | null, string>([[null, '']]);
      const behindOf = (element: Element | null): string => {
        const seen = behind.get(element);
        if (seen !== undefined || element === null) return seen ?? '';
        const { backgroundColor, backgroundImage, opacity } = getComputedStyle(element);
        const own = `${backgroundColor} ${backgroundImage} ${opacity}`;
        const all = behindOf(element.parentElement);
        const whole = own === 'rgba(0, 0, 0, 0) none 1' ? all : `${own}, ${all}`;
        behind.set(element, whole);
        return whole;
      };
      const byLook = new Map<string, Element>();
      const take = (element: Element | null) => {
        if (!element?.checkVisibility()) return;
        const { color, fontSize, fontWeight, textShadow } = getComputedStyle(element);
        const look = [color, fontSize, fontWeight, textShadow, behindOf(element)].join('; ');
        if (!before.has(look) && !byLook.has(look)) byLook.set(look, element);
      };
      const texts = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
      while (texts.nextNode())
        if (texts.currentNode.textContent?.trim()) take(texts.currentNode.parentElement);
      for (const field of document.querySelectorAll('input, select, textarea')) take(field);
      if (byLook.size === 0) return { found: [], looks: [] };
      const { passes, violations } = await axe.run([...byLook.values()], {
        runOnly: { type: 'rule', values: ['color-contrast'] },
        elementRef: true,
      });
      const told = new Set(
        [...passes, ...violations].flatMap(({ nodes }) => nodes.map(({ element }) => element)),
      );
      return {
        found: violations.flatMap(({ id, nodes }) =>
          nodes.map(({ target, html }) => ({ id, target: target.join(' '), html })),
        ),
        // Where axe could not tell, the next text that looks like it is tried.
        looks: [...byLook].flatMap(([look, element]) => (told.has(element as HTMLElement) ? [look] : [])),
      };
    },
    [...checked],
  );
  for (const look of looks) checked.add(look);
  return found.map(lineOf);
}
