import { z } from 'zod';
import type { TypedAir } from '../../../shared-core/contract/air.ts';
import { requests } from '../../../shared-core/contract/requests.ts';
import { dayUntil, type PlaceRow } from '../../../shared-core/contract/yard.ts';
import { bridge } from '../../data/bridge.ts';
import { DateField } from '../../form/DateField.tsx';
import { NumberField } from '../../form/Field.tsx';
import { FormDialog } from '../../form/FormDialog.tsx';
import { TempField } from '../../form/MeasureFields.tsx';
import { useDraft } from '../../form/useDraft.ts';
import { useQuestions } from '../../form/useQuestions.ts';
import { tellDone } from '../../stores/notices.ts';
import { dayOf } from '../../ui/days.ts';
import { useWords } from '../../words.ts';

const { tempC } = requests['air.type'].input.shape;

/** What is asked where the day has another value, and the answer that saves. */
const asking = { 'refusal.air-other': { isReplacing: true } } as const;

/** Asks what a hygrometer at a place shows. */
export function TypeAirForm({
  place,
  typed = null,
  onClose,
}: {
  place: Pick<PlaceRow, 'id' | 'name'>;
  /** A value to edit; null for a new one. */
  typed?: TypedAir | null;
  onClose: () => void;
}) {
  const { say } = useWords();
  const today = dayOf(new Date());
  const schema = z.object({ measuredOn: dayUntil(today), tempC, rhPct: z.number().min(0).max(100) });
  const { draft, field, read, set } = useDraft(
    schema,
    typed
      ? { measuredOn: dayOf(new Date(typed.at)), tempC: typed.tempC, rhPct: 100 * typed.rh }
      : { measuredOn: today, tempC: null, rhPct: null },
  );
  const questions = useQuestions<{ isReplacing: boolean }, keyof typeof asking>(asking, draft);
  const { id: placeId, name: placeName } = place;
  return (
    <FormDialog
      title={say('places.type-air-title', { placeName })}
      saveWords={say(questions.open === null ? 'common.save' : 'places.replace-air')}
      isQuestion={questions.open !== null}
      onSave={async () => {
        const { rhPct, ...rest } = read();
        const air = { ...rest, rh: rhPct / 100 };
        await questions.ask((answers) =>
          typed
            ? bridge().command('air.edit', { id: typed.id, ...air, ...answers })
            : bridge().command('air.type', { placeId, ...air, ...answers }),
        );
        tellDone(say('places.air-typed', { placeName }));
      }}
      onClose={onClose}
    >
      <p>{say('places.type-air-how')}</p>
      <TempField label={say('places.temperature')} autoFocus {...field('tempC')} />
      <NumberField label={say('places.humidity')} unit="%" {...field('rhPct')} />
      <DateField
        label={say('places.measured-on')}
        max={today}
        {...field('measuredOn')}
        value={draft.measuredOn || null}
        onValue={(day) => set({ measuredOn: day ?? '' })}
      />
    </FormDialog>
  );
}
