import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { Page } from '@playwright/test';
import type axeCore from 'axe-core';

const axeSource = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');
const all = ['wcag2a', 'wcag2aa', 'wcag21aa', 'best-practice'];

/**
 * What is in somebody's way on the screen as it is, a line for each.
 * @param of     the part of the page to check; all of it where not given
 * @param rules  the rules to check; all of axe's where not given
 */
export async function barriers(
  page: Page,
  { of, rules }: { of?: string; rules?: readonly string[] } = {},
): Promise<string[]> {
  // A page that was loaded again has lost it.
  if (!(await page.evaluate(() => 'axe' in globalThis))) await page.evaluate(axeSource);
  const runOnly = rules ? { type: 'rule' as const, values: [...rules] } : all;
  const options: axeCore.RunOptions = { runOnly, resultTypes: ['violations'] };
  return page.evaluate(
    async ([part, given]) => {
      const { axe } = globalThis as unknown as { axe: typeof axeCore };
      const { violations } = await axe.run(part ?? document, given);
      return violations.flatMap(({ id, nodes }) =>
        nodes.map(({ target, html }) => `${id}: ${target.join(' ')}, ${html.slice(0, 200)}`),
      );
    },
    [of ?? null, options] as const,
  );
}
