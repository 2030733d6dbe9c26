import { emcPct } from '../../../shared-core/wood/climate/emc.ts';
import { mcAxis, numberAxis } from '../../chart/axes.ts';
import { Chart } from '../../chart/Chart.tsx';
import { useWords } from '../../words.ts';

const DAMPEST_PCT = 99;
const READ_OUT_PCT = [10, 20, 30, 40, 50, 60, 70, 80, 90];
/** What most air is between. */
const DRY_PCT = 30;
const DAMP_PCT = 80;

/** The EMC at one temperature over all humidities, with the present one, where there is one, marked. */
export function EmcChart({ tempC, rh }: { tempC: number; rh: number | null }) {
  const words = useWords();
  const { say, formats } = words;
  const emc = (rhPct: number) => ({ x: rhPct, y: emcPct(tempC, rhPct / 100) });
  return (
    <Chart
      title={say('air.emc-at', { airTempC: tempC })}
      summary={say('air.emc-summary', {
        airTempC: tempC,
        dryRhPct: DRY_PCT,
        dryPct: emc(DRY_PCT).y,
        dampRhPct: DAMP_PCT,
        dampPct: emc(DAMP_PCT).y,
      })}
      x={numberAxis(say('air.humidity'), 0, 100, formats.wholePercent)}
      y={mcAxis(say('air.emc'), words)}
      stops={READ_OUT_PCT}
      layers={[
        {
          kind: 'line',
          name: say('air.emc'),
          color: 'accent',
          stroke: 'solid',
          values: Array.from({ length: DAMPEST_PCT + 1 }, (_, rhPct) => emc(rhPct)),
        },
        {
          kind: 'points',
          name: say('air.of-this-air'),
          color: 'ink',
          shape: 'disc',
          values: rh === null ? [] : [{ ...emc(100 * rh), word: formats.mc(emcPct(tempC, rh)) }],
        },
      ]}
    />
  );
}
