/** Every act is done in the window, undone, and redone. Its values are invented. */
import { mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, test } from '@playwright/test';
import { type ActName, isAct, type RequestName, requests } from '../../shared-core/contract/requests.ts';
import { watchActs } from './acts-seen.ts';
import { demoSteps, doUndoRedo, steps } from './every-act.ts';
import { startPintally } from './pintally.ts';
import { giveDemoYard } from './ready-demo.ts';
import { openDemoYard } from './walk.ts';

/** Acts of a longer walk, which undoes and redoes them as well. */
const elsewhere: Partial<Record<ActName, string>> = {
  'boards.archive': 'life',
  'boards.cut': 'life',
  'boards.merge': 'life',
  'imports.save': 'import',
  'labels.recordPrint': 'labels',
  'meter.describe': 'describe-meter',
  'meter.isAnother': 'same-meter',
  'meters.recognize': 'same-meter',
  'moves.delete': 'stands',
  'moves.edit': 'stands',
  'pastRounds.save': 'past-round',
  'pictures.delete': 'pictures',
  'places.close': 'stands',
  'places.delete': 'stands',
  'places.merge': 'stands',
  'places.reopen': 'stands',
  'stacks.close': 'stands',
  'stacks.delete': 'stands',
  'stacks.merge': 'stands',
  'stacks.reopen': 'stands',
};
/** Those that undo and redo others. */
const undoing: readonly ActName[] = ['acts.undo', 'acts.redo'];

test.use({ actionTimeout: 30_000 });
test('every act is done in the window, undone and redone', async ({ page }) => {
  const all = (Object.keys(requests) as RequestName[]).filter(isAct);
  const walked = [...steps, ...demoSteps].map(({ act }) => act);
  const known = [...walked, ...(Object.keys(elsewhere) as ActName[]), ...undoing];
  expect(known.toSorted()).toEqual(all.toSorted());

  const dataDir = mkdtempSync(join(tmpdir(), 'pintally-e2e-'));
  giveDemoYard(dataDir);
  const acts = watchActs(page);
  const { stop } = await startPintally(page, { dataDir });
  const walk = async (some: typeof steps): Promise<void> => {
    for (const step of some) {
      await test.step(`${step.act}, on ${step.at}`, () => doUndoRedo(page, acts, step));
    }
  };
  await openDemoYard(page);
  await walk(demoSteps);
  await page.getByRole('button', { name: 'Demo yard: invented data.' }).click();
  await page.getByRole('menuitem', { name: 'Go to my own yard' }).click();
  await expect(page.getByText('Demo yard: invented data.')).toBeHidden();
  await walk(steps);
  await page.goto('about:blank');
  await stop();
});
