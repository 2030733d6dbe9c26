import { type ReactNode, useCallback } from 'react';
import type { MeterState } from '../../../shared-core/contract/meter.ts';
import {
  type MeterDescription,
  type MeterFields,
  NO_FIELDS,
} from '../../../shared-core/gatt/meter-description.ts';
import { decodePacket } from '../../../shared-core/gatt/packet.ts';
import type { ShownNumber } from '../../../shared-core/gatt/shown-number.ts';
import { bridge } from '../../data/bridge.ts';
import { Checkbox } from '../../form/Field.tsx';
import { askMeter } from '../../stores/meter.ts';
import { tellDone } from '../../stores/notices.ts';
import { useWatching } from '../../stores/watching.ts';
import { Actions, Button } from '../../ui/Button.tsx';
import { rawText } from '../../ui/McValue.tsx';
import { useWords } from '../../words.ts';
import { BesideValue } from './BesideValue.tsx';
import { descriptionOf, type Found, foundOf, newestOf } from './found.ts';
import { MovingPlaces } from './MovingPlaces.tsx';
import { Proposals } from './Proposals.tsx';
import { ShownNumbers } from './ShownNumbers.tsx';
import { StartCommand } from './StartCommand.tsx';
import { readingUnitOf } from './shown-number.ts';
import { useProposals } from './useProposals.ts';
import { motionOf, shownPlaces } from './watched-places.ts';

/** Sets up an unknown meter from what moves with its pins and the numbers on its display. */
export function WatchForm({
  state,
  onByHand,
  children,
}: {
  state: MeterState;
  /** To go on from what was found so far, null for nothing. */
  onByHand: (from: MeterDescription | null) => void;
  /** Other ways, beside its buttons. */
  children: ReactNode;
}) {
  const { say, formats } = useWords();
  const { places: heard, numbers, unit, chosenKey, beside, start, showsBytes } = useWatching();
  const { proposals, isFinding } = useProposals();
  const places = shownPlaces(state, heard);
  const found = proposals.map((proposal) => foundOf(proposal, heard));
  const chosen = found.find(({ key }) => key === chosenKey) ?? found[0] ?? null;
  const key = chosen?.key ?? null;
  const fields = beside.key === key ? beside.fields : NO_FIELDS;
  const onFields = useCallback(
    (changed: Partial<MeterFields>) =>
      useWatching.setState(({ beside: before }) => ({
        beside: { key, fields: { ...(before.key === key ? before.fields : NO_FIELDS), ...changed } },
      })),
    [key],
  );
  const described = chosen && { ...asChosen(chosen, fields), start };

  // The likeliest by all numbers is chosen then.
  const type = (typed: readonly ShownNumber[], by = unit) =>
    useWatching.setState({ numbers: typed, unit: by, chosenKey: null });

  async function save(): Promise<void> {
    if (described === null) return;
    if (await askMeter(bridge().command('meter.describe', described))) tellDone(say('meter.form.saved'));
  }

  const canBeWritten = state.characteristics.filter(({ canWrite }) => canWrite);
  const isQuiet = !places.some((place) => motionOf(place) === 'moves');
  const { deviceId } = state;
  const isListening = state.message.code === 'meter.state.heard-needs-setup';

  return (
    <div className="column watch-form">
      <p>{say('watch.how')}</p>
      <Checkbox
        label={say('watch.show-bytes')}
        checked={showsBytes}
        onChecked={(shows) => useWatching.setState({ showsBytes: shows })}
      />
      <MovingPlaces places={places} chosen={chosen} showsBytes={showsBytes} />
      {isQuiet && deviceId !== null && (
        <>
          <Actions>
            {isListening ? (
              <Button onClick={() => void askMeter(bridge().command('meter.connect', { deviceId }))}>
                {say('watch.connect')}
              </Button>
            ) : (
              <Button onClick={() => void askMeter(bridge().command('meter.listen', { deviceId }))}>
                {say('watch.listen')}
              </Button>
            )}
          </Actions>
          {canBeWritten.length > 0 && (
            <StartCommand
              places={canBeWritten}
              onStart={(tried) => {
                useWatching.setState({ start: tried });
                void askMeter(bridge().command('meter.tryStart', tried));
              }}
            />
          )}
        </>
      )}
      <ShownNumbers
        numbers={numbers}
        unit={unit}
        onUnit={(chosenUnit) => type([], chosenUnit)}
        onAdd={(number) => type([...numbers, number])}
        onDelete={(number) => type(numbers.filter((each) => each !== number))}
      />
      {isFinding && <p role="status">{say('watch.finding')}</p>}
      {numbers.length > 0 && !isFinding && (
        <Proposals
          {...{ found, chosen, numbers, showsBytes }}
          textOf={({ value }) => rawText(value, readingUnitOf(unit), formats)}
          onChoose={(chosenNow) => useWatching.setState({ chosenKey: chosenNow })}
        />
      )}
      {chosen?.proposal.isEnough && <BesideValue found={chosen} fields={fields} onFields={onFields} />}
      <Actions>
        {chosen?.proposal.isEnough && (
          <Button kind="main" onClick={save}>
            {say('common.save')}
          </Button>
        )}
        <Button onClick={() => onByHand(described)}>{say('meter.reading.set-up')}</Button>
        {children}
      </Actions>
    </div>
  );
}

/** With the species that the meter is set to now, so that another setting is seen later. */
function asChosen(chosen: Found, fields: MeterFields): MeterDescription {
  const description = descriptionOf(chosen.proposal, fields);
  const newest = newestOf(chosen);
  if (fields.species === null || newest === null) return description;
  const expected = decodePacket(newest, description).species;
  return { ...description, fields: { ...fields, species: { ...fields.species, expected } } };
}
