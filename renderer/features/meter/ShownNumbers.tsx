import { useRef, useState } from 'react';
import type { ShownNumber } from '../../../shared-core/gatt/shown-number.ts';
import { NumberField, Select } from '../../form/Field.tsx';
import type { DisplayUnit } from '../../stores/watching.ts';
import { Button } from '../../ui/Button.tsx';
import { rawText } from '../../ui/McValue.tsx';
import { useWords } from '../../words.ts';
import { displayUnits, readingUnitOf, shownNumber } from './shown-number.ts';

/** Where a person types what the meter's own display shows, and what was typed so far. */
export function ShownNumbers({
  numbers,
  unit,
  onUnit,
  onAdd,
  onDelete,
}: {
  numbers: readonly ShownNumber[];
  unit: DisplayUnit;
  onUnit: (unit: DisplayUnit) => void;
  onAdd: (number: ShownNumber) => void;
  onDelete: (number: ShownNumber) => void;
}) {
  const { say, formats } = useWords();
  const [typed, setTyped] = useState<{ value: number | null; text: string }>({ value: null, text: '' });
  const [isMissing, setMissing] = useState(false);
  const fromMs = useRef(0);
  const textOf = ({ value }: ShownNumber) => rawText(value, readingUnitOf(unit), formats);

  function add(): void {
    const { value, text } = typed;
    const isNumber = value !== null && Number.isFinite(value);
    setMissing(!isNumber);
    if (!isNumber) return;
    onAdd(shownNumber(value, text, unit, { fromMs: fromMs.current, toMs: performance.now() }));
    setTyped({ value: null, text: '' });
  }

  return (
    <form
      className="column"
      aria-label={say('watch.shown')}
      onSubmit={(event) => {
        event.preventDefault();
        add();
      }}
    >
      <div className="shown-number">
        <NumberField
          label={say('watch.shown')}
          hint={say('watch.shown-hint')}
          error={isMissing ? say('watch.shown-missing') : null}
          value={typed.value}
          onValue={(value, text) => {
            if (typed.text === '') fromMs.current = performance.now();
            setMissing(false);
            setTyped({ value, text });
          }}
        />
        <Select
          label={say('watch.unit')}
          value={unit}
          options={(Object.keys(displayUnits) as DisplayUnit[]).map((each) => ({
            value: each,
            label: say(`watch.unit.${each}`),
          }))}
          onValue={onUnit}
        />
        <Button type="submit" kind="main">
          {say('watch.find')}
        </Button>
      </div>
      {numbers.length > 0 && (
        <ul className="typed-numbers" aria-label={say('watch.typed')}>
          {numbers.map((number) => (
            <li key={number.toMs}>
              <strong>{textOf(number)}</strong>
              <Button
                kind="quiet"
                aria-label={say('watch.delete', { shown: textOf(number) })}
                onClick={() => onDelete(number)}
              >
                {say('meters.delete')}
              </Button>
            </li>
          ))}
        </ul>
      )}
    </form>
  );
}
