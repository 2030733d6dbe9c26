import { type Message, message } from '../../words/message.ts';
import { type BoardToPlan, pinsOf, spotAt, spotName } from '../readings/spots.ts';
import type { Call } from './assessment.ts';

/** What to do next where the core can be read instead. */
const CORE_OR: Partial<Record<string, 'round-step.core-or-next' | 'round-step.core-or-finish'>> = {
  'round-step.next-board': 'round-step.core-or-next',
  'round-step.waits': 'round-step.core-or-next',
  'round-step.finish': 'round-step.core-or-finish',
};

const PULL = {
  sound: 'round-step.pull-pins',
  questionable: 'round-step.pull-questionable',
  'not-used': 'round-step.pull-not-used',
} as const;

const CORE_NOT_READ: ReadonlySet<string> = new Set(['call.core-not-reached', 'call.core-not-split']);

/** Whether nothing of a board could be used because the water in it is ice. */
export function isFrozen(finding: { reason: Message } | null): boolean {
  const why = finding?.reason.facts?.why;
  return typeof why === 'object' && 'code' in why && why.code === 'suspicion.frozen';
}

/** What to do next on a board in a round, short enough to be read from two meters away. */
export function roundStep({
  board,
  spotIndex,
  pinsAt,
  pinsSaved,
  askedPins,
  waits,
  isLast,
  secondsLeft,
  savesFor,
  by,
}: {
  board: BoardToPlan & { finding: { call: Call | null; reason: Message } | null };
  /** Null where all are read. */
  spotIndex: number | null;
  /** The spot that the pins which are in were saved at. */
  pinsAt: number | null;
  /** What became of the reading there. */
  pinsSaved: 'sound' | 'questionable' | 'not-used';
  /** The ID of the board where these pins may be saved already, which the person is asked; null where not asked. */
  askedPins: string | null;
  /** The next board would come by itself, but a questionable reading of this one asks to be read again. */
  waits: boolean;
  isLast: boolean;
  /** Until the next board comes by itself; null where it does not. */
  secondsLeft: number | null;
  /** The ID of the board whose first reading is typed, all spots of this one being read; null where none has room. */
  savesFor?: string | null | undefined;
  /** What a person goes on with. */
  by: 'pedal' | 'enter';
}): Message {
  if (askedPins !== null) return message('round-step.same-pins', { boardCode: askedPins });
  const saved = pinsAt === null ? undefined : spotAt(board, pinsAt);
  if (saved) return message(PULL[pinsSaved], { spot: spotName(saved) });
  const planned = spotIndex === null ? undefined : spotAt(board, spotIndex);
  if (planned) return message('round-step.spot', { spot: spotName(planned), pins: pinsOf(planned) });
  const next =
    savesFor !== undefined
      ? savesFor === null
        ? message('round-step.choose-spot')
        : message('round-step.save-for', { boardCode: savesFor })
      : secondsLeft === null
        ? message(isLast ? 'round-step.finish' : waits ? 'round-step.waits' : 'round-step.next-board', { by })
        : message('round-step.by-itself', { seconds: secondsLeft });
  if (!board.finding?.call) return next;
  if (isFrozen(board.finding)) return message('round-step.frozen', { next });
  const { code } = board.finding.reason;
  if (CORE_NOT_READ.has(code)) return message('round-step.core-not-read', { next });
  const callName = message(`call.${board.finding.call}`);
  const orCore = code === 'call.shell-questionable' ? CORE_OR[next.code] : undefined;
  return message('round-step.board-done', { callName, next: orCore ? message(orCore, { by }) : next });
}
