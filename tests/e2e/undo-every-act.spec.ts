/** Every act is done in the window, undone, and redone. Its values are invented. */
import { test } from '@playwright/test';
import { watchActs } from './acts-seen.ts';
import { doUndoRedo, steps } from './every-act.ts';
import { startPintally } from './pintally.ts';

test.use({ actionTimeout: 15_000 });
test('every act is done in the window, undone and redone', async ({ page }) => {
  const acts = watchActs(page);
  const { stop } = await startPintally(page);
  for (const step of steps) {
    await test.step(`${step.act}, on ${step.at}`, () => doUndoRedo(page, acts, step));
  }
  await page.goto('about:blank');
  await stop();
});
