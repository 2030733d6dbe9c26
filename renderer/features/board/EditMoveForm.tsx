import { useState } from 'react';
import { z } from 'zod';
import { Conflict } from '../../../shared-core/contract/answer.ts';
import { says } from '../../../shared-core/contract/validation.ts';
import { dayUntil, type Move } from '../../../shared-core/contract/yard.ts';
import { bridge } from '../../data/bridge.ts';
import { useLongWork } from '../../data/useLongWork.ts';
import { useQuery } from '../../data/useQuery.ts';
import { ClockField } from '../../form/ClockField.tsx';
import { DateField } from '../../form/DateField.tsx';
import { Checkbox } from '../../form/Field.tsx';
import { FormDialog } from '../../form/FormDialog.tsx';
import { useDraft } from '../../form/useDraft.ts';
import { tellDone } from '../../stores/notices.ts';
import { dayOf, momentOfDay, timeOf } from '../../ui/days.ts';
import { useWords } from '../../words.ts';
import { PlaceField } from '../places/PlaceField.tsx';
import { useMoveQuestions } from '../stacks/useMoveQuestions.tsx';

const schemaOn = (today: string) =>
  z.object({
    placeId: z.int(says('validation.place-missing')),
    day: dayUntil(today),
    /** Blank: not known. */
    time: z.string(),
  });

const fieldsOf = ({ placeId, since, datedBy }: Move) => {
  const at = new Date(since);
  return { placeId, day: dayOf(at), time: datedBy === 'day' ? '' : timeOf(at) };
};

/** Corrects where a board was moved to and when; on request for all boards that were moved with it. */
export function EditMoveForm({
  boardCode,
  move,
  onClose,
}: {
  boardCode: string;
  move: Move;
  onClose: () => void;
}) {
  const { say, formats } = useWords();
  const today = formats.localDay(new Date());
  const [base, setBase] = useState(move);
  /** As another window saved it meanwhile. */
  const [theirs, setTheirs] = useState<Move | null>(null);
  const [isForAll, setForAll] = useState(false);
  const { boards = 1 } = useQuery('moves.together', { id: move.id }).output ?? {};
  const { draft, field, set, read, refill } = useDraft(
    schemaOn(today),
    fieldsOf(base),
    theirs && fieldsOf(theirs),
  );
  const questions = useMoveQuestions({ draft, isForAll });
  const { underWay, follow, cancel } = useLongWork();

  async function save(): Promise<void> {
    const { placeId, day, time } = read();
    const before = fieldsOf(base);
    const changed = {
      ...(placeId !== before.placeId && { placeId }),
      ...((day !== before.day || time !== before.time) && { when: momentOfDay(day, time, new Date()) }),
    };
    if (Object.keys(changed).length === 0) return;
    const edit = { id: move.id, basedOn: (theirs ?? base).version, changed, together: isForAll };
    try {
      await questions.ask((answers) =>
        follow((work) => bridge().command('moves.edit', { ...edit, ...answers, work })),
      );
    } catch (error) {
      if (error instanceof Conflict) setTheirs(error.current as Move);
      throw error;
    }
    tellDone(say('life.move-changed', { boardCode }));
  }

  function takeTheirs(saved: Move): void {
    setBase(saved);
    setTheirs(null);
    refill(fieldsOf(saved));
  }

  return (
    <FormDialog
      title={say('life.move-of', { boardCode })}
      saveWords={questions.saveWords ?? say('common.save')}
      isQuestion={questions.isAsking}
      onSave={save}
      onClose={onClose}
      conflict={theirs && { takeTheirs: () => takeTheirs(theirs) }}
      work={{ label: say('life.changing-moves'), underWay, onCancel: cancel }}
    >
      <PlaceField label={say('stacks.move-to')} {...field('placeId')} />
      <DateField
        label={say('stacks.move-day')}
        max={today}
        {...field('day')}
        value={draft.day || null}
        onValue={(day) => set({ day: day ?? '' })}
      />
      <ClockField label={say('life.move-time')} value={draft.time} onValue={(time) => set({ time })} />
      {boards > 1 && (
        <Checkbox label={say('life.moves-together', { boards })} checked={isForAll} onChecked={setForAll} />
      )}
      {questions.choice}
    </FormDialog>
  );
}
