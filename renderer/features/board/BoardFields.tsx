import { type DisplayUnits, shortLengthUnit } from '../../../shared-core/units/length.ts';
import { typedLengthMm } from '../../../shared-core/units/typed-length.ts';
import type { Species } from '../../../shared-core/wood/species/species.ts';
import type { Say } from '../../../shared-core/words/words.ts';
import { DateField } from '../../form/DateField.tsx';
import { NumberField, TextArea, TextField } from '../../form/Field.tsx';
import { BoardLengthField } from '../../form/MeasureFields.tsx';
import { SpeciesField } from '../../form/SpeciesField.tsx';
import { thicknessHint } from '../../form/thickness-hint.ts';
import { EndGrain, isEndKnown } from '../../ui/EndGrain.tsx';
import { useWords } from '../../words.ts';
import { type BoardDraft, type BoardProblems, endOf } from './board-draft.ts';
import { EndFields } from './EndFields.tsx';
import { barkSideOptions, sawingOptions } from './end-words.ts';

/** Draft, problems and units as the fields below get them. */
export interface BoardFieldsProps {
  draft: BoardDraft;
  /** Those to be shown. */
  problems: BoardProblems;
  units: DisplayUnits;
  onDraft: (draft: BoardDraft) => void;
}

function wire({ draft, problems, onDraft }: BoardFieldsProps, say: Say) {
  return <K extends keyof BoardDraft>(key: K) => ({
    value: draft[key],
    error: problems[key] && say(problems[key]),
    onValue: (value: BoardDraft[K]) => onDraft({ ...draft, [key]: value }),
  });
}

/** The species and thickness, without which nothing can be judged. */
export function SpeciesAndThickness({
  allSpecies,
  ...props
}: BoardFieldsProps & { allSpecies: readonly Species[] }) {
  const { draft, units, onDraft } = props;
  const { say } = useWords();
  const field = wire(props, say);
  const typedMm = typedLengthMm(draft.thickness, units);
  return (
    <div className="form-grid">
      <SpeciesField
        label={say('board.species')}
        allSpecies={allSpecies}
        speciesId={draft.speciesId}
        error={field('speciesId').error}
        onSpecies={(speciesId) => onDraft({ ...draft, speciesId })}
      />
      <TextField
        label={say('board.thickness')}
        hint={say(thicknessHint(typedMm, units))}
        {...field('thickness')}
      />
    </div>
  );
}

/** What helps and may be left out. */
export function MoreAboutBoard(props: BoardFieldsProps) {
  const { draft, units, onDraft } = props;
  const { say, formats } = useWords();
  const field = wire(props, say);
  const end = endOf(draft, units);
  return (
    <>
      <div className="form-grid">
        <TextField label={say('board.width-in', { unit: shortLengthUnit(units) })} {...field('width')} />
        <BoardLengthField label={say('board.length')} {...field('lengthMm')} />
      </div>
      <div className="form-grid">
        <DateField
          label={say('board.sawn-on')}
          max={formats.localDay(new Date())}
          value={draft.sawnOn || null}
          onValue={(day) => onDraft({ ...draft, sawnOn: day ?? '' })}
        />
        <TextField label={say('board.log')} hint={say('board.log-hint')} {...field('log')} />
      </div>
      <EndFields
        draft={draft}
        sawings={sawingOptions(say)}
        barkSides={barkSideOptions(say)}
        ringRadiusError={field('ringRadius').error}
        units={units}
        lead={say('board.end-grain-use')}
        onDraft={(changed) => onDraft({ ...draft, ...changed })}
      >
        {end && isEndKnown(end) && <EndGrain board={end} />}
      </EndFields>
      <TextArea label={say('board.note')} {...field('note')} />
    </>
  );
}

/** Where the board lies in its stack. */
export function PlaceInStack(props: BoardFieldsProps) {
  const { say } = useWords();
  const field = wire(props, say);
  return (
    <div className="form-grid">
      <NumberField label={say('board.layer')} hint={say('board.layer-hint')} {...field('layer')} />
      <NumberField label={say('board.column')} hint={say('board.column-hint')} {...field('column')} />
    </div>
  );
}
