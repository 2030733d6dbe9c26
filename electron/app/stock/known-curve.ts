import { Refusal } from '../../../shared-core/contract/answer.ts';
import { resistanceCurves } from '../../../shared-core/wood/species/catalogue.ts';

/**
 * Makes sure that a wood or a meter names a resistance curve that there is, since every reading would rest on it.
 * @throws Refusal
 */
export function checkCurve(curveId: string | null, whatWasSaved: string): void {
  if (curveId === null || resistanceCurves.has(curveId)) return;
  throw new Refusal(
    `There is no resistance curve called «${curveId}». ${whatWasSaved}. Choose a curve from the list, or none.`,
  );
}
