import { Refusal } from '../../shared-core/contract/answer.ts';
import { message } from '../../shared-core/words/message.ts';
import { tellProblem } from '../stores/notices.ts';

/** Says that the window stopped and was opened again, where its address says so (`electron/shell/pages.ts`). */
export function tellIfOpenedAgain(): void {
  if (!new URLSearchParams(location.search).has('opened-again')) return;
  // Once: a reload by the person is no such thing.
  history.replaceState(history.state, '', location.pathname + location.hash);
  tellProblem(new Refusal(message('shell.opened-again')));
}
