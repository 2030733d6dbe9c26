import { useState } from 'react';
import { Refusal } from '../../shared-core/contract/answer.ts';

/**
 * What the machine asks before it saves something, by refusing it, and what the person answered: saving once more is the
 * answer of the question that is open.
 *
 * @param questions  the code of each such refusal, and its answer
 * @param about  what the questions are about; once it is another, nothing was answered
 */
export function useQuestions<Answers extends object, Code extends string>(
  questions: Readonly<Record<Code, Partial<Answers>>>,
  about: object,
) {
  const text = JSON.stringify(about);
  const none: Partial<Answers> = {};
  const [state, setState] = useState<{ about: string; answers: Partial<Answers>; open: Code | null }>({
    about: text,
    answers: none,
    open: null,
  });
  const { answers, open } = state.about === text ? state : { answers: none, open: null };
  return {
    answers,
    /** The code of the question that waits for its answer; null: there is none. */
    open,
    /** Adds what the person chose before saving again. */
    give: (more: Partial<Answers>): void => setState({ about: text, answers: { ...answers, ...more }, open }),
    /** Goes on with what is saved, whose refusal may be the next question. */
    async ask<T>(save: (answers: Partial<Answers>) => Promise<T>): Promise<T> {
      const given = { ...answers, ...(open && questions[open]) };
      try {
        return await save(given);
      } catch (error) {
        const code = error instanceof Refusal ? error.problem.code : '';
        setState({ about: text, answers: given, open: code in questions ? (code as Code) : null });
        throw error;
      }
    },
  };
}
