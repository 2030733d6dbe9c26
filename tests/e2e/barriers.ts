import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { Page } from '@playwright/test';
import type axeCore from 'axe-core';

const axeSource = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');
const all = ['wcag2a', 'wcag2aa', 'wcag21aa', 'best-practice'];

/** Puts axe into the page: one that was loaded again has lost it. */
export async function bringAxe(page: Page): Promise<void> {
  if (!(await page.evaluate(() => 'axe' in globalThis))) await page.evaluate(axeSource);
}

/** What axe found, in a line. */
export const lineOf = ({ id, target, html }: { id: string; target: string; html: string }): string =>
  `${id}: ${target}, ${html.slice(0, 200)}`;

/**
 * What is in somebody's way on the screen as it is, a line for each.
 * @param of       the part of the page to check; all of it where not given
 * @param contrastIn  the part in which the contrast of texts is checked, which takes most of the time; all that is checked
 *   where not given
 */
export async function barriers(
  page: Page,
  { of, contrastIn = of }: { of?: string; contrastIn?: string } = {},
): Promise<string[]> {
  await bringAxe(page);
  const found = await page.evaluate(
    async ([part, colored, tags]) => {
      const { axe } = globalThis as unknown as { axe: typeof axeCore };
      const resultTypes: axeCore.resultGroups[] = ['violations'];
      const isPart = part !== colored;
      const rules: axeCore.RuleObject = isPart ? { 'color-contrast': { enabled: false } } : {};
      const results = [await axe.run(part ?? document, { runOnly: tags, rules, resultTypes })];
      const contrast = { runOnly: ['color-contrast'], resultTypes };
      if (isPart) results.push(await axe.run(colored ?? document, contrast));
      return results.flatMap(({ violations }) =>
        violations.flatMap(({ id, nodes }) =>
          nodes.map(({ target, html }) => ({ id, target: target.join(' '), html })),
        ),
      );
    },
    [of ?? null, contrastIn ?? null, all] as const,
  );
  return found.map(lineOf);
}
