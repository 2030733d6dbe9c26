import { givenBoardSchema, unknownOfBoard } from '../../../shared-core/contract/yard.ts';
import type { BarkSide } from '../../../shared-core/wood/drying/faces-of-board.ts';
import type { Species } from '../../../shared-core/wood/species/species.ts';
import { DateField } from '../../form/DateField.tsx';
import { NumberField, Select, TextArea, TextField } from '../../form/Field.tsx';
import { BoardLengthField, LengthField, ThicknessField } from '../../form/MeasureFields.tsx';
import { SpeciesField } from '../../form/SpeciesField.tsx';
import { thicknessHint } from '../../form/thickness-hint.ts';
import { type Draft, useDraft } from '../../form/useDraft.ts';
import { useUnits } from '../../stores/settings.ts';
import { EndGrain, isEndKnown } from '../../ui/EndGrain.tsx';
import { useWords } from '../../words.ts';
import css from './board.module.css';
import { barkSideOptions, sawingOptions } from './end-words.ts';

type BoardDraft = Draft<typeof givenBoardSchema._zod.input>;

/** A board as it is typed, in a form that adds one or edits it. */
export const useBoardDraft = (start: BoardDraft) => useDraft(givenBoardSchema, start);
type Fields = ReturnType<typeof useBoardDraft>;

/** A board of which nothing but these is known. */
export const newBoardDraft = (known: Pick<BoardDraft, 'code' | 'stackId' | 'speciesId'>): BoardDraft => ({
  ...unknownOfBoard,
  ...known,
  thicknessMm: null,
  thicknessQuarters: null,
});

/** The species and thickness, without which nothing can be judged. */
export function SpeciesAndThickness({
  board: { draft, field, set },
  allSpecies,
}: {
  board: Fields;
  allSpecies: readonly Species[];
}) {
  const units = useUnits();
  const { say } = useWords();
  return (
    <div className="form-grid">
      <SpeciesField label={say('board.species')} allSpecies={allSpecies} {...field('speciesId')} />
      <ThicknessField
        label={say('board.thickness')}
        hint={say(thicknessHint(draft.thicknessMm, units))}
        {...field('thicknessMm')}
        quarters={draft.thicknessQuarters}
        onThickness={(thicknessMm, thicknessQuarters) => set({ thicknessMm, thicknessQuarters })}
      />
    </div>
  );
}

/** What helps and may be left out. */
export function MoreAboutBoard({ board }: { board: Fields }) {
  const { field } = board;
  const { say, formats } = useWords();
  return (
    <>
      <div className="form-grid">
        <LengthField label={say('board.width')} {...field('widthMm')} />
        <BoardLengthField label={say('board.length')} {...field('lengthMm')} />
      </div>
      <div className="form-grid">
        <DateField label={say('board.sawn-on')} max={formats.localDay(new Date())} {...field('sawnOn')} />
        <TextField label={say('board.log')} hint={say('board.log-hint')} {...field('log')} />
      </div>
      <EndFields board={board} />
      <TextArea label={say('board.note')} {...field('note')} />
    </>
  );
}

/** What can be seen on a board's end grain: how its rings lie, and where the bark was. */
function EndFields({ board: { draft, field, set } }: { board: Fields }) {
  const { say, formats } = useWords();
  const today = formats.localDay(new Date());
  const { thicknessMm, widthMm, ringRadiusMm } = draft;
  const end = {
    sawing: draft.sawing ?? 'unknown',
    barkSide: draft.barkSide ?? 'unknown',
    thicknessMm: thicknessMm ?? 0,
    widthMm: widthMm || null,
    ringRadiusMm: ringRadiusMm || null,
  };
  return (
    <fieldset className={css.end}>
      <legend>{say('board.end-grain')}</legend>
      <p className="field-hint">{say('board.end-grain-use')}</p>
      {end.thicknessMm > 0 && isEndKnown(end) && <EndGrain board={end} />}
      <div className="form-grid">
        <Select
          label={say('board.sawing')}
          hint={say('board.sawing-hint')}
          options={sawingOptions(say)}
          value={end.sawing}
          onValue={(sawing) => set({ sawing })}
        />
        <Select
          label={say('board.bark-side')}
          hint={say('board.bark-side-hint')}
          options={barkSideOptions(say)}
          value={end.barkSide}
          onValue={(barkSide) => set({ barkSide, barkOffOn: barkOffAfter(draft, barkSide, today) })}
        />
      </div>
      <div className="form-grid">
        {isBarkOff(end.barkSide) && (
          <DateField
            label={say('board.bark-off-on')}
            hint={say('board.bark-off-hint')}
            max={today}
            {...field('barkOffOn')}
          />
        )}
        <LengthField
          label={say('board.pith-distance')}
          hint={say('board.pith-distance-hint')}
          {...field('ringRadiusMm')}
        />
      </div>
    </fieldset>
  );
}

/** Whether the bark of a known side is off, so that there is a day on which it came off. */
export const isBarkOff = (side: BarkSide | null): boolean => side === 'up' || side === 'down';

/** The day on which the bark came off once a side is chosen: today where it was on until now. */
function barkOffAfter({ barkSide, barkOffOn }: BoardDraft, side: BarkSide, today: string): string | null {
  if (!isBarkOff(side)) return null;
  return barkSide?.endsWith('bark-on') ? today : barkOffOn;
}

/** Where the board lies in its stack. */
export function PlaceInStack({ board: { field } }: { board: Fields }) {
  const { say } = useWords();
  return (
    <div className="form-grid">
      <NumberField label={say('board.layer')} hint={say('board.layer-hint')} {...field('layer')} />
      <NumberField label={say('board.column')} hint={say('board.column-hint')} {...field('column')} />
    </div>
  );
}
