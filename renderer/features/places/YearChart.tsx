import { mcAxis } from '../../../shared-core/drawing/chart/axes.ts';
import { emcOfYear } from '../../../shared-core/wood/climate/climate.ts';
import type { MonthlyAir } from '../../../shared-core/wood/climate/monthly-air.ts';
import { Chart } from '../../chart/Chart.tsx';
import { useWords } from '../../words.ts';

const MONTHS = 12;
const byMonth = (pct: number, index: number) => ({ x: index + 1, y: pct });

/** The EMC at one place, month by month, with the driest month marked; beside it that of typical air, where readings differ. */
export function YearChart({
  placeName,
  air,
  offsetPct = 0,
  offsetFrom = 'by-readings',
  reachesPct,
}: {
  /** Null while it has none. */
  placeName: string | null;
  air: MonthlyAir;
  /** What readings there say of that air, % MC. */
  offsetPct?: number;
  /** What says so. */
  offsetFrom?: 'by-readings' | 'by-measured' | 'by-both';
  /** How high the axis reaches where several places are beside each other, % MC. */
  reachesPct?: number;
}) {
  const words = useWords();
  const { say, formats } = words;
  const { monthlyEmcPct, driestEmcPct: emcPct, driestMonth } = emcOfYear(air, offsetPct);
  return (
    <Chart
      title={placeName === null ? say('places.year-unnamed') : say('places.year', { placeName })}
      summary={
        driestMonth === null
          ? say('places.steady-emc', { emcPct })
          : say('places.lowest-emc', { emcPct, monthName: formats.month(driestMonth) })
      }
      x={{
        title: say('places.month'),
        from: 0.5,
        to: MONTHS + 0.5,
        text: (month) => formats.month(month),
        // All of them, or their first letters.
        ticks: (most) =>
          monthlyEmcPct.map((_, index) => ({
            at: index + 1,
            label: formats.month(index + 1, most < MONTHS ? 'narrow' : 'short'),
          })),
      }}
      y={mcAxis(say('places.emc'), words, { reaches: reachesPct })}
      layers={[
        {
          kind: 'marks',
          name: null,
          color: 'line-strong',
          stroke: 'dashed',
          values: [{ x: new Date().getMonth() + 1, word: say('places.now') }],
        },
        {
          kind: 'line',
          name: say('places.typical-air'),
          color: 'ink-soft',
          stroke: 'dashed',
          values: offsetPct === 0 ? [] : emcOfYear(air).monthlyEmcPct.map(byMonth),
        },
        {
          kind: 'points',
          name: say(offsetPct === 0 ? 'places.emc' : `places.${offsetFrom}`),
          color: 'accent',
          shape: 'ring',
          isJoined: true,
          values: monthlyEmcPct.map(byMonth),
        },
        {
          kind: 'points',
          name: null,
          color: 'keep-drying',
          shape: 'disc',
          values:
            driestMonth === null
              ? []
              : [{ x: driestMonth, y: emcPct, word: say('places.lowest-mark', { emcPct }) }],
        },
      ]}
    />
  );
}
