import { useState } from 'react';
import type { NewPlace, PlaceKind, PlaceRow } from '../../../shared-core/contract/yard.ts';
import type { DisplayUnits } from '../../../shared-core/units/length.ts';
import { emcOfYear } from '../../../shared-core/wood/climate/climate.ts';
import type { Air } from '../../../shared-core/wood/climate/monthly-air.ts';
import { bridge } from '../../data/bridge.ts';
import { useEdit } from '../../data/useEdit.ts';
import { Checkbox, Select, TextField } from '../../form/Field.tsx';
import { FormDialog, fieldsMarked } from '../../form/FormDialog.tsx';
import { conflictOf, type FieldTexts } from '../../form/VersionTable.tsx';
import { useWords } from '../../words.ts';
import { airSourceText } from './air-source-text.ts';
import { placeKinds } from './kinds.ts';
import { AirOfYear, MonthsOfAir } from './MonthsOfAir.tsx';
import { draftOfPlace, emptyPlaceDraft, type PlaceDraft, placeProblems, yearOf } from './place-draft.ts';
import { YearChart } from './YearChart.tsx';

const kinds = Object.keys(placeKinds) as PlaceKind[];

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
  /** Why it is needed, where that is not plain. */
  lead?: string;
  onSaved?: (place: PlaceRow) => void;
  onClose: () => void;
}) {
  const { say, formats } = useWords();
  const [draft, setDraft] = useState<PlaceDraft>(place ? draftOfPlace(place, units) : emptyPlaceDraft);
  const [shown, setShown] = useState(false);
  const problems = placeProblems(draft, units);
  const year = yearOf(draft, units);

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

  const untouched = (shown: PlaceRow): NewPlace => ({
    ...shown,
    air: yearOf(draftOfPlace(shown, units), units) ?? shown.air,
  });

  async function save(): Promise<void> {
    setShown(true);
    if (problems.name || !year) throw fieldsMarked();
    const made: NewPlace = { name: draft.name, kind: draft.kind, air: year, airSource: null };
    const saved = edit.base
      ? await edit.save(made, untouched(edit.base))
      : await bridge().command('places.add', made);
    if (saved) onSaved?.(saved);
  }

  return (
    <FormDialog
      title={place ? say('places.edit', { placeName: place.name }) : say('places.add')}
      saveWords={say(place ? 'common.save' : 'common.add')}
      onSave={save}
      onClose={onClose}
      conflict={conflictOf(edit, fields, (saved) => setDraft(draftOfPlace(saved, units)))}
    >
      {lead && <p>{lead}</p>}
      <TextField
        label={say('places.name')}
        value={draft.name}
        error={shown && problems.name ? say(problems.name) : null}
        onValue={(name) => setDraft({ ...draft, name })}
      />
      <Select
        label={say('places.kind')}
        value={draft.kind}
        options={kinds.map((kind) => ({ value: kind, label: say(placeKinds[kind]) }))}
        onValue={(kind) =>
          setDraft({ ...draft, kind, sameAllYear: kind === 'heated-room' || draft.sameAllYear })
        }
      />
      <Checkbox
        label={say('places.same-all-year')}
        hint={say('places.same-all-year-hint')}
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
      {shown && problems.air && (
        <p className="field-error">
          {problems.wrongMonth === null || draft.sameAllYear
            ? say(problems.air)
            : say('places.month-problem', {
                monthName: formats.month(problems.wrongMonth + 1),
                problem: problems.air,
              })}
        </p>
      )}
      {year && (
        <YearChart
          placeName={draft.name.trim() || null}
          emcPct={emcOfYear(year).monthlyEmcPct}
          driestMonth={emcOfYear(year).driestMonth}
          thisMonth={thisMonth}
        />
      )}
    </FormDialog>
  );
}
