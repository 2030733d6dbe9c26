import { type ReactNode, useState } from 'react';
import { z } from 'zod';
import type { RequestInput } from '../../../shared-core/contract/requests.ts';
import { dayUntil } from '../../../shared-core/contract/yard.ts';
import { ClockField } from '../../form/ClockField.tsx';
import { DateField } from '../../form/DateField.tsx';
import { Checkbox } from '../../form/Field.tsx';
import { useDraft } from '../../form/useDraft.ts';
import { momentOfDay } from '../../ui/days.ts';
import { useWords } from '../../words.ts';
import { useMoveQuestions } from './useMoveQuestions.tsx';

type Move = Omit<RequestInput<'boards.move'>, 'boardIds' | 'work'>;

const schemaOn = (today: string) => z.object({ day: dayUntil(today), time: z.string() });

/**
 * Whether boards that come to another stack were carried to its place, and when.
 *
 * @param place   of the stack, where some of the boards are elsewhere; null: nothing is to be carried
 * @param boards  how many come
 */
export function useCarried(place: { id: number; name: string } | null, boards: number) {
  const { say, formats } = useWords();
  const today = formats.localDay(new Date());
  const [isCarried, setCarried] = useState(true);
  const { draft, field, set, read } = useDraft(schemaOn(today), { day: today, time: '' });
  const questions = useMoveQuestions({ place, isCarried, draft });
  const isAsked = place !== null;
  return {
    /** Goes on with the move to be saved, null for none. */
    ask<T>(save: (move: Move | null) => Promise<T>): Promise<T> {
      if (place === null || !isCarried) return save(null);
      const { day, time } = read();
      const to = { placeId: place.id, ...momentOfDay(day, time, new Date()) };
      return questions.ask((answers) => save({ ...to, ...answers }));
    },
    isAsking: questions.isAsking,
    saveWords: questions.saveWords,
    fields: (isAsked && (
      <>
        <Checkbox
          label={say('stacks.carried', { boards, placeName: place.name })}
          hint={isCarried ? undefined : say('stacks.not-carried', { boards })}
          checked={isCarried}
          onChecked={setCarried}
        />
        {isCarried && (
          <>
            <DateField
              label={say('stacks.move-day')}
              max={today}
              {...field('day')}
              value={draft.day || null}
              onValue={(day) => set({ day: day ?? '' })}
            />
            <ClockField label={say('life.move-time')} value={draft.time} onValue={(time) => set({ time })} />
          </>
        )}
        {questions.choice}
      </>
    )) as ReactNode,
  };
}
