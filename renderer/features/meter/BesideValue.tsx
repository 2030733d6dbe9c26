import { useMemo } from 'react';
import type { MeterFields } from '../../../shared-core/gatt/meter-description.ts';
import {
  type ProposedField,
  proposeBattery,
  proposeTemperature,
  type Taken,
} from '../../../shared-core/gatt/propose-fields.ts';
import { Select } from '../../form/Field.tsx';
import { useWatching } from '../../stores/watching.ts';
import { useWords } from '../../words.ts';
import { FindHold } from './FindHold.tsx';
import { FindSpecies } from './FindSpecies.tsx';
import { type Found, foundOf } from './found.ts';

export interface BesideProps {
  found: Found;
  fields: MeterFields;
  onFields: (changed: Partial<MeterFields>) => void;
}

/** Where the reading is, and what else was found already. */
export function takenBy({ proposal }: Found, { hold, tempC, batteryPct, species }: MeterFields): Taken {
  const others = [hold && 'layout' in hold ? hold.layout : null, tempC, batteryPct, species?.at ?? null];
  return [proposal.value, ...others.filter((each) => each !== null)];
}

/** What else the meter sends with its reading: its button, its species setting, a temperature, its battery. */
export function BesideValue(props: BesideProps) {
  const { say, formats } = useWords();
  return (
    <fieldset className="column beside-value">
      <legend>{say('watch.beside')}</legend>
      <FindHold {...props} />
      <FindSpecies {...props} />
      <div className="form-grid">
        <FieldChoice {...props} name="tempC" propose={proposeTemperature} textOf={formats.temperature} />
        <FieldChoice {...props} name="batteryPct" propose={proposeBattery} textOf={formats.wholePercent} />
      </div>
    </fieldset>
  );
}

const labels = { tempC: 'watch.temperature', batteryPct: 'watch.battery' } as const;

/** One of the numbers beside the reading, by what it was when the reading was found. */
function FieldChoice({
  name,
  propose,
  textOf,
  found,
  fields,
  onFields,
}: BesideProps & {
  name: 'tempC' | 'batteryPct';
  propose: typeof proposeTemperature;
  textOf: (value: number) => string;
}) {
  const { say } = useWords();
  const chosen = fields[name] === null ? null : JSON.stringify(fields[name]);
  const taken = JSON.stringify(takenBy(found, { ...fields, [name]: null }));
  const { proposal } = found;
  // Packets come all the time, and these numbers hardly change.
  const proposed = useMemo<ProposedField[]>(
    () => propose(foundOf(proposal, useWatching.getState().places).packets, JSON.parse(taken)),
    [propose, proposal, taken],
  );
  const options = new Map<string, { value: string | null; label: string }>();
  for (const { layout, now } of proposed) {
    const value = JSON.stringify(layout);
    const label = textOf(now);
    if (value === chosen || !options.has(label)) options.set(label, { value, label });
  }
  if (options.size === 0) return null;
  return (
    <Select
      label={say(labels[name])}
      value={chosen}
      options={[{ value: null, label: say('watch.not-used') }, ...options.values()]}
      onValue={(value) => onFields({ [name]: value === null ? null : JSON.parse(value) })}
    />
  );
}
