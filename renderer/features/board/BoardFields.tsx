import type { ReactNode } from 'react';
import { boardGivenOn, type givenBoardSchema, unknownOfBoard } from '../../../shared-core/contract/yard.ts';
import type { BarkSide } from '../../../shared-core/wood/drying/faces-of-board.ts';
import { thicknessOf } from '../../../shared-core/words/message.ts';
import { useQuery } from '../../data/useQuery.ts';
import { DateField } from '../../form/DateField.tsx';
import { NumberField, Select, TextArea, TextField, useHint } from '../../form/Field.tsx';
import { BoardLengthField, LengthField, ThicknessField } from '../../form/MeasureFields.tsx';
import { SpeciesField } from '../../form/SpeciesField.tsx';
import { thicknessHint } from '../../form/thickness-hint.ts';
import { type Draft, type Fields, useDraft } from '../../form/useDraft.ts';
import { useUnits } from '../../stores/settings.ts';
import { dayOf } from '../../ui/days.ts';
import { EndGrain, isEndKnown } from '../../ui/EndGrain.tsx';
import { useWords } from '../../words.ts';
import css from './board.module.css';
import { barkSideOptions, driedByOptions, sawingOptions } from './end-words.ts';

type Given = typeof givenBoardSchema._zod.input;
type BoardDraft = Draft<Given>;

/** A board as it is typed, in a form that adds one or edits it. */
export const useBoardDraft = (start: BoardDraft, theirs: BoardDraft | null = null) =>
  useDraft(boardGivenOn(dayOf(new Date())), start, theirs);
/** Some fields of a board, of whatever form they are part. */
interface Of<K extends keyof Given> {
  board: Fields<Pick<Given, K>>;
}

/** A board of which nothing but these is known. */
export const newBoardDraft = (known: Pick<BoardDraft, 'code' | 'stackId' | 'speciesId'>): BoardDraft => ({
  ...unknownOfBoard,
  ...known,
  thicknessMm: null,
  thicknessQuarters: null,
});

/** The species, by any of its names. */
export function BoardSpecies({ board: { field } }: Of<'speciesId'>) {
  const { say } = useWords();
  const species = useQuery('species.list', {});
  const { error, ...rest } = field('speciesId');
  return (
    <SpeciesField
      label={say('board.species')}
      allSpecies={species.output ?? []}
      error={species.error ?? error}
      {...rest}
    />
  );
}

/** The thickness, as a length or by its name in the trade. */
export function BoardThickness({ board: { draft, field, set } }: Of<'thicknessMm' | 'thicknessQuarters'>) {
  const { say, formats } = useWords();
  const { saved, ...rest } = field('thicknessMm');
  const thickness = { thicknessMm: saved ?? 0, thicknessQuarters: field('thicknessQuarters').saved ?? null };
  const hint = say(thicknessHint(draft.thicknessMm, useUnits()));
  return (
    <ThicknessField
      label={say('board.thickness')}
      hint={useHint(hint, saved === undefined ? saved : formats.thickness(thicknessOf(thickness)))}
      {...rest}
      quarters={draft.thicknessQuarters}
      onThickness={(thicknessMm, thicknessQuarters) => set({ thicknessMm, thicknessQuarters })}
    />
  );
}

/** What helps and may be left out. */
export function MoreAboutBoard({
  board,
  hasSawnOn = true,
  sinceSawn = null,
}: {
  board: Fields<Given>;
  /** Whether the sawing date is asked for here. */
  hasSawnOn?: boolean;
  /** What is asked once that date is given. */
  sinceSawn?: ReactNode;
}) {
  const { field } = board;
  const { say } = useWords();
  return (
    <>
      <div className="form-grid">
        <LengthField label={say('board.width')} {...field('widthMm')} />
        <BoardLengthField label={say('board.length')} {...field('lengthMm')} />
      </div>
      <div className="form-grid">
        {hasSawnOn && <BoardSawnOn board={board} />}
        <BoardDriedBy board={board} />
        <TextField label={say('board.log')} hint={say('board.log-hint')} {...field('log')} />
      </div>
      {sinceSawn}
      <EndFields board={board} />
      <TextArea label={say('board.note')} {...field('note')} />
    </>
  );
}

/** The day on which it was sawn. */
export function BoardSawnOn({ board: { field } }: Of<'sawnOn'>) {
  const { say, formats } = useWords();
  return <DateField label={say('board.sawn-on')} max={formats.localDay(new Date())} {...field('sawnOn')} />;
}

/** Whether it came from a kiln. */
export function BoardDriedBy({ board: { draft, field } }: Of<'driedBy'>) {
  const { say } = useWords();
  return (
    <Select
      label={say('board.dried-by')}
      options={driedByOptions(say)}
      {...field('driedBy')}
      value={draft.driedBy ?? 'air'}
    />
  );
}

/** What can be seen on a board's end grain: how its rings lie, and where the bark was. */
function EndFields({ board }: { board: Fields<Given> }) {
  const { say } = useWords();
  const { thicknessMm, widthMm, ringRadiusMm, sawing, barkSide } = board.draft;
  const end = {
    sawing: sawing ?? 'unknown',
    barkSide: barkSide ?? 'unknown',
    thicknessMm: thicknessMm ?? 0,
    widthMm: widthMm || null,
    ringRadiusMm: ringRadiusMm || null,
  };
  return (
    <fieldset className={`sheet column ${css.end}`}>
      <legend>{say('board.end-grain')}</legend>
      <p className="soft">{say('board.end-grain-use')}</p>
      {end.thicknessMm > 0 && isEndKnown(end) && <EndGrain board={end} />}
      <div className="form-grid">
        <BoardSawing board={board} />
        <BoardBark board={board} />
        <DistanceFromPith board={board} />
      </div>
    </fieldset>
  );
}

/** How its rings lie. */
export function BoardSawing({ board: { draft, field } }: Of<'sawing'>) {
  const { say } = useWords();
  return (
    <Select
      label={say('board.sawing')}
      hint={say('board.sawing-hint')}
      options={sawingOptions(say)}
      {...field('sawing')}
      value={draft.sawing ?? 'unknown'}
    />
  );
}

/** On which side the bark was, and the day on which it came off. */
export function BoardBark({ board: { draft, field, set } }: Of<'barkSide' | 'barkOffOn'>) {
  const { say, formats } = useWords();
  const today = formats.localDay(new Date());
  return (
    <>
      <Select
        label={say('board.bark-side')}
        hint={say('board.bark-side-hint')}
        options={barkSideOptions(say)}
        {...field('barkSide')}
        value={draft.barkSide ?? 'unknown'}
        onValue={(barkSide) => set({ barkSide, barkOffOn: barkOffAfter(draft, barkSide, today) })}
      />
      {isBarkOff(draft.barkSide) && (
        <DateField
          label={say('board.bark-off-on')}
          hint={say('board.bark-off-hint')}
          max={today}
          {...field('barkOffOn')}
        />
      )}
    </>
  );
}

/** How far its middle is from the center of the rings. */
export function DistanceFromPith({ board: { field } }: Of<'ringRadiusMm'>) {
  const { say } = useWords();
  return (
    <LengthField
      label={say('board.pith-distance')}
      hint={say('board.pith-distance-hint')}
      {...field('ringRadiusMm')}
    />
  );
}

/** Whether the bark of a known side is off, so that there is a day on which it came off. */
const isBarkOff = (side: BarkSide | null): boolean => side === 'up' || side === 'down';

/** The day on which the bark came off once a side is chosen: today where it was on until now. */
function barkOffAfter(
  { barkSide, barkOffOn }: Pick<BoardDraft, 'barkSide' | 'barkOffOn'>,
  side: BarkSide,
  today: string,
): string | null {
  if (!isBarkOff(side)) return null;
  return barkSide?.endsWith('bark-on') ? today : barkOffOn;
}

/** Where the board lies in its stack. */
export function PlaceInStack({ board: { field } }: Of<'layer' | 'column'>) {
  const { say } = useWords();
  return (
    <div className="form-grid">
      <NumberField label={say('board.layer')} hint={say('board.layer-hint')} {...field('layer')} />
      <NumberField label={say('board.column')} hint={say('board.column-hint')} {...field('column')} />
    </div>
  );
}
