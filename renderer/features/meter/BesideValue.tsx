import { useEffect, useState } from 'react';
import type { Condition } from '../../../shared-core/gatt/layout.ts';
import type { MeterFields } from '../../../shared-core/gatt/meter-description.ts';
import { decodePacket } from '../../../shared-core/gatt/packet.ts';
import {
  type ProposedField,
  proposeBattery,
  proposeHold,
  proposeTemperature,
} from '../../../shared-core/gatt/propose-fields.ts';
import { Select } from '../../form/Field.tsx';
import { Banner } from '../../ui/Banner.tsx';
import { Actions, Button } from '../../ui/Button.tsx';
import { useWords } from '../../words.ts';
import { descriptionOf, type Found, newestOf } from './found.ts';

interface Props {
  found: Found;
  fields: MeterFields;
  onFields: (changed: Partial<MeterFields>) => void;
}

/** What else the meter sends with its reading: its button, a temperature, its battery. */
export function BesideValue(props: Props) {
  const { say, formats } = useWords();
  const { packets, proposal } = props.found;
  return (
    <fieldset className="column beside-value">
      <legend>{say('watch.beside')}</legend>
      <HoldButton {...props} />
      <div className="form-grid">
        <FieldChoice
          {...props}
          name="tempC"
          proposed={proposeTemperature(packets, proposal.value)}
          textOf={formats.temperature}
        />
        <FieldChoice
          {...props}
          name="batteryPct"
          proposed={proposeBattery(packets, proposal.value)}
          textOf={formats.wholePercent}
        />
      </div>
    </fieldset>
  );
}

const labels = { tempC: 'watch.temperature', batteryPct: 'watch.battery' } as const;

/** One of the numbers beside the reading, by what it is now. */
function FieldChoice({
  name,
  proposed,
  textOf,
  fields,
  onFields,
}: Props & {
  name: 'tempC' | 'batteryPct';
  proposed: readonly ProposedField[];
  textOf: (value: number) => string;
}) {
  const { say } = useWords();
  const options = new Map<string, { value: string | null; label: string }>();
  for (const { layout, now } of proposed) {
    const value = JSON.stringify(layout);
    const label = textOf(now);
    const isChosen = JSON.stringify(fields[name]) === value;
    if (isChosen || !options.has(label)) options.set(label, { value, label });
  }
  if (options.size === 0) return null;
  return (
    <Select
      label={say(labels[name])}
      value={fields[name] === null ? null : JSON.stringify(fields[name])}
      options={[{ value: null, label: say('watch.not-used') }, ...options.values()]}
      onValue={(value) => onFields({ [name]: value === null ? null : JSON.parse(value) })}
    />
  );
}

/** Finds what in the packets says that the meter's button is pressed. */
function HoldButton({ found, fields, onFields }: Props) {
  const { say } = useWords();
  const [sinceMs, setSinceMs] = useState<number | null>(null);
  const { packets, proposal } = found;
  const newest = newestOf(found);
  const pressed: Condition | undefined =
    sinceMs === null ? undefined : proposeHold(packets, proposal.value, sinceMs)[0];

  useEffect(() => {
    if (pressed === undefined) return;
    setSinceMs(null);
    onFields({ hold: pressed });
  }, [pressed, onFields]);

  if (sinceMs !== null) {
    return (
      <Banner actions={<Button onClick={() => setSinceMs(null)}>{say('common.cancel')}</Button>}>
        {say('watch.hold.press')}
      </Banner>
    );
  }
  const look = () => setSinceMs(performance.now());
  if (fields.hold === null) {
    return (
      <Actions>
        <Button onClick={look}>{say('watch.hold.find')}</Button>
      </Actions>
    );
  }
  const isHeld = newest !== null && decodePacket(newest, descriptionOf(proposal, fields)).isHeld;
  return (
    <Banner
      kind="done"
      actions={
        <>
          <Button onClick={look}>{say('watch.hold.again')}</Button>
          <Button onClick={() => onFields({ hold: null })}>{say('watch.hold.drop')}</Button>
        </>
      }
    >
      {say('watch.hold.found', { isHeld: isHeld ? 'yes' : 'no' })}
    </Banner>
  );
}
