import { useState } from 'react';
import { newPlaceSchema, type PlaceKind, type PlaceRow } from '../../../shared-core/contract/yard.ts';
import type { Air } from '../../../shared-core/wood/climate/monthly-air.ts';
import { bridge } from '../../data/bridge.ts';
import { useEdit } from '../../data/useEdit.ts';
import { Select, TextField } from '../../form/Field.tsx';
import { FormDialog, fieldsMarked } from '../../form/FormDialog.tsx';
import { useDraft } from '../../form/useDraft.ts';
import { conflictOf, type FieldTexts } from '../../form/VersionTable.tsx';
import { useWords } from '../../words.ts';
import { airSourceText } from './air-source-text.ts';
import { placeKinds } from './kinds.ts';
import { PlaceAirFields } from './PlaceAirFields.tsx';
import { airDraftOf, emptyAirDraft, ownYear, type PlaceAirDraft } from './place-draft.ts';
import { type AirOfPlace, airOfStation, useStationAir } from './StationField.tsx';
import { YearChart } from './YearChart.tsx';

const kinds = Object.keys(placeKinds) as PlaceKind[];
const namedSchema = newPlaceSchema.pick({ name: true, kind: true });

/** Asks for a place and its air; for a new one where `place` is null. */
export function PlaceForm({
  place,
  thisMonth,
  onSaved,
  onClose,
}: {
  place: PlaceRow | null;
  thisMonth: number;
  onSaved?: (place: PlaceRow) => void;
  onClose: () => void;
}) {
  const { say, formats } = useWords();
  const { draft, set, field, read, refill } = useDraft(namedSchema, place ?? { name: '', kind: 'open-shed' });
  const [air, setAir] = useState<PlaceAirDraft>(place ? airDraftOf(place) : emptyAirDraft);
  const [shown, setShown] = useState(false);
  const own = ownYear(air);
  const ofStation = useStationAir(air.station);
  const known = { station: ofStation?.air, file: air.file?.air, own: 'air' in own ? own.air : undefined };
  const year = known[air.way];

  const edit = useEdit('places.edit', place);
  const airText = ({ tempC, rh }: Air): string =>
    say('places.air-short', { airTempC: tempC, rhPct: rh * 100 });
  const fields: FieldTexts<'places.edit'> = {
    name: { label: say('places.name'), text: (name) => name },
    kind: { label: say('places.kind'), text: (kind) => say(placeKinds[kind]) },
    airSource: { label: say('places.air-source'), text: (source) => say(airSourceText(source)) },
    air: {
      label: say('places.air'),
      text: (months) => {
        const texts = months.map(airText);
        return formats.list(new Set(texts).size === 1 ? texts.slice(0, 1) : texts);
      },
    },
  };

  async function airToSave(): Promise<AirOfPlace> {
    if (edit.base && JSON.stringify(air) === JSON.stringify(airDraftOf(edit.base))) {
      return { air: edit.base.air, airSource: edit.base.airSource };
    }
    if (air.way === 'station') return airOfStation(air.station, formats.list);
    if (air.way === 'file' && air.file) return air.file;
    if (air.way === 'own' && 'air' in own) return { air: own.air, airSource: null };
    throw fieldsMarked();
  }

  async function save(): Promise<void> {
    setShown(true);
    const made = { ...read(), ...(await airToSave()) };
    const saved = edit.base ? await edit.save(made) : await bridge().command('places.add', made);
    if (saved) onSaved?.(saved);
  }

  return (
    <FormDialog
      title={place ? say('places.edit', { placeName: place.name }) : say('places.add')}
      saveWords={say(place ? 'common.save' : 'common.add')}
      onSave={save}
      onClose={onClose}
      conflict={conflictOf(edit, fields, (saved) => {
        refill(saved);
        setAir(airDraftOf(saved));
      })}
    >
      <TextField label={say('places.name')} {...field('name')} />
      <Select
        label={say('places.kind')}
        value={draft.kind ?? 'open-shed'}
        options={kinds.map((kind) => ({ value: kind, label: say(placeKinds[kind]) }))}
        onValue={(kind) => {
          set({ kind });
          // A station tells nothing of the air within walls.
          if (kind === 'shop' || kind === 'heated-room')
            setAir({ ...air, way: 'own', sameAllYear: kind === 'heated-room' || air.sameAllYear });
        }}
      />
      <PlaceAirFields
        draft={air}
        problem={shown && 'problem' in own ? own : null}
        shown={shown}
        onDraft={setAir}
      />
      {year && <YearChart placeName={draft.name.trim() || null} air={year} thisMonth={thisMonth} />}
    </FormDialog>
  );
}
