import { useState } from 'react';
import { Refusal } from '../../../shared-core/contract/answer.ts';
import type { BoardRow, StackRow } from '../../../shared-core/contract/yard.ts';
import { message } from '../../../shared-core/words/message.ts';
import { bridge } from '../../data/bridge.ts';
import { useQuery } from '../../data/useQuery.ts';
import { DateField } from '../../form/DateField.tsx';
import { Select } from '../../form/Field.tsx';
import { FormDialog } from '../../form/FormDialog.tsx';
import { tellDone } from '../../stores/notices.ts';
import { instantOfDay } from '../../ui/days.ts';
import { Failed, Loading } from '../../ui/Screen.tsx';
import { useWords } from '../../words.ts';

type Target = { stack: Pick<StackRow, 'id' | 'name'> } | { board: Pick<BoardRow, 'id' | 'code'> };

/** Asks where a board, or a stack with all its boards, was moved to, and when. */
export function MoveForm({
  target,
  placeId: suggested = null,
  onClose,
}: {
  target: Target;
  /** Where to, at first; null for none. */
  placeId?: number | null;
  onClose: () => void;
}) {
  const { say, formats } = useWords();
  const today = formats.localDay(new Date());
  const places = useQuery('places.list', {});
  const [placeId, setPlaceId] = useState(suggested === null ? '' : String(suggested));
  const [day, setDay] = useState(today);

  async function save(): Promise<void> {
    const place = places.output?.find((each) => String(each.id) === placeId);
    if (!place) throw new Refusal(message('validation.place-missing'));
    if (day === '') throw new Refusal(message('validation.day-missing'));
    await move(target, { placeId: place.id, since: instantOfDay(day, new Date()) });
    tellDone(say('stacks.moved', { name: nameOf(target), placeName: place.name }));
  }

  return (
    <FormDialog
      title={say('stacks.move-named', { name: nameOf(target) })}
      saveWords={say('stacks.move-button')}
      onSave={save}
      onClose={onClose}
    >
      {places.error && <Failed sentence={places.error} again={places.again} />}
      {places.loading && <Loading />}
      <p>{say('stacks.move-history')}</p>
      <Select
        label={say('stacks.move-to')}
        value={placeId}
        options={[
          { value: '', label: say('stacks.choose-place') },
          ...(places.output ?? []).map((place) => ({
            value: String(place.id),
            label: place.name,
            isName: true,
          })),
        ]}
        onValue={setPlaceId}
      />
      <DateField
        label={say('stacks.move-day')}
        hint={say('stacks.move-day-hint')}
        max={today}
        value={day || null}
        onValue={(chosen) => setDay(chosen ?? '')}
      />
    </FormDialog>
  );
}

const nameOf = (target: Target): string => ('stack' in target ? target.stack.name : target.board.code);

async function move(target: Target, to: { placeId: number; since: string }): Promise<void> {
  if ('stack' in target) {
    await bridge().command('stacks.move', { id: target.stack.id, ...to });
    return;
  }
  await bridge().command('boards.move', { boardIds: [target.board.id], ...to });
}
