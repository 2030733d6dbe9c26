import { mcAxis, numberAxis } from '../../../shared-core/drawing/chart/axes.ts';
import type { Points } from '../../../shared-core/drawing/chart/description.ts';
import { emcPct, rhForEmc } from '../../../shared-core/wood/climate/emc.ts';
import { Chart } from '../../chart/Chart.tsx';
import { useWords } from '../../words.ts';

const DAMPEST_PCT = 99;
const READ_OUT_PCT = [10, 20, 30, 40, 50, 60, 70, 80, 90];
/** What most air is between. */
const DRY_PCT = 30;
const DAMP_PCT = 80;

/** The EMC at one temperature over all humidities, with the present humidity and target marked, where there are such. */
export function EmcChart({
  tempC,
  rhPct,
  targetPct,
}: {
  tempC: number;
  rhPct: number | null;
  targetPct: number | null;
}) {
  const words = useWords();
  const { say, formats } = words;
  const emc = (atPct: number) => ({ x: atPct, y: emcPct(tempC, atPct / 100) });
  const mark = (name: string, shape: Points['shape'], atPct: number | null): Points => ({
    kind: 'points',
    name,
    color: 'ink',
    shape,
    values: atPct === null ? [] : [{ ...emc(atPct), word: formats.mc(emc(atPct).y) }],
  });
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
          values: Array.from({ length: DAMPEST_PCT + 1 }, (_, atPct) => emc(atPct)),
        },
        mark(say('air.of-this-air'), 'disc', rhPct),
        mark(say('air.target'), 'diamond', targetPct === null ? null : 100 * rhForEmc(tempC, targetPct)),
      ]}
    />
  );
}
