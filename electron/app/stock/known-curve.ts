import { Refusal } from '../../../shared-core/contract/answer.ts';
import { resistanceCurves } from '../../../shared-core/wood/moisture/resistance-curves.ts';
import { type Message, message } from '../../../shared-core/words/message.ts';

/**
 * Makes sure that a species or a meter names a resistance curve that there is, since every reading would rest on it.
 * @throws Refusal
 */
export function checkCurve(curveId: string | null, undone: Message): void {
  if (curveId === null || resistanceCurves.has(curveId)) return;
  throw new Refusal(message('refusal.curve-unknown', { curveId, undone }));
}
