import { useCallback, useEffect, useState } from 'react';
import type { MeterState } from '../../../shared-core/contract/meter.ts';
import { type MeterFields, NO_FIELDS, type Start } from '../../../shared-core/gatt/meter-description.ts';
import { type Proposal, propose, type ShownNumber } from '../../../shared-core/gatt/propose.ts';
import { bridge } from '../../data/bridge.ts';
import { Checkbox } from '../../form/Field.tsx';
import { askMeter } from '../../stores/meter.ts';
import { tellDone } from '../../stores/notices.ts';
import { useWatching } from '../../stores/watching.ts';
import { Actions, Button } from '../../ui/Button.tsx';
import { rawText } from '../../ui/McValue.tsx';
import { useWords } from '../../words.ts';
import { BesideValue } from './BesideValue.tsx';
import { descriptionOf, foundOf } from './found.ts';
import { MovingPlaces } from './MovingPlaces.tsx';
import { Proposals } from './Proposals.tsx';
import { ShownNumbers } from './ShownNumbers.tsx';
import { StartCommand } from './StartCommand.tsx';
import { type DisplayUnit, readingUnitOf } from './shown-number.ts';
import { motionOf, shownPlaces } from './watched-places.ts';

/** Sets up an unknown meter from what moves with its pins and the numbers on its display. */
export function WatchForm({ state }: { state: MeterState }) {
  const { say, formats } = useWords();
  const heard = useWatching((watching) => watching.places);
  const [showsBytes, setShowsBytes] = useState(false);
  const [unit, setUnit] = useState<DisplayUnit>('pct');
  const numbers = useWatching((watching) => watching.numbers);
  const [proposals, setProposals] = useState<readonly Proposal[]>([]);
  const [chosenKey, setChosenKey] = useState<string | null>(null);
  const [fields, setFields] = useState<MeterFields>(NO_FIELDS);
  const [start, setStart] = useState<Start | null>(null);
  useEffect(() => () => useWatching.setState({ numbers: [] }), []);
  const onFields = useCallback(
    (changed: Partial<MeterFields>) => setFields((before) => ({ ...before, ...changed })),
    [],
  );

  const places = shownPlaces(state, heard);
  const found = proposals.map((proposal) => foundOf(proposal, heard));
  const chosen = found.find(({ key }) => key === chosenKey) ?? found[0] ?? null;

  function choose(key: string | null): void {
    // What else is in the packets was found beside another number.
    if (key !== (chosen?.key ?? null)) setFields(NO_FIELDS);
    setChosenKey(key);
  }

  function find(typed: readonly ShownNumber[], by: DisplayUnit): void {
    const proposed = propose(places, typed, readingUnitOf(by));
    const first = proposed[0] && foundOf(proposed[0], heard).key;
    useWatching.setState({ numbers: typed });
    setProposals(proposed);
    choose(first ?? null);
  }

  async function save(): Promise<void> {
    if (chosen === null) return;
    const description = { ...descriptionOf(chosen.proposal, fields), start };
    if (await askMeter(bridge().command('meter.describe', description))) tellDone(say('meter.form.saved'));
  }

  const canBeWritten = state.characteristics.filter(({ canWrite }) => canWrite);
  const isQuiet = !places.some((place) => motionOf(place) === 'moves');
  const { deviceId } = state;

  return (
    <div className="column watch-form">
      <p>{say('watch.how')}</p>
      <Checkbox label={say('watch.show-bytes')} checked={showsBytes} onChecked={setShowsBytes} />
      <MovingPlaces places={places} showsBytes={showsBytes} />
      {isQuiet && deviceId !== null && (
        <>
          <Actions>
            <Button onClick={() => void askMeter(bridge().command('meter.listen', { deviceId }))}>
              {say('watch.listen')}
            </Button>
          </Actions>
          {canBeWritten.length > 0 && (
            <StartCommand
              places={canBeWritten}
              onStart={(tried) => {
                setStart(tried);
                void askMeter(bridge().command('meter.tryStart', tried));
              }}
            />
          )}
        </>
      )}
      <ShownNumbers
        numbers={numbers}
        unit={unit}
        onUnit={(chosenUnit) => {
          setUnit(chosenUnit);
          find([], chosenUnit);
        }}
        onAdd={(number) => find([...numbers, number], unit)}
        onDelete={(number) =>
          find(
            numbers.filter((each) => each !== number),
            unit,
          )
        }
      />
      {numbers.length > 0 && (
        <Proposals
          {...{ found, chosen, numbers, showsBytes }}
          textOf={({ value }) => rawText(value, readingUnitOf(unit), formats)}
          onChoose={choose}
        />
      )}
      {chosen?.proposal.isEnough && (
        <>
          <BesideValue found={chosen} fields={fields} onFields={onFields} />
          <Actions>
            <Button kind="main" onClick={save}>
              {say('common.save')}
            </Button>
          </Actions>
        </>
      )}
    </div>
  );
}
