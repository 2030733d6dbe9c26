import { DAMPEST_RH, emcPct, rhForEmc } from '../../../shared-core/wood/climate/emc.ts';
import { dewPointC } from '../../../shared-core/wood/climate/moist-air.ts';
import { NumberField } from '../../form/Field.tsx';
import { TempField } from '../../form/MeasureFields.tsx';
import { useDraft } from '../../form/useDraft.ts';
import { Sheet } from '../../ui/Screen.tsx';
import { SourcesLink } from '../../ui/SourcesLink.tsx';
import { useWords } from '../../words.ts';
import { AirFigures } from './AirFigures.tsx';
import css from './air.module.css';
import { airSchema, USUAL_C, valid } from './air-fields.ts';
import { EmcChart } from './EmcChart.tsx';

/** One temperature, and with it the EMC of a humidity, the humidity for a target, and the curve of both. */
export function AirAndWood() {
  const { say, formats } = useWords();
  const { draft, field } = useDraft(airSchema, { tempC: USUAL_C, rhPct: 50, targetPct: 8 });
  const tempC = valid('tempC', draft.tempC);
  const rhPct = valid('rhPct', draft.rhPct);
  const wettestPct = tempC === null ? null : Math.floor(10 * emcPct(tempC, DAMPEST_RH)) / 10;
  const typedPct = valid('targetPct', draft.targetPct);
  const targetPct = typedPct !== null && wettestPct !== null && typedPct <= wettestPct ? typedPct : null;
  return (
    <div className={css.columns}>
      <div className="column">
        <Sheet>
          <TempField label={say('air.temperature')} {...field('tempC')} />
        </Sheet>
        <Sheet title={say('air.of-this-air')}>
          <NumberField label={say('air.humidity')} unit="%" {...field('rhPct')} />
          {tempC !== null && rhPct !== null && (
            <AirFigures
              of={[
                [say('air.emc'), formats.mc(emcPct(tempC, rhPct / 100))],
                [say('air.dew-point'), formats.temperature(dewPointC(tempC, rhPct / 100))],
              ]}
              note={say('air.emc-note')}
            />
          )}
        </Sheet>
        <Sheet title={say('air.for-target')}>
          <NumberField
            label={say('air.target')}
            unit="%"
            {...field('targetPct')}
            {...(typedPct !== null &&
              targetPct === null &&
              wettestPct !== null && { error: say('air.target-outside', { wettestPct }) })}
          />
          {tempC !== null && targetPct !== null && (
            <AirFigures
              of={[[say('air.humidity-to-hold'), formats.wholePercent(100 * rhForEmc(tempC, targetPct))]]}
              note={say('air.humidity-note')}
            />
          )}
        </Sheet>
      </div>
      <Sheet title={say('air.at-this-temperature')}>
        {tempC !== null && <EmcChart tempC={tempC} rhPct={rhPct} targetPct={targetPct} />}
        <SourcesLink part="emc" />
      </Sheet>
    </div>
  );
}
