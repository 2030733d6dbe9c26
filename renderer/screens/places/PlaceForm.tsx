import { useState } from 'react';
import type { NewPlace, PlaceKind, PlaceRow } from '../../../shared-core/contract/yard.ts';
import type { DisplayUnits } from '../../../shared-core/units/length.ts';
import { emcOfYear } from '../../../shared-core/wood/climate/climate.ts';
import { bridge } from '../../bridge.ts';
import { Checkbox, Select, TextField } from '../../parts/Field.tsx';
import { FormDialog, fieldsMarked } from '../../parts/FormDialog.tsx';
import { placeKindWords } from './kinds.ts';
import { AirOfYear, MonthsOfAir } from './MonthsOfAir.tsx';
import { draftOfPlace, emptyPlaceDraft, type PlaceDraft, placeProblems, yearOf } from './place-draft.ts';
import { YearChart } from './YearChart.tsx';

const kinds = Object.entries(placeKindWords) as [PlaceKind, string][];

/** Asks for a place and its air; for a new one where `place` is null. */
export function PlaceForm({
  place,
  units,
  thisMonth,
  lead,
  onSaved,
  onClose,
}: {
  place: PlaceRow | null;
  units: DisplayUnits;
  thisMonth: number;
  /** Why it is asked for, where that is not plain. */
  lead?: string;
  onSaved?: (place: PlaceRow) => void;
  onClose: () => void;
}) {
  const [draft, setDraft] = useState<PlaceDraft>(place ? draftOfPlace(place, units) : emptyPlaceDraft);
  const [shown, setShown] = useState(false);
  const problems = placeProblems(draft, units);
  const year = yearOf(draft, units);

  async function save(): Promise<void> {
    setShown(true);
    if (problems.name || !year) throw fieldsMarked();
    const made: NewPlace = { name: draft.name, kind: draft.kind, air: year };
    const saved = place
      ? await bridge().command('places.change', { ...made, id: place.id })
      : await bridge().command('places.add', made);
    onSaved?.(saved);
  }

  return (
    <FormDialog
      title={place ? `Change ${place.name}` : 'Add a place'}
      saveWords={place ? 'Save the place' : 'Add the place'}
      onSave={save}
      onClose={onClose}
    >
      {lead && <p>{lead}</p>}
      <TextField
        label="Name"
        value={draft.name}
        error={shown ? problems.name : null}
        onValue={(name) => setDraft({ ...draft, name })}
      />
      <Select
        label="Kind"
        value={draft.kind}
        options={kinds.map(([value, label]) => ({ value, label }))}
        onValue={(kind) =>
          setDraft({ ...draft, kind, sameAllYear: kind === 'heated-room' || draft.sameAllYear })
        }
      />
      <Checkbox
        label="The air is the same all year"
        hint="As in a heated room. Otherwise give the mean of each month, as a weather service publishes it."
        checked={draft.sameAllYear}
        onChecked={(sameAllYear) => setDraft({ ...draft, sameAllYear })}
      />
      {draft.sameAllYear ? (
        <AirOfYear
          air={draft.months[0]}
          units={units}
          wrong={shown && problems.wrongMonth !== null}
          onAir={(air) => setDraft({ ...draft, months: draft.months.map(() => air) })}
        />
      ) : (
        <MonthsOfAir
          months={draft.months}
          units={units}
          wrongMonth={shown ? problems.wrongMonth : null}
          onMonths={(months) => setDraft({ ...draft, months })}
        />
      )}
      {shown && problems.air && <p className="field-error">{problems.air}</p>}
      {year && (
        <YearChart
          placeName={draft.name || 'this place'}
          emcPct={emcOfYear(year).monthlyEmcPct}
          driestMonth={emcOfYear(year).driestMonth}
          thisMonth={thisMonth}
        />
      )}
    </FormDialog>
  );
}
