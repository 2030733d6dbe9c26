import { Choice } from '../../renderer/form/Choice.tsx';
import { DateField } from '../../renderer/form/DateField.tsx';
import { Checkbox, NumberField, Select, TextArea, TextField } from '../../renderer/form/Field.tsx';
import { LengthField, TempField, ThicknessField, WeightField } from '../../renderer/form/MeasureFields.tsx';
import { SpeciesField } from '../../renderer/form/SpeciesField.tsx';
import { TimeField } from '../../renderer/form/TimeField.tsx';
import { builtInSpecies } from '../../shared-core/wood/species/built-in.ts';
import type { Story } from './story.ts';

const nothing = () => undefined;

export const stories: Story[] = [
  {
    part: 'TextField',
    states: {
      blank: () => <TextField label="Name" value="" onValue={nothing} />,
      'with a hint': () => <TextField label="Log" hint="Optional" value="A" onValue={nothing} />,
      wrong: () => <TextField label="Name" error="Give it a name." value="" onValue={nothing} />,
      disabled: () => <TextField label="Name" disabled value="Ridge oak" onValue={nothing} />,
    },
  },
  {
    part: 'NumberField',
    states: {
      'with a unit': () => <NumberField label="Highest" unit="%" value={8} onValue={nothing} />,
      'no number': () => (
        <NumberField label="Layer" error="Type a whole number." value={2.5} onValue={nothing} />
      ),
    },
  },
  {
    part: 'MeasureFields',
    states: {
      length: () => <LengthField label="Width" value={203.2} onValue={nothing} />,
      'thickness by its name': () => (
        <ThicknessField label="Thickness" value={50.8} quarters={8} onThickness={nothing} />
      ),
      temperature: () => <TempField label="Wood temperature" value={12} onValue={nothing} />,
      weight: () => <WeightField label="Weight" value={null} error="Fill this in." onValue={nothing} />,
    },
  },
  {
    part: 'DateField',
    states: {
      blank: () => <DateField label="Sawn on" value={null} onValue={nothing} />,
      filled: () => <DateField label="Sawn on" value="2026-05-12" onValue={nothing} />,
      'too late': () => <DateField label="Sawn on" value="2026-05-12" max="2026-05-01" onValue={nothing} />,
    },
  },
  {
    part: 'TimeField',
    states: {
      now: () => <TimeField label="Weighed" value={null} onValue={nothing} />,
      given: () => <TimeField label="Weighed" value="2026-05-12T12:05:00.000Z" onValue={nothing} />,
    },
  },
  {
    part: 'SpeciesField',
    states: {
      blank: () => <SpeciesField label="Species" allSpecies={builtInSpecies} value="" onValue={nothing} />,
      chosen: () => (
        <SpeciesField label="Species" allSpecies={builtInSpecies} value="walnut-black" onValue={nothing} />
      ),
      missing: () => (
        <SpeciesField
          label="Species"
          allSpecies={builtInSpecies}
          value=""
          error="Choose a species."
          onValue={nothing}
        />
      ),
    },
  },
  {
    part: 'Select',
    states: {
      chosen: () => (
        <Select label="To" value="shop" options={[{ value: 'shop', label: 'Shop' }]} onValue={nothing} />
      ),
    },
  },
  {
    part: 'TextArea',
    states: {
      filled: () => <TextArea label="Note" value="Two lines" onValue={nothing} />,
      'saved meanwhile': () => <TextArea label="Note" value="Two lines" saved="One" onValue={nothing} />,
    },
  },
  {
    part: 'Checkbox',
    states: {
      on: () => <Checkbox label="Sound" checked onChecked={nothing} />,
      off: () => (
        <Checkbox label="Sound" hint="When a reading is saved" checked={false} onChecked={nothing} />
      ),
    },
  },
  {
    part: 'Choice',
    states: {
      'one of two': () => (
        <Choice
          label="Units"
          value="metric"
          options={[
            { value: 'metric', label: 'Metric' },
            { value: 'imperial', label: 'US' },
          ]}
          onValue={nothing}
        />
      ),
    },
  },
];
