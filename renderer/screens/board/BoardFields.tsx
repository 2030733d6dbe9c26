import {
  type DisplayUnits,
  longLengthUnit,
  shortLengthText,
  shortLengthUnit,
} from '../../../shared-core/units/length.ts';
import { typedLengthMm } from '../../../shared-core/units/typed-length.ts';
import type { Species } from '../../../shared-core/wood/species/species.ts';
import { dayOf } from '../../parts/days.ts';
import { EndGrain, isEndSaid } from '../../parts/EndGrain.tsx';
import { NumberField, TextArea, TextField } from '../../parts/Field.tsx';
import { SpeciesField } from '../../parts/SpeciesField.tsx';
import { type BoardDraft, type BoardProblems, endOf } from './board-draft.ts';
import { EndFields, optionsOf } from './EndFields.tsx';
import { barkSideWords, sawingWords } from './end-words.ts';

/** Draft, problems and units as the fields below get them. */
export interface BoardFieldsProps {
  draft: BoardDraft;
  /** Those to be shown. */
  problems: BoardProblems;
  units: DisplayUnits;
  onDraft: (draft: BoardDraft) => void;
}

function wire({ draft, problems, onDraft }: BoardFieldsProps) {
  return <K extends keyof BoardDraft>(key: K) => ({
    value: draft[key],
    error: problems[key],
    onValue: (value: BoardDraft[K]) => onDraft({ ...draft, [key]: value }),
  });
}

/** The wood and thickness, without which nothing can be judged. */
export function SpeciesAndThickness({
  allSpecies,
  ...props
}: BoardFieldsProps & { allSpecies: readonly Species[] }) {
  const { draft, problems, units, onDraft } = props;
  const field = wire(props);
  const thicknessMm = typedLengthMm(draft.thickness, units);
  const other = units === 'metric' ? 'imperial' : 'metric';
  return (
    <div className="form-grid">
      <SpeciesField
        label="Wood"
        allSpecies={allSpecies}
        speciesId={draft.speciesId}
        error={problems.speciesId}
        onSpecies={(speciesId) => onDraft({ ...draft, speciesId })}
      />
      <TextField
        label="Thickness"
        hint={
          thicknessMm !== null && thicknessMm >= 3
            ? `${shortLengthText(thicknessMm, units)}, which is ${shortLengthText(thicknessMm, other)}.`
            : `In ${shortLengthUnit(units)}; quarter names like 5/4 and inches like 1 1/16 are understood.`
        }
        {...field('thickness')}
      />
    </div>
  );
}

/** What helps and may be left out. */
export function MoreAboutBoard(props: BoardFieldsProps) {
  const { draft, problems, units, onDraft } = props;
  const field = wire(props);
  const end = endOf(draft, units);
  return (
    <>
      <div className="form-grid">
        <TextField label={`Width, ${shortLengthUnit(units)}`} {...field('width')} />
        <NumberField label="Length" unit={longLengthUnit(units)} {...field('length')} />
      </div>
      <div className="form-grid">
        <TextField label="Sawn on" type="date" max={dayOf(new Date())} {...field('sawnOn')} />
        <TextField label="Log" hint="The log it came from, as you call it." {...field('log')} />
      </div>
      <EndFields
        draft={draft}
        sawings={optionsOf(sawingWords)}
        barkSides={optionsOf(barkSideWords)}
        ringRadiusError={problems.ringRadius}
        units={units}
        lead="How much it will cup follows from it. What you leave out is guessed, and its page says so."
        onDraft={(changed) => onDraft({ ...draft, ...changed })}
      >
        {end && isEndSaid(end) && <EndGrain board={end} />}
      </EndFields>
      <TextArea label="Note" {...field('note')} />
    </>
  );
}

/** Where the board lies in its stack. */
export function PlaceInStack(props: BoardFieldsProps) {
  const field = wire(props);
  return (
    <div className="form-grid">
      <NumberField label="Course" hint="Layers counted from the bottom." {...field('layer')} />
      <NumberField label="Column" hint="Counted from the left." {...field('column')} />
    </div>
  );
}
