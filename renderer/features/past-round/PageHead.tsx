import type { MeterOfYard } from '../../../shared-core/contract/meter.ts';
import { Choice } from '../../form/Choice.tsx';
import { ClockField } from '../../form/ClockField.tsx';
import { DateField } from '../../form/DateField.tsx';
import { Select } from '../../form/Field.tsx';
import { TempField } from '../../form/MeasureFields.tsx';
import { dayOf } from '../../ui/days.ts';
import { useWords } from '../../words.ts';
import { depthChoices, type PageDraft } from './page-draft.ts';
import type { PageProblems } from './page-problems.ts';
import css from './past-round.module.css';

/** What holds for the whole page: when, with which meter, how warm, how deep. */
export function PageHead({
  page,
  onChange,
  meters,
  meterId,
  placeName,
  problems,
}: {
  page: PageDraft;
  onChange: (changed: Partial<PageDraft>) => void;
  meters: readonly MeterOfYard[];
  meterId: number | null;
  /** Where most boards were that day. */
  placeName: string;
  problems: PageProblems;
}) {
  const { say } = useWords();
  const pinsMm = meters.find(({ id }) => id === meterId)?.profile?.pins?.lengthMm ?? null;
  const { temperatureOf, tempC, depth, enterMoves } = page;
  return (
    <div className={css.head}>
      <DateField
        label={say('past-round.day')}
        max={dayOf(new Date())}
        value={page.day}
        error={problems.day}
        onValue={(day) => onChange({ day })}
      />
      <ClockField label={say('past-round.time')} value={page.time} onValue={(time) => onChange({ time })} />
      <Select
        label={say('past-round.meter')}
        value={meterId}
        options={[
          ...meters.map(({ id, name }) => ({ value: id, label: name, isName: true })),
          { value: null, label: say('past-round.no-meter') },
        ]}
        onValue={(chosen) => onChange({ meterId: chosen })}
      />
      <div className="column">
        <Choice
          label={say('past-round.temperature')}
          value={temperatureOf}
          options={(['wood', 'air', 'unknown'] as const).map((value) => ({
            value,
            label: say(`past-round.temperature.${value}`),
          }))}
          onValue={(value) => onChange({ temperatureOf: value })}
        />
        {temperatureOf !== 'unknown' && (
          <TempField
            label={say(temperatureOf === 'wood' ? 'past-round.wood-temp' : 'past-round.air-temp')}
            value={tempC}
            error={problems.temp}
            onValue={(value) => onChange({ tempC: value })}
          />
        )}
        {temperatureOf !== 'wood' && (
          <p className="soft">
            {temperatureOf === 'air'
              ? say('past-round.air-effect')
              : say('past-round.unknown-effect', { placeName })}
          </p>
        )}
      </div>
      <div className="column">
        <Choice
          label={say('past-round.depth')}
          value={depth}
          options={depthChoices(pinsMm).map((value) => ({
            value,
            label:
              value === 'pins' && pinsMm !== null
                ? say('past-round.depth.pins-length', { pinsMm })
                : say(`past-round.depth.${value}`),
          }))}
          onValue={(value) => onChange({ depth: value })}
        />
        {depth === 'unknown' && <p className="soft">{say('past-round.depth-unknown-effect')}</p>}
      </div>
      <Choice
        label={say('past-round.enter-moves')}
        value={enterMoves}
        options={(['down', 'across'] as const).map((value) => ({
          value,
          label: say(`past-round.enter-moves.${value}`),
        }))}
        onValue={(value) => onChange({ enterMoves: value })}
      />
    </div>
  );
}
