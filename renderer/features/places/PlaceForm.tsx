import { newPlaceSchema, type PlaceKind, type PlaceRow } from '../../../shared-core/contract/yard.ts';
import { bridge } from '../../data/bridge.ts';
import { useEdit } from '../../data/useEdit.ts';
import { useQuery } from '../../data/useQuery.ts';
import { TextField } from '../../form/Field.tsx';
import { FormDialog } from '../../form/FormDialog.tsx';
import { useDraft } from '../../form/useDraft.ts';
import { useWords } from '../../words.ts';
import { PlaceAirFields } from './PlaceAirFields.tsx';
import { type Outdoors, outdoorsOf, placeAirOf, placeAirSchema } from './place-air.ts';
import { useStation } from './StationField.tsx';
import { YearChart } from './YearChart.tsx';

const nameSchema = newPlaceSchema.pick({ name: true });

interface Props {
  place: PlaceRow | null;
  /** Of a new one, at first. */
  kind?: PlaceKind;
  onSaved: (place: PlaceRow) => void;
  onClose: () => void;
}

/** Asks for a place and its air; for a new one where `place` is null. */
export function PlaceForm(props: Props) {
  const places = useQuery('places.list', {});
  // The yard's outdoor air decides what the fields begin with.
  if (places.output === null && places.error === null) return null;
  return <FormOf {...props} outdoors={outdoorsOf(places.output ?? [], props.place?.id ?? null)} />;
}

function FormOf({ place, kind: newKind, onSaved, onClose, outdoors }: Props & { outdoors: Outdoors | null }) {
  const { say } = useWords();
  const edit = useEdit('places.edit', place);
  const { theirs } = edit;
  const known = { outdoors, saved: edit.base };
  const schema = placeAirSchema(known);
  const named = useDraft(nameSchema, place ?? { name: '' }, theirs);
  const typed = useDraft(
    schema,
    placeAirOf(place, outdoors, newKind),
    theirs && placeAirOf(theirs, outdoors),
  );
  const station = useStation(place);
  const year = (typed.draft.way === 'station' ? station.meant : typed.made?.made)?.air;

  /** What the fields give back where nothing is typed: humidity is rounded in them. */
  const rounded = edit.base && { ...edit.base, ...schema.parse(placeAirOf(edit.base, outdoors)).made };
  /** All of a damaged one is saved again. */
  const untouched = edit.base?.isDamaged ? null : rounded;
  /** What readings say of the air, as long as it is still the same. */
  const isSame = JSON.stringify(year) === JSON.stringify(rounded?.air);
  const isClash = theirs && !isSame && JSON.stringify(year) !== JSON.stringify(theirs.air);

  async function save(): Promise<void> {
    typed.show();
    const { name } = named.read();
    const { kind, airMovement, made } = typed.read();
    const saved = { name, kind, airMovement, ...(made ?? (await station.read())) };
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
        typed.refill(placeAirOf(saved, outdoors));
        station.refill(saved);
      })}
    >
      <TextField label={say('places.name')} {...named.field('name')} />
      <PlaceAirFields {...{ typed, known, station }} saved={isClash ? theirs.airSource : undefined} />
      {year && (
        <YearChart
          placeName={named.draft.name.trim() || null}
          air={year}
          offsetPct={isSame ? (place?.airOffset?.offsetPct ?? 0) : 0}
        />
      )}
    </FormDialog>
  );
}
