import type { ReactNode } from 'react';
import type { RequestInput } from '../../../shared-core/contract/requests.ts';
import { useQuestions } from '../../form/useQuestions.ts';
import { useWords } from '../../words.ts';
import { DayOrderChoice } from './DayOrderChoice.tsx';

type Answers = Pick<RequestInput<'boards.move'>, 'isInserted' | 'isBeforeSawing' | 'order'>;

/** The questions with which a move is refused. */
const questions = {
  'refusal.move-before-other': { isInserted: true },
  'refusal.move-after-other': { isInserted: true },
  'refusal.move-before-sawn': { isBeforeSawing: true },
  'refusal.sawn-after-move': { isBeforeSawing: true },
  'refusal.moved-or-probed-first': {},
} as const;
/** What the button then says; null: as usual. */
const words = {
  'refusal.move-before-other': 'life.insert-move',
  'refusal.move-after-other': 'life.change-order',
  'refusal.move-before-sawn': 'life.was-log',
  'refusal.sawn-after-move': 'life.was-log',
  'refusal.moved-or-probed-first': null,
} as const;

/**
 * What the machine asks before it saves a move, and what the person answered. Saving again answers yes; which came first is
 * chosen.
 *
 * @param move  what the questions are about; once it is another, nothing was answered
 */
export function useMoveQuestions(move: object) {
  const { say } = useWords();
  const { answers, open, give, ask } = useQuestions<Answers, keyof typeof questions>(questions, move);
  const isOrderAsked = open === 'refusal.moved-or-probed-first' || answers.order != null;
  const asks = open && words[open];
  return {
    /** Goes on with what is saved, whose refusal may be the next question. */
    ask,
    isAsking: open !== null,
    /** What the button says; null: as usual. */
    saveWords: asks && say(asks),
    /** Which came first, once that is asked. */
    choice: (isOrderAsked && (
      <DayOrderChoice value={answers.order ?? null} onValue={(order) => give({ order })} />
    )) as ReactNode,
  };
}
