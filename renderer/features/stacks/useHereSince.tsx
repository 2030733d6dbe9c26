import { z } from 'zod';
import { Refusal } from '../../../shared-core/contract/answer.ts';
import { dayUntil } from '../../../shared-core/contract/yard.ts';
import { message } from '../../../shared-core/words/message.ts';
import { Choice } from '../../form/Choice.tsx';
import { DateField } from '../../form/DateField.tsx';
import { useDraft } from '../../form/useDraft.ts';
import { useUnsaved } from '../../stores/unsaved-forms.ts';
import { useWords } from '../../words.ts';

type Answer = 'sawn' | 'stack' | 'entered' | 'other';

const schemaOn = (today: string) => z.object({ day: dayUntil(today).nullable() });

/**
 * Asks whether boards that were sawn before they were entered have been at their place since, and else since when.
 *
 * @param boards     how many
 * @param sawnOn     local day; null where it is not known, and nothing is asked
 * @param enteredOn  the local day on which they are or were entered, and are here since otherwise; null: nothing is asked
 * @param stackOn    the local day since when the rest of their stack is here; null where there is none
 * @param form       the form whose answers outlast its screen
 */
export function useHereSince({
  boards,
  sawnOn,
  enteredOn,
  stackOn = null,
  form = null,
}: {
  boards: number;
  sawnOn: string | null;
  enteredOn: string | null;
  stackOn?: string | null;
  form?: string | null;
}) {
  const { say, formats } = useWords();
  const today = formats.localDay(new Date());
  const [answer, setAnswer] = useUnsaved<Answer | null>(form, 'here-since', null);
  const { field, read: readDay } = useDraft(schemaOn(today), { day: null }, null, form, 'here-since-on');
  const isAsked = sawnOn !== null && enteredOn !== null && sawnOn < enteredOn;
  const hasStack = isAsked && stackOn !== null && sawnOn < stackOn && stackOn < enteredOn;
  const chosen = answer === 'stack' && !hasStack ? null : answer;
  const options = !isAsked
    ? []
    : [
        { value: 'sawn' as const, label: say('stacks.here-since-sawn.yes') },
        ...(hasStack
          ? [{ value: 'stack' as const, label: say('stacks.here-since-sawn.stack', { sinceOn: stackOn }) }]
          : []),
        {
          value: 'entered' as const,
          label:
            enteredOn === today
              ? say('stacks.here-since-sawn.today')
              : say('stacks.here-since-sawn.entered', { enteredOn }),
        },
        { value: 'other' as const, label: say('stacks.here-since-sawn.other') },
      ];

  return {
    /** The question; null where there is nothing to ask. */
    part: isAsked && (
      <>
        <Choice<Answer>
          label={say('stacks.here-since-sawn', { boards })}
          value={chosen}
          options={options}
          onValue={setAnswer}
        />
        {chosen === 'other' && (
          <div className="form-grid">
            <DateField label={say('stacks.here-since-on')} max={today} {...field('day')} />
          </div>
        )}
      </>
    ),
    /**
     * The local day since when they are here; null where nothing is asked.
     * @throws Refusal where the answer is missing, or is a day before they were sawn
     */
    read(): string | null {
      if (!isAsked) return null;
      if (chosen === null) throw new Refusal(message('stacks.here-since-sawn-missing', { boards }));
      if (chosen !== 'other') return { sawn: sawnOn, stack: stackOn, entered: enteredOn }[chosen];
      const { day } = readDay();
      if (day === null) throw new Refusal(message('stacks.here-since-on-missing', { boards }));
      if (day < sawnOn) throw new Refusal(message('refusal.here-before-sawn', { sawnOn }));
      return day;
    },
  };
}
