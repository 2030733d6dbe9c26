/** What can hurt a person or spoil wood, for the place where it is decided. */
import type { UseCaution } from '../../wood/species/end-use.ts';
import { type Message, message } from '../../words/message.ts';
import { isTooWetForIndoors, limitsForIndoors } from './call-here.ts';
import type { JudgedPlace } from './judgement.ts';

type Kind = JudgedPlace['kind'];
const isIndoors = (kind: Kind): boolean => kind === 'shop' || kind === 'heated-room';

/**
 * Beside a move. Too wet for a heated room: as `call-here.ts` has it. Insects: air-drying reaches no temperature that
 * would kill them (ISPM 15 asks for 56 °C for 30 min in the core; from memory).
 *
 * @param wettest  of the boards to be moved, % MC; 0 where none was read or forecast
 */
export function cautionsOfMove(
  from: Kind,
  to: Kind,
  wettest: { averagePct: number; corePct: number },
): Message[] {
  const mayCheck = to === 'heated-room' && isTooWetForIndoors(wettest.averagePct, wettest.corePct);
  return [
    ...(mayCheck ? [message('caution.checks', limitsForIndoors)] : []),
    ...(!isIndoors(from) && isIndoors(to) ? [message('caution.insects')] : []),
  ];
}

const ofUse: Record<UseCaution, readonly Message[]> = {
  structural: [message('caution.framing')],
  firewood: [message('caution.firewood-burn'), message('caution.firewood-move')],
};

/** Beside Ready, by what a use says. Common practice, no source. */
export const cautionsOfReady = (cautions: readonly UseCaution[]): Message[] =>
  cautions.flatMap((each) => ofUse[each]);
