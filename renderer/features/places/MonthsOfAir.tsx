import { temperatureUnit } from '../../../shared-core/units/temperature.ts';
import { NumberField } from '../../form/Field.tsx';
import { TempField } from '../../form/MeasureFields.tsx';
import { useUnits } from '../../stores/settings.ts';
import { useWords } from '../../words.ts';
import { type AirDraft, monthsFromText } from './place-draft.ts';
import './months-of-air.css';

/** The average air of twelve months; a table of them can be pasted in at once. */
export function MonthsOfAir({
  months,
  wrongMonth,
  onMonths,
}: {
  months: readonly AirDraft[];
  wrongMonth: number | null;
  onMonths: (months: AirDraft[]) => void;
}) {
  const { say, formats } = useWords();
  const units = useUnits();
  const change = (index: number, air: AirDraft) =>
    onMonths(months.map((month, other) => (other === index ? air : month)));
  return (
    <fieldset
      className="months-of-air"
      onPaste={(event) => {
        const pasted = monthsFromText(event.clipboardData.getData('text'), units);
        if (!pasted) return;
        event.preventDefault();
        onMonths(pasted);
      }}
    >
      <legend>{say('places.months')}</legend>
      <p className="field-hint">{say('places.months-hint', { unitName: temperatureUnit(units) })}</p>
      <div className="months-grid">
        {months.map((air, index) => (
          <MonthOfAir
            // biome-ignore lint/suspicious/noArrayIndexKey: a month is its index.
            key={index}
            monthName={formats.month(index + 1)}
            shortName={formats.month(index + 1, 'short')}
            air={air}
            wrong={index === wrongMonth}
            onAir={(changed) => change(index, changed)}
          />
        ))}
      </div>
    </fieldset>
  );
}

function MonthOfAir({
  monthName,
  shortName,
  air,
  wrong,
  onAir,
}: {
  monthName: string;
  shortName: string;
  air: AirDraft;
  wrong: boolean;
  onAir: (air: AirDraft) => void;
}) {
  const { say } = useWords();
  return (
    <div className={`month-of-air ${wrong ? 'month-wrong' : ''}`}>
      <span aria-hidden="true">{shortName}</span>
      <TempField
        label={<span className="spoken-only">{say('places.temperature-in', { monthName })}</span>}
        value={air.tempC}
        onValue={(tempC) => onAir({ ...air, tempC })}
      />
      <NumberField
        label={<span className="spoken-only">{say('places.humidity-in', { monthName })}</span>}
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
  wrong,
  onAir,
}: {
  air: AirDraft | undefined;
  wrong: boolean;
  onAir: (air: AirDraft) => void;
}) {
  const { say } = useWords();
  const { tempC, rhPct } = air ?? { tempC: null, rhPct: null };
  return (
    <div className={`form-grid ${wrong ? 'month-wrong' : ''}`}>
      <TempField
        label={say('places.temperature')}
        value={tempC}
        onValue={(typed) => onAir({ tempC: typed, rhPct })}
      />
      <NumberField
        label={say('places.humidity')}
        unit="%"
        value={rhPct}
        onValue={(typed) => onAir({ tempC, rhPct: typed })}
      />
    </div>
  );
}
