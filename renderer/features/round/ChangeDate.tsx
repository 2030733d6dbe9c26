import { useState } from 'react';
import { z } from 'zod';
import type { RequestInput } from '../../../shared-core/contract/requests.ts';
import type { RoundDate } from '../../../shared-core/contract/round.ts';
import { dayUntil } from '../../../shared-core/contract/yard.ts';
import { dateMessage } from '../../../shared-core/record-words/date-message.ts';
import { useEdit } from '../../data/useEdit.ts';
import { DateField } from '../../form/DateField.tsx';
import { FormDialog } from '../../form/FormDialog.tsx';
import { givenTimeSchema, TimeField } from '../../form/TimeField.tsx';
import { useDraft } from '../../form/useDraft.ts';
import { useQuestions } from '../../form/useQuestions.ts';
import { tellDone } from '../../stores/notices.ts';
import { Button } from '../../ui/Button.tsx';
import { dayOf, instantOfDay } from '../../ui/days.ts';
import { useWords } from '../../words.ts';
import { DayOrderChoice } from '../stacks/DayOrderChoice.tsx';

/** Corrects when a finished round was, as where the clock of the machine was wrong. */
export function ChangeDate({ round }: { round: RoundDate }) {
  const { say, formats } = useWords();
  const [isOpen, setOpen] = useState(false);
  return (
    <>
      <Button onClick={() => setOpen(true)}>
        {say('round-date.change')}
        <span className="spoken-only">
          {' '}
          {round.isDated ? formats.day(round.startedAt) : formats.dateTime(round.startedAt)}
        </span>
      </Button>
      {isOpen && <ChangeDateForm round={round} onClose={() => setOpen(false)} />}
    </>
  );
}

const schemaOn = (today: string) =>
  z.object({
    /** Of a round of which only the day is known. */
    day: dayUntil(today),
    startedAt: givenTimeSchema,
  });

type Answers = Pick<RequestInput<'rounds.edit'>['changed'], 'isYearRight' | 'order'>;
/** The questions with which a date is refused, and what saving again answers; which came first is chosen. */
const questions = {
  'round-date.long-before-stack': { isYearRight: true },
  'past-round.moved-or-probed-first': {},
} as const;

const fieldsOf = ({ startedAt }: RoundDate) => ({ day: dayOf(new Date(startedAt)), startedAt });

function ChangeDateForm({ round, onClose }: { round: RoundDate; onClose: () => void }) {
  const { say } = useWords();
  const edit = useEdit('rounds.edit', round);
  const today = dayOf(new Date());
  const { draft, field, set, read, refill } = useDraft(
    schemaOn(today),
    fieldsOf(round),
    edit.theirs && fieldsOf(edit.theirs),
  );

  const { answers, open, give, ask } = useQuestions<Answers, keyof typeof questions>(questions, {
    meant: round.isDated ? draft.day : draft.startedAt,
  });
  const isYearAsked = open === 'round-date.long-before-stack';

  async function save(): Promise<void> {
    const { day, startedAt } = read();
    const isNewDay = round.isDated && day !== fieldsOf(round).day;
    const dated = { startedAt: isNewDay ? instantOfDay(day, new Date()) : startedAt };
    const saved = await ask((given) => edit.save({ ...dated, ...given }));
    if (saved && saved.startedAt !== round.startedAt) {
      const [was, is] = [round, saved].map((each) => dateMessage(each.startedAt, each.isDated));
      tellDone(say('round-date.changed', { was: was!, is: is! }));
    }
  }

  return (
    <FormDialog
      title={say('round-date.title')}
      saveWords={say(isYearAsked ? 'round-date.year-right' : 'common.save')}
      onSave={save}
      isQuestion={open !== null}
      onClose={onClose}
      conflict={edit.conflict((theirs) => refill(fieldsOf(theirs)))}
    >
      <p className="soft">{say('round-date.moves-all')}</p>
      {round.isDated ? (
        <DateField
          label={say('round-start.date')}
          max={today}
          {...field('day')}
          value={draft.day || null}
          onValue={(day) => set({ day: day ?? '' })}
        />
      ) : (
        <TimeField
          label={say('round-date.start')}
          blankIsNow={false}
          {...field('startedAt')}
          value={draft.startedAt || null}
          onValue={(startedAt) => set({ startedAt: startedAt ?? '' })}
        />
      )}
      {(open === 'past-round.moved-or-probed-first' || answers.order !== undefined) && (
        <DayOrderChoice value={answers.order ?? null} onValue={(order) => give({ order })} />
      )}
    </FormDialog>
  );
}
