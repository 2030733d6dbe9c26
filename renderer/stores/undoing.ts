import { create } from 'zustand';
import { Refusal } from '../../shared-core/contract/answer.ts';
import type { ListedAct } from '../../shared-core/contract/requests/acts.ts';
import { bridge } from '../data/bridge.ts';
import { allAnswered, forgetAct, newestAct } from '../data/own-acts.ts';
import { wordsNow } from '../words.ts';
import { isDialogOpen } from './dialogs.ts';
import { attempt, tellDone, tellProblem, undoAct } from './notices.ts';
import { useYard } from './yard.ts';

/** The act of which is asked whether it is undone; null where none is. */
export const useUndoQuestion = create<{ asked: ListedAct | null }>()(() => ({ asked: null }));

export const leaveQuestion = (): void => useUndoQuestion.setState({ asked: null });

/** The person said yes. */
export async function undoEarlier(act: string): Promise<void> {
  leaveQuestion();
  await attempt(undoAct(act, 'undo'));
}

const TEXT_FIELDS = 'input:not([type=checkbox], [type=radio], [type=file]), textarea, [contenteditable]';

/** In a text field these keys are the field's. */
const isOfField = ({ target }: KeyboardEvent): boolean =>
  target instanceof HTMLElement && target.closest(TEXT_FIELDS) !== null;

/** A dialog closes so long after what it saved is answered. */
const CLOSES_WITHIN_MS = 300;

/** In a dialog these keys would change what is behind it. One that is closing is no longer in the way. */
async function isDialogInTheWay(): Promise<boolean> {
  if (isDialogOpen()) await new Promise((resolve) => setTimeout(resolve, CLOSES_WITHIN_MS));
  return isDialogOpen();
}

/** So many of the newest acts are searched for one that is not undone. */
const SEARCHED = 200;

/** Nothing of this window is left: the newest act of the yard, which may be of before a restart, is asked about. */
async function askAboutEarlier(): Promise<void> {
  const { acts } = await bridge().query('acts.list', { boardId: null, before: null, limit: SEARCHED });
  const newest = acts.find(({ isUndone }) => !isUndone);
  if (newest) useUndoQuestion.setState({ asked: newest });
  else tellDone(wordsNow().say('act.nothing-to-undo'));
}

/** Where another window undid or redid it first, the next press is about another act. */
function leaveBehind(act: string, error: unknown): never {
  const code = error instanceof Refusal ? error.problem.code : null;
  if (code === 'refusal.undone-already' || code === 'refusal.not-undone') forgetAct(act);
  throw error;
}

/** A press is not followed so long after it: who waited has done something else by then. */
const FOLLOWED_WITHIN_MS = 5000;

async function undoOrRedo(press: KeyboardEvent): Promise<void> {
  // The newest act may be on its way yet: that one is meant.
  await allAnswered();
  if (await isDialogInTheWay()) return;
  const { say } = wordsNow();
  if (performance.now() - press.timeStamp > FOLLOWED_WITHIN_MS) return tellDone(say('act.keys-too-late'));
  const what = press.key.toLowerCase() === 'y' || press.shiftKey ? 'redo' : 'undo';
  const act = newestAct(what === 'undo' ? 'done' : 'undone', useYard.getState().info?.uuid ?? null);
  if (act !== null) await undoAct(act, what).catch((error: unknown) => leaveBehind(act, error));
  else if (what === 'undo') await askAboutEarlier();
  else tellDone(say('act.nothing-to-redo'));
}

/**
 * From now on Ctrl+Z undoes the newest act of this window, and asks about an earlier one; Ctrl+Shift+Z or Ctrl+Y redoes
 * it; Command on a Mac. What is pressed faster than it is done waits its turn.
 */
export function followUndoKeys(): () => void {
  let waiting = 0;
  let turn = Promise.resolve();
  const onKey = (event: KeyboardEvent): void => {
    if (!(event.ctrlKey || event.metaKey) || event.altKey || isOfField(event)) return;
    const key = event.key.toLowerCase();
    if (key !== 'z' && key !== 'y') return;
    event.preventDefault();
    // A key held down goes on only as fast as it is followed.
    if (event.repeat && waiting > 0) return;
    waiting += 1;
    turn = turn
      .then(() => undoOrRedo(event))
      .catch(tellProblem)
      .finally(() => {
        waiting -= 1;
      });
  };
  addEventListener('keydown', onKey);
  return () => removeEventListener('keydown', onKey);
}
