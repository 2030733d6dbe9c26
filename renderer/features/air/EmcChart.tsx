import { emcPct } from '../../../shared-core/wood/climate/emc.ts';
import { Axes, pctTicks, plotMargin } from '../../chart/Axes.tsx';
import { ChartFigure } from '../../chart/ChartFigure.tsx';
import { linearScale, niceTicks } from '../../chart/scale.ts';
import { useWords } from '../../words.ts';

const HEIGHT = 320;
/** The room for the name of the axis. */
const TITLE_HEIGHT = 18;
const AXES_HEIGHT = HEIGHT - TITLE_HEIGHT;
const DAMPEST_PCT = 99;
const TABLE_PCT = [10, 20, 30, 40, 50, 60, 70, 80, 90];
/** What most air is between. */
const DRY_PCT = 30;
const DAMP_PCT = 80;

/** The EMC at one temperature over all humidities, with the present one, where there is one, marked. */
export function EmcChart({ tempC, rh }: { tempC: number; rh: number | null }) {
  const { say, formats } = useWords();
  return (
    <ChartFigure
      title={say('air.emc-at', { airTempC: tempC })}
      summary={say('air.emc-summary', {
        airTempC: tempC,
        dryRhPct: DRY_PCT,
        dryPct: emcPct(tempC, DRY_PCT / 100),
        dampRhPct: DAMP_PCT,
        dampPct: emcPct(tempC, DAMP_PCT / 100),
      })}
      height={HEIGHT}
      columns={[say('air.humidity'), say('air.emc')]}
      rows={TABLE_PCT.map((rhPct) => ({
        key: rhPct,
        cells: [formats.wholePercent(rhPct), formats.mc(emcPct(tempC, rhPct / 100))],
      }))}
    >
      {(width) => <Plot width={width} tempC={tempC} rh={rh} />}
    </ChartFigure>
  );
}

function Plot({ width, tempC, rh }: { width: number; tempC: number; rh: number | null }) {
  const { say, formats } = useWords();
  const yTicks = niceTicks(0, emcPct(tempC, DAMPEST_PCT / 100), 5);
  const x = linearScale(0, 100, plotMargin.left, width - plotMargin.right);
  const y = linearScale(0, yTicks.at(-1) ?? 30, AXES_HEIGHT - plotMargin.bottom, plotMargin.top);
  const curve = Array.from({ length: DAMPEST_PCT + 1 }, (_, rhPct) => {
    const pct = emcPct(tempC, rhPct / 100);
    return `${x.at(rhPct).toFixed(1)},${y.at(pct).toFixed(1)}`;
  });
  const here = rh === null ? null : { x: x.at(100 * rh), y: y.at(emcPct(tempC, rh)) };
  return (
    <>
      <Axes
        x={x}
        y={y}
        width={width}
        height={AXES_HEIGHT}
        xTicks={[0, 20, 40, 60, 80, 100].map((rhPct) => ({ at: rhPct, label: formats.wholePercent(rhPct) }))}
        yTicks={pctTicks(yTicks, formats)}
      />
      <polyline className="emc-line" points={curve.join(' ')} />
      {here && (
        <>
          <path
            className="emc-here-line"
            d={`M${here.x} ${AXES_HEIGHT - plotMargin.bottom}V${here.y}H${plotMargin.left}`}
          />
          <circle className="emc-here" cx={here.x} cy={here.y} r={5.5} />
        </>
      )}
      <text x={width - plotMargin.right} y={HEIGHT - 4} textAnchor="end">
        {say('air.humidity')}
      </text>
    </>
  );
}
