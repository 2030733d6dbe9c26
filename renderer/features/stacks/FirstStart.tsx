import { type FirstStack, firstStackOn } from '../../../shared-core/contract/first-stack.ts';
import { bridge } from '../../data/bridge.ts';
import { useQuery } from '../../data/useQuery.ts';
import { DateField } from '../../form/DateField.tsx';
import { NumberField, Select, TextField } from '../../form/Field.tsx';
import { type Draft, useDraft } from '../../form/useDraft.ts';
import { useSaving } from '../../form/useSaving.ts';
import { hrefOf, wayOn } from '../../stores/navigation.ts';
import { attempt } from '../../stores/notices.ts';
import { saveSettings, useSettings, useUnits } from '../../stores/settings.ts';
import { dropUnsaved } from '../../stores/unsaved-forms.ts';
import { openDemoYard } from '../../stores/yard.ts';
import { Banner } from '../../ui/Banner.tsx';
import { Actions, Button } from '../../ui/Button.tsx';
import { Sheet } from '../../ui/Screen.tsx';
import { Unfold } from '../../ui/Unfold.tsx';
import { useWords } from '../../words.ts';
import { BoardDriedBy, BoardSpecies, BoardThickness } from '../board/BoardFields.tsx';
import { StationField, useStation } from '../places/StationField.tsx';
import { endUseOptions } from './end-use-options.ts';
import { useHereSince } from './useHereSince.tsx';

/** The name of the form under which what is typed is kept for as long as the window lasts. */
export const FIRST_STACK = 'first-stack';

/** An empty yard: what it takes to a first reading, with the demo yard beside it. */
export function FirstStart({ offerDemo, onTyped }: { offerDemo: boolean; onTyped: () => void }) {
  const { say } = useWords();
  return (
    <div className="beside wide-first" onInput={onTyped}>
      <div className="column">
        <FirstStackForm />
        <UnitsLine />
        <p>
          <a href={hrefOf({ name: 'import-table' })}>{say('import.from-empty')}</a>
        </p>
      </div>
      {offerDemo && (
        <div className="column">
          <Sheet title={say('stacks.demo-title')}>
            <p>{say('stacks.demo-hint')}</p>
            <Actions>
              <Button onClick={() => attempt(openDemoYard())}>{say('stacks.open-demo')}</Button>
            </Actions>
          </Sheet>
        </div>
      )}
    </div>
  );
}

const nothingYet: Draft<FirstStack> = {
  name: '',
  speciesId: '',
  thicknessMm: null,
  thicknessQuarters: null,
  boards: null,
  sawnOn: null,
  hereSinceOn: null,
  driedBy: 'air',
  endUseId: 'furniture',
};

function FirstStackForm() {
  const { say, formats } = useWords();
  const today = formats.localDay(new Date());
  const species = useQuery('species.list', {});
  const uses = useQuery('endUses.list', {});
  const typed = useDraft(firstStackOn(today), nothingYet, null, FIRST_STACK);
  const { draft, field, read } = typed;
  const usualName = formats.named(species.output?.find(({ id }) => id === draft.speciesId)?.name ?? '');
  const hereSince = useHereSince({ boards: 1, sawnOn: draft.sawnOn, enteredOn: today, form: FIRST_STACK });
  const station = useStation(null, FIRST_STACK);
  const { busy, problem, save, form, answer } = useSaving(() => undefined);

  async function start(probe: boolean): Promise<void> {
    const made = read();
    const hereSinceOn = hereSince.read();
    const goOn = wayOn();
    const air = await station.read();
    const place = { name: say('places.kind.outdoors'), kind: 'outdoors' as const, ...air };
    const { id } = await bridge().command('stacks.start', {
      ...made,
      name: made.name || usualName,
      hereSinceOn,
      place,
    });
    dropUnsaved(FIRST_STACK);
    goOn(probe ? { name: 'round-start', stackId: id } : { name: 'stack', id });
  }

  return (
    <form
      ref={form}
      className="sheet column"
      aria-label={say('stacks.start')}
      noValidate
      onSubmit={(event) => {
        event.preventDefault();
        void save(() => start(true));
      }}
    >
      <div className="form-grid">
        <TextField label={say('stacks.what-name')} placeholder={usualName} autoFocus {...field('name')} />
        <Select
          label={say('stacks.use')}
          options={endUseOptions(uses.output ?? [], say)}
          {...field('endUseId')}
        />
      </div>
      <div className="form-grid">
        <BoardSpecies board={typed} />
        <BoardThickness board={typed} />
        <NumberField label={say('stacks.how-many-boards')} {...field('boards')} />
        <StationField station={station} />
        <DateField label={say('board.sawn-on')} max={today} {...field('sawnOn')} />
      </div>
      {hereSince.part}
      <Unfold words={say('stacks.more-fields')}>
        <div className="form-grid">
          <BoardDriedBy board={typed} />
        </div>
      </Unfold>
      <div ref={answer}>{problem && <Banner kind="problem">{problem.sentence}</Banner>}</div>
      <Actions>
        <Button kind="main" type="submit" disabled={busy}>
          {say('stacks.start-probing')}
        </Button>
        <Button kind="quiet" disabled={busy} onClick={() => void save(() => start(false))}>
          {say('stacks.only-add')}
        </Button>
      </Actions>
      <p className="soft">{say('stacks.other-places')}</p>
    </form>
  );
}

/** The units in force, and the others one press away. */
function UnitsLine() {
  const { say } = useWords();
  const units = useUnits();
  const settings = useSettings((store) => store.settings);
  const other = units === 'metric' ? 'imperial' : 'metric';
  return (
    <p className="soft">
      {say(settings.units ? 'stacks.units-chosen' : 'stacks.units-of-region', { units })}{' '}
      <Button
        kind="quiet"
        disabled={!settings}
        onClick={() => settings && attempt(saveSettings({ ...settings, units: other }))}
      >
        {say('stacks.change-units', { units: other })}
      </Button>
    </p>
  );
}
