import { newestAct } from '../data/own-acts.ts';
import { wordsNow } from '../words.ts';
import { tellDone, tellProblem, undoAct } from './notices.ts';
import { useYard } from './yard.ts';

/** In a text field these keys are the field's, and in a dialog they would change what is behind it. */
const isOfWindow = ({ target }: KeyboardEvent): boolean =>
  !(target instanceof HTMLElement) ||
  (target.closest('input, select, textarea, [contenteditable]') === null &&
    document.querySelector('[role=dialog], [role=alertdialog]') === null);

/** From now on Ctrl+Z undoes the newest act of this window, and Ctrl+Shift+Z or Ctrl+Y redoes it; Command on a Mac. */
export function followUndoKeys(): () => void {
  let isBusy = false;
  const onKey = (event: KeyboardEvent): void => {
    if (!(event.ctrlKey || event.metaKey) || event.altKey || !isOfWindow(event)) return;
    const key = event.key.toLowerCase();
    if (key !== 'z' && key !== 'y') return;
    event.preventDefault();
    if (isBusy) return;
    const what = key === 'y' || event.shiftKey ? 'redo' : 'undo';
    const yard = useYard.getState().info?.uuid ?? null;
    const act = newestAct(what === 'undo' ? 'done' : 'undone', yard);
    if (act === null) {
      tellDone(wordsNow().say(what === 'undo' ? 'act.nothing-to-undo' : 'act.nothing-to-redo'));
      return;
    }
    isBusy = true;
    void undoAct(act, what)
      .catch(tellProblem)
      .finally(() => {
        isBusy = false;
      });
  };
  addEventListener('keydown', onKey);
  return () => removeEventListener('keydown', onKey);
}
