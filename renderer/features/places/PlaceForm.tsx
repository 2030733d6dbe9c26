import { newPlaceSchema, type PlaceRow } from '../../../shared-core/contract/yard.ts';
import { bridge } from '../../data/bridge.ts';
import { useEdit } from '../../data/useEdit.ts';
import { TextField } from '../../form/Field.tsx';
import { FormDialog } from '../../form/FormDialog.tsx';
import { useDraft } from '../../form/useDraft.ts';
import { useWords } from '../../words.ts';
import { PlaceAirFields } from './PlaceAirFields.tsx';
import { placeAirOf, placeAirSchema } from './place-air.ts';
import { useStation } from './StationField.tsx';
import { YearChart } from './YearChart.tsx';

const nameSchema = newPlaceSchema.pick({ name: true });

/** Asks for a place and its air; for a new one where `place` is null. */
export function PlaceForm({
  place,
  onSaved,
  onClose,
}: {
  place: PlaceRow | null;
  onSaved: (place: PlaceRow) => void;
  onClose: () => void;
}) {
  const { say } = useWords();
  const edit = useEdit('places.edit', place);
  const { theirs } = edit;
  const named = useDraft(nameSchema, place ?? { name: '' }, theirs);
  const typed = useDraft(placeAirSchema, placeAirOf(place), theirs && placeAirOf(theirs));
  const station = useStation(place);
  const year = (typed.draft.way === 'station' ? station.meant : typed.made?.made)?.air;

  /** What the fields give back where nothing is typed: humidity is rounded in them. */
  const rounded = edit.base && { ...edit.base, ...placeAirSchema.parse(placeAirOf(edit.base)).made };
  /** All of a damaged one is saved again. */
  const untouched = edit.base?.isDamaged ? null : rounded;
  /** What readings say of the air, as long as it is still the same. */
  const isSame = JSON.stringify(year) === JSON.stringify(rounded?.air);
  const isClash = theirs && !isSame && JSON.stringify(year) !== JSON.stringify(theirs.air);

  async function save(): Promise<void> {
    typed.show();
    const { name } = named.read();
    const { kind, made } = typed.read();
    const saved = { name, kind, ...(made ?? (await station.read())) };
    const row = edit.base ? await edit.save(saved, untouched) : await bridge().command('places.add', saved);
    if (row) onSaved(row);
  }

  return (
    <FormDialog
      title={place ? say('places.edit', { placeName: place.name }) : say('places.add')}
      saveWords={say(place ? 'common.save' : 'common.add')}
      onSave={save}
      onClose={onClose}
      conflict={edit.conflict((saved) => {
        named.refill(saved);
        typed.refill(placeAirOf(saved));
        station.refill(saved);
      })}
    >
      <TextField label={say('places.name')} {...named.field('name')} />
      <PlaceAirFields {...{ typed, station }} saved={isClash ? theirs.airSource : undefined} />
      {year && (
        <YearChart
          placeName={named.draft.name.trim() || null}
          air={year}
          offsetPct={isSame ? (place?.airOffset?.meanPct ?? 0) : 0}
        />
      )}
    </FormDialog>
  );
}
