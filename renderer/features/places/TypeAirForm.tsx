import { z } from 'zod';
import { requests } from '../../../shared-core/contract/requests.ts';
import { dayUntil, type PlaceRow } from '../../../shared-core/contract/yard.ts';
import { bridge } from '../../data/bridge.ts';
import { DateField } from '../../form/DateField.tsx';
import { NumberField } from '../../form/Field.tsx';
import { FormDialog } from '../../form/FormDialog.tsx';
import { TempField } from '../../form/MeasureFields.tsx';
import { useDraft } from '../../form/useDraft.ts';
import { tellDone } from '../../stores/notices.ts';
import { dayOf } from '../../ui/days.ts';
import { useWords } from '../../words.ts';

const { tempC } = requests['air.type'].input.shape;

/** Asks what a hygrometer at a place shows. */
export function TypeAirForm({
  place,
  onClose,
}: {
  place: Pick<PlaceRow, 'id' | 'name'>;
  onClose: () => void;
}) {
  const { say } = useWords();
  const today = dayOf(new Date());
  const schema = z.object({ measuredOn: dayUntil(today), tempC, rhPct: z.number().min(0).max(100) });
  const { draft, field, read, set } = useDraft(schema, { measuredOn: today, tempC: null, rhPct: null });
  const { id: placeId, name: placeName } = place;
  return (
    <FormDialog
      title={say('places.type-air-title', { placeName })}
      saveWords={say('common.save')}
      onSave={async () => {
        const { rhPct, ...air } = read();
        await bridge().command('air.type', { placeId, ...air, rh: rhPct / 100 });
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
