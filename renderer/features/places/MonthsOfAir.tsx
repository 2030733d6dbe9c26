import { pastedMonths } from '../../../shared-core/units/pasted-months.ts';
import { temperatureUnit } from '../../../shared-core/units/temperature.ts';
import { NumberField } from '../../form/Field.tsx';
import { TempField } from '../../form/MeasureFields.tsx';
import { useUnits } from '../../stores/settings.ts';
import { useWords } from '../../words.ts';
import type { PlaceAirTyped } from './PlaceAirFields.tsx';
import { MONTHS, monthFields } from './place-air.ts';
import css from './places.module.css';

/** The average air of twelve months; a table of them can be pasted in at once. */
export function MonthsOfAir({ typed: { field, set } }: { typed: PlaceAirTyped }) {
  const { say, formats } = useWords();
  const units = useUnits();
  return (
    <fieldset
      className={css.months}
      onPaste={(event) => {
        const pasted = pastedMonths(event.clipboardData.getData('text'), units);
        if (!pasted) return;
        event.preventDefault();
        set(monthFields(pasted));
      }}
    >
      <legend>{say('places.months')}</legend>
      <p className="soft">{say('places.months-hint', { unitName: temperatureUnit(units) })}</p>
      {MONTHS.map((month) => {
        const monthName = formats.month(month + 1);
        return (
          <div key={month}>
            <span aria-hidden="true">{formats.month(month + 1, 'short')}</span>
            <TempField
              label={<span className="spoken-only">{say('places.temperature-in', { monthName })}</span>}
              {...field(`${month}.tempC`)}
            />
            <NumberField
              label={<span className="spoken-only">{say('places.humidity-in', { monthName })}</span>}
              unit="%"
              {...field(`${month}.rhPct`)}
            />
          </div>
        );
      })}
    </fieldset>
  );
}
