import { Refusal } from '../../shared-core/contract/answer.ts';
import { type Burst, nextBurst } from '../../shared-core/labels/scan.ts';
import { parsedCheckCode } from '../../shared-core/reports/check-code.ts';
import { message } from '../../shared-core/words/message.ts';
import { bridge } from '../data/bridge.ts';
import { isDialogOpen } from './dialogs.ts';
import { go, useNavigation } from './navigation.ts';
import { tellProblem } from './notices.ts';

/** No label of ours says more. */
const MOST_CHARACTERS = 200;

const isTypedIn = (target: EventTarget | null): boolean =>
  target instanceof HTMLElement &&
  (target.isContentEditable ||
    target.closest('textarea, select, input:not([type=checkbox], [type=radio], [type=button])') !== null);

/**
 * Goes to the board whose label was scanned, or checks the report whose code it was; says so where the yard has no board
 * of that ID.
 */
export async function goToScanned(scanned: string): Promise<void> {
  if (parsedCheckCode(scanned).ok) return go({ name: 'check', code: scanned });
  try {
    const code = scanned.slice(0, MOST_CHARACTERS);
    const { boardId } = await bridge().query('labels.boardOf', { code });
    if (boardId === null) throw new Refusal(message('labels.unknown-code', { scanned: code }));
    go({ name: 'board', id: boardId });
  } catch (refusal) {
    tellProblem(refusal);
  }
}

/**
 * Follows a label scanner, which types an ID faster than any hand, on every screen. A round follows it by itself, a
 * text field takes what is typed into it, and a dialog is answered first.
 */
export function followScans(): () => void {
  let burst: Burst | null = null;
  const onKey = (event: KeyboardEvent) => {
    const { key, timeStamp, target } = event;
    const isElsewhere =
      useNavigation.getState().route.name === 'round' || isTypedIn(target) || isDialogOpen();
    if (isElsewhere || event.ctrlKey || event.altKey || event.metaKey) {
      burst = null;
      return;
    }
    const { burst: now, scanned } = nextBurst(burst, key, timeStamp);
    burst = now;
    if (scanned === null) return;
    // Its Enter presses nothing.
    event.preventDefault();
    event.stopPropagation();
    void goToScanned(scanned);
  };
  addEventListener('keydown', onKey, true);
  return () => removeEventListener('keydown', onKey, true);
}
