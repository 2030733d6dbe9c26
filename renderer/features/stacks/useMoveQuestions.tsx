import { type ReactNode, useState } from 'react';
import { Refusal } from '../../../shared-core/contract/answer.ts';
import type { RequestInput } from '../../../shared-core/contract/requests.ts';
import { type DayOrder, dayOrderSchema } from '../../../shared-core/probing/readings/order-of-day.ts';
import { Choice } from '../../form/Choice.tsx';
import { useWords } from '../../words.ts';

type Answers = Pick<RequestInput<'boards.move'>, 'isInserted' | 'isBeforeSawing' | 'order'>;

/** The questions with which a move is refused: what saving it once more answers, and what the button then says. */
const questions = {
  'refusal.move-before-other': { answer: { isInserted: true }, words: 'life.insert-move' },
  'refusal.move-after-other': { answer: { isInserted: true }, words: 'life.change-order' },
  'refusal.move-before-sawn': { answer: { isBeforeSawing: true }, words: 'life.was-log' },
  'refusal.moved-or-probed-first': { answer: {}, words: null },
} as const;
type Question = keyof typeof questions;
const isQuestion = (code: string): code is Question => code in questions;

/**
 * What the machine asks before it saves a move, and what the person answered. Saving again answers yes; which came first is
 * chosen.
 *
 * @param move  what the questions are about; once it is another, nothing was answered
 */
export function useMoveQuestions(move: object) {
  const { say } = useWords();
  const about = JSON.stringify(move);
  const [state, setState] = useState<{ about: string; answers: Answers; open: Question | null }>({
    about,
    answers: {},
    open: null,
  });
  const { answers, open } = state.about === about ? state : { answers: {}, open: null };
  const isOrderAsked = open === 'refusal.moved-or-probed-first' || answers.order != null;
  const words = open && questions[open].words;
  return {
    /** Goes on with what is saved, whose refusal may be the next question. */
    async ask<T>(save: (answers: Answers) => Promise<T>): Promise<T> {
      const given: Answers = { ...answers, ...(open && questions[open].answer) };
      try {
        return await save(given);
      } catch (error) {
        const code = error instanceof Refusal ? error.problem.code : '';
        setState({ about, answers: given, open: isQuestion(code) ? code : null });
        throw error;
      }
    },
    isAsking: open !== null,
    /** What the button says; null: as usual. */
    saveWords: words && say(words),
    /** Which came first, once that is asked. */
    choice: (isOrderAsked && (
      <Choice<DayOrder>
        label={say('life.day-order')}
        value={answers.order ?? null}
        options={dayOrderSchema.options.map((value) => ({ value, label: say(`life.day-order.${value}`) }))}
        onValue={(order) => setState({ about, answers: { ...answers, order }, open })}
      />
    )) as ReactNode,
  };
}
