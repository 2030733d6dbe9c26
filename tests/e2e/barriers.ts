import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { Page } from '@playwright/test';
import type axeCore from 'axe-core';

const axeSource = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');
const options: axeCore.RunOptions = { runOnly: ['wcag2a', 'wcag2aa', 'wcag21aa', 'best-practice'] };

/** What is in somebody's way on the screen as it is, a line for each. */
export async function barriers(page: Page): Promise<string[]> {
  await page.evaluate(axeSource);
  return page.evaluate(async (given) => {
    const { axe } = globalThis as unknown as { axe: typeof axeCore };
    const { violations } = await axe.run(document, given);
    return violations.flatMap(({ id, nodes }) => nodes.map(({ target }) => `${id}: ${target.join(' ')}`));
  }, options);
}
