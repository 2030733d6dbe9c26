import { useState } from 'react';
import { z } from 'zod';
import { Refusal } from '../../../shared-core/contract/answer.ts';
import type { RequestOutput } from '../../../shared-core/contract/requests.ts';
import { says } from '../../../shared-core/contract/validation.ts';
import { type BoardRow, givenBoardSchema, unknownOfBoard } from '../../../shared-core/contract/yard.ts';
import { message } from '../../../shared-core/words/message.ts';
import { bridge } from '../../data/bridge.ts';
import { useQuery } from '../../data/useQuery.ts';
import { DateField } from '../../form/DateField.tsx';
import { Checkbox, Select, TextField } from '../../form/Field.tsx';
import { FormDialog } from '../../form/FormDialog.tsx';
import { BoardLengthField, LengthField, ThicknessField } from '../../form/MeasureFields.tsx';
import { SpeciesField } from '../../form/SpeciesField.tsx';
import { type Draft, useDraft } from '../../form/useDraft.ts';
import { tellDone } from '../../stores/notices.ts';
import { Await } from '../../ui/Await.tsx';
import { instantOfDay } from '../../ui/days.ts';
import { useWords } from '../../words.ts';
import { isBarkOff } from '../board/BoardFields.tsx';
import { barkSideOptions, sawingOptions } from '../board/end-words.ts';
import { readingReasons } from '../records/reading-reasons.ts';
import css from './edit-boards.module.css';
import { endUseOptions } from './end-use-options.ts';
import { StackOrderFields, useStackOrder } from './StackOrderFields.tsx';

const { shape } = givenBoardSchema;
/** The parts of the form by what turns them on, each with the fields that it needs: a blank one would erase many values. */
const parts = {
  species: { speciesId: shape.speciesId },
  thickness: { thicknessMm: shape.thicknessMm, thicknessQuarters: shape.thicknessQuarters },
  width: { widthMm: shape.widthMm.unwrap() },
  length: { lengthMm: shape.lengthMm.unwrap() },
  'sawn-on': { sawnOn: shape.sawnOn.refine((day) => day !== null, says('validation.day-missing')) },
  log: { log: shape.log.min(1, says('validation.missing')) },
  sawing: { sawing: shape.sawing },
  'bark-side': { barkSide: shape.barkSide, barkOffOn: shape.barkOffOn },
  pith: { ringRadiusMm: shape.ringRadiusMm.unwrap() },
  place: {
    placeId: z.string().min(1, says('validation.place-missing')),
    since: z.string().min(1, says('validation.day-missing')),
  },
  use: { endUseId: z.string().min(1, says('validation.use-missing')) },
  readings: { readings: z.enum(['include', ...readingReasons]) },
  order: {},
};
type Part = keyof typeof parts;
const partNames = Object.keys(parts) as Part[];

const whole = z.object({
  ...parts.species,
  ...parts.thickness,
  ...parts.width,
  ...parts.length,
  ...parts['sawn-on'],
  ...parts.log,
  ...parts.sawing,
  ...parts['bark-side'],
  ...parts.pith,
  ...parts.place,
  ...parts.use,
  ...parts.readings,
});

/** Checks the fields of these parts, and leaves out the others. */
const schemaOf = (on: ReadonlySet<Part>) =>
  z.object(Object.assign({}, ...[...on].map((part) => parts[part]))) as unknown as z.ZodType<
    Partial<z.output<typeof whole>>,
    z.input<typeof whole>
  >;

/** Edits several boards at once: only what a person turns on. */
export function EditBoardsForm({
  boards: edited,
  onSaved,
  onClose,
}: {
  /** In the order in which they are laid. */
  boards: readonly BoardRow[];
  /** With the boards' new versions. */
  onSaved: (versions: RequestOutput<'boards.editTogether'>) => void;
  onClose: () => void;
}) {
  const { say, formats } = useWords();
  const today = formats.localDay(new Date());
  const allSpecies = useQuery('species.list', {});
  const allPlaces = useQuery('places.list', {});
  const allUses = useQuery('endUses.list', {});
  const [on, setOn] = useState<ReadonlySet<Part>>(new Set());
  const start: Draft<z.input<typeof whole>> = {
    ...unknownOfBoard,
    speciesId: '',
    thicknessMm: null,
    thicknessQuarters: null,
    placeId: '',
    since: today,
    endUseId: '',
    readings: 'include',
  };
  const { draft, set, field, read } = useDraft(schemaOf(on), start);
  const boards = edited.length;
  const order = useStackOrder(boards, 1, false);
  const stacks = new Map(edited.map(({ stackId, stackName }) => [stackId, stackName]));

  async function save(): Promise<void> {
    order.show();
    const { placeId, since = today, endUseId = null, readings, ...changed } = read();
    if (on.size === 0) throw new Refusal(message('validation.nothing-to-change'));
    const versions = await bridge().command('boards.editTogether', {
      boards: edited.map(({ id, version }) => ({ id, basedOn: version })),
      changed,
      stackOrder: on.has('order') ? order.read() : null,
      move:
        placeId === undefined ? null : { placeId: Number(placeId), since: instantOfDay(since, new Date()) },
      endUseId,
      latestReadings:
        readings === undefined || readings === 'include'
          ? (readings ?? null)
          : { exclude: { code: readings } },
    });
    onSaved(versions);
    tellDone(say('stacks.boards-saved', { boards }));
  }

  function turn(part: Part, isOn: boolean): void {
    const turned = new Set(on);
    if (isOn) turned.add(part);
    else turned.delete(part);
    setOn(turned);
  }

  return (
    <FormDialog
      title={say('stacks.edit-boards', { boards })}
      saveWords={say('common.save')}
      onSave={save}
      onClose={onClose}
    >
      <fieldset className={css.parts}>
        <legend>{say('stacks.edit-boards-lead')}</legend>
        {partNames.map((part) => (
          <Checkbox
            key={part}
            label={say(`stacks.edit.${part}`)}
            checked={on.has(part)}
            onChecked={(isOn) => turn(part, isOn)}
          />
        ))}
      </fieldset>
      <Await of={[allSpecies, allPlaces, allUses]}>
        {(species, places, endUses) => (
          <>
            {on.has('species') && (
              <SpeciesField label={say('board.species')} allSpecies={species} {...field('speciesId')} />
            )}
            {on.has('thickness') && (
              <ThicknessField
                label={say('board.thickness')}
                {...field('thicknessMm')}
                quarters={draft.thicknessQuarters}
                onThickness={(thicknessMm, thicknessQuarters) => set({ thicknessMm, thicknessQuarters })}
              />
            )}
            {on.has('width') && <LengthField label={say('board.width')} {...field('widthMm')} />}
            {on.has('length') && <BoardLengthField label={say('board.length')} {...field('lengthMm')} />}
            {on.has('sawn-on') && <DateField label={say('board.sawn-on')} max={today} {...field('sawnOn')} />}
            {on.has('log') && <TextField label={say('board.log')} {...field('log')} />}
            {on.has('sawing') && (
              <Select
                label={say('board.sawing')}
                hint={say('board.sawing-hint')}
                options={sawingOptions(say)}
                value={draft.sawing ?? 'unknown'}
                onValue={(sawing) => set({ sawing })}
              />
            )}
            {on.has('bark-side') && (
              <Select
                label={say('board.bark-side')}
                hint={say('board.bark-side-hint')}
                options={barkSideOptions(say)}
                value={draft.barkSide ?? 'unknown'}
                onValue={(barkSide) => set({ barkSide, barkOffOn: null })}
              />
            )}
            {on.has('bark-side') && isBarkOff(draft.barkSide) && (
              <DateField
                label={say('board.bark-off-on')}
                hint={say('board.bark-off-hint')}
                max={today}
                {...field('barkOffOn')}
              />
            )}
            {on.has('pith') && (
              <LengthField
                label={say('board.pith-distance')}
                hint={say('board.pith-distance-hint')}
                {...field('ringRadiusMm')}
              />
            )}
            {on.has('place') && (
              <div className="form-grid">
                <Select
                  label={say('stacks.move-to')}
                  hint={say('stacks.move-history')}
                  {...field('placeId')}
                  options={[
                    { value: '', label: say('stacks.choose-place') },
                    ...places.map(({ id, name }) => ({ value: String(id), label: name, isName: true })),
                  ]}
                />
                <DateField
                  label={say('stacks.move-day')}
                  hint={say('stacks.move-day-hint')}
                  max={today}
                  {...field('since')}
                  value={draft.since || null}
                  onValue={(day) => set({ since: day ?? '' })}
                />
              </div>
            )}
            {on.has('use') && (
              <Select
                label={say('stacks.use')}
                hint={say('stacks.use-of-stacks', { stackNames: [...stacks.values()] })}
                {...field('endUseId')}
                options={[{ value: '', label: say('stacks.choose-use') }, ...endUseOptions(endUses, say)]}
              />
            )}
            {on.has('readings') && (
              <Select
                label={say('stacks.edit.readings')}
                hint={say('exclude.effect')}
                value={draft.readings ?? 'include'}
                options={[
                  { value: 'include', label: say('common.include') },
                  ...readingReasons.map((value) => ({
                    value,
                    label: say('stacks.exclude-for', { reason: message(`exclusion.${value}`) }),
                  })),
                ]}
                onValue={(readings) => set({ readings })}
              />
            )}
            {on.has('order') && <StackOrderFields order={order} blankHint={say('stacks.in-order-of-list')} />}
          </>
        )}
      </Await>
    </FormDialog>
  );
}
