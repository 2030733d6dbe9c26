import type { Page } from '@playwright/test';

/** What cannot be seen whole in the window: the page or a layer wider than it, and main buttons under something else. */
export const hidden = (page: Page) =>
  page.evaluate(() => {
    const found: string[] = [];
    const beyond = document.documentElement.scrollWidth - innerWidth;
    if (beyond > 0) {
      const wide = [...document.querySelectorAll('body *')].filter(
        (element) => element.getBoundingClientRect().right > innerWidth + 0.5,
      );
      found.push(
        `${beyond} px too wide: ${wide
          .map((each) => `${each.localName}.${each.className}`)
          .slice(0, 6)
          .join(', ')}`,
      );
    }
    for (const layer of document.querySelectorAll(
      '[role=dialog], [role=menu], [role=listbox], :popover-open',
    )) {
      const { left, right } = layer.getBoundingClientRect();
      if (left < -0.5 || right > innerWidth + 0.5) found.push(`layer from ${left} to ${right}`);
      for (let part: Element | null = layer; part; part = part.parentElement) {
        const scrolls = /auto|scroll/.test(getComputedStyle(part).overflowX);
        if (scrolls && part.scrollWidth > part.clientWidth + 1) {
          found.push(`layer scrolls sideways: ${part.scrollWidth} in ${part.clientWidth}`);
        }
      }
    }
    for (const button of document.querySelectorAll('.button-main')) {
      if (!button.checkVisibility() || button.closest('[aria-hidden=true], [inert]')) continue;
      button.scrollIntoView({ block: 'center', behavior: 'instant' });
      const { x, y, width, height } = button.getBoundingClientRect();
      const there = document.elementFromPoint(x + width / 2, y + height / 2);
      if (!there || !button.contains(there)) {
        found.push(`${button.textContent} is under ${there?.localName}.${there?.className}`);
      }
    }
    return found;
  });

/** Texts that end in the middle, because their box is too small for them. */
export const cutTexts = (page: Page) =>
  page.evaluate(() =>
    [...document.querySelectorAll('body *')].flatMap((element) => {
      const { overflowX, overflowY } = getComputedStyle(element);
      const hides = (overflow: string) => overflow === 'hidden' || overflow === 'clip';
      const { clientWidth, clientHeight, scrollWidth, scrollHeight } = element;
      // What only a screen reader reads is a pixel large.
      if (!element.textContent?.trim() || clientWidth < 2 || !element.checkVisibility()) return [];
      const isCut =
        (hides(overflowX) && scrollWidth > clientWidth + 1) ||
        (hides(overflowY) && scrollHeight > clientHeight + 1);
      return isCut ? [`cut: ${element.textContent.slice(0, 60)} (${element.className})`] : [];
    }),
  );
