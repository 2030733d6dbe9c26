import type { DisplayUnits } from '../../../shared-core/units/length.ts';
import { monthNames } from '../../../shared-core/units/month-names.ts';
import { temperatureUnit } from '../../../shared-core/units/temperature.ts';
import { NumberField } from '../../parts/Field.tsx';
import { type AirDraft, monthsFromText } from './place-draft.ts';
import './months-of-air.css';

/** The mean air of twelve months; a column or table of them can be pasted in at once. */
export function MonthsOfAir({
  months,
  units,
  wrongMonth,
  onMonths,
}: {
  months: readonly AirDraft[];
  units: DisplayUnits;
  wrongMonth: number | null;
  onMonths: (months: AirDraft[]) => void;
}) {
  const change = (index: number, air: AirDraft) =>
    onMonths(months.map((month, other) => (other === index ? air : month)));
  return (
    <fieldset
      className="months-of-air"
      onPaste={(event) => {
        const pasted = monthsFromText(event.clipboardData.getData('text'));
        if (!pasted) return;
        event.preventDefault();
        onMonths(pasted);
      }}
    >
      <legend>Mean air, month by month</legend>
      <p className="field-hint">
        Temperature in {temperatureUnit(units)}, relative humidity in %. Twelve lines copied from a
        spreadsheet can be pasted into any of the fields.
      </p>
      <div className="months-grid">
        {months.map((air, index) => (
          <MonthOfAir
            key={monthNames[index]}
            month={monthNames[index] ?? ''}
            air={air}
            units={units}
            wrong={index === wrongMonth}
            onAir={(changed) => change(index, changed)}
          />
        ))}
      </div>
    </fieldset>
  );
}

function MonthOfAir({
  month,
  air,
  units,
  wrong,
  onAir,
}: {
  month: string;
  air: AirDraft;
  units: DisplayUnits;
  wrong: boolean;
  onAir: (air: AirDraft) => void;
}) {
  return (
    <div className={`month-of-air ${wrong ? 'month-wrong' : ''}`}>
      <span aria-hidden="true">{month.slice(0, 3)}</span>
      <NumberField
        label={<span className="spoken-only">{month}, temperature</span>}
        unit={temperatureUnit(units)}
        value={air.temp}
        onValue={(temp) => onAir({ ...air, temp })}
      />
      <NumberField
        label={<span className="spoken-only">{month}, relative humidity</span>}
        unit="%"
        value={air.rhPct}
        onValue={(rhPct) => onAir({ ...air, rhPct })}
      />
    </div>
  );
}

/** The air where it is the same all year. */
export function AirOfYear({
  air,
  units,
  wrong,
  onAir,
}: {
  air: AirDraft | undefined;
  units: DisplayUnits;
  wrong: boolean;
  onAir: (air: AirDraft) => void;
}) {
  const { temp, rhPct } = air ?? { temp: null, rhPct: null };
  return (
    <div className={`form-grid ${wrong ? 'month-wrong' : ''}`}>
      <NumberField
        label="Temperature"
        unit={temperatureUnit(units)}
        value={temp}
        onValue={(typed) => onAir({ temp: typed, rhPct })}
      />
      <NumberField
        label="Relative humidity"
        unit="%"
        value={rhPct}
        onValue={(typed) => onAir({ temp, rhPct: typed })}
      />
    </div>
  );
}
