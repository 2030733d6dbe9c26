import { mcAxis } from '../../chart/axes.ts';
import { Chart } from '../../chart/Chart.tsx';
import { useWords } from '../../words.ts';

const MONTHS = 12;

/** The EMC at one place, month by month, with the driest month marked. */
export function YearChart({
  placeName,
  emcPct,
  driestMonth,
  thisMonth,
  reachesPct,
}: {
  /** Null while it has none. */
  placeName: string | null;
  /** Twelve, January first, % MC. */
  emcPct: readonly number[];
  /** 1 to 12. */
  driestMonth: number;
  /** 1 to 12. */
  thisMonth: number;
  /** How high the axis reaches where several places are beside each other, % MC. */
  reachesPct?: number;
}) {
  const words = useWords();
  const { say, formats } = words;
  const lowest = { emcPct: emcPct[driestMonth - 1] ?? 0, monthName: formats.month(driestMonth) };
  const isSteady = Math.max(...emcPct) - Math.min(...emcPct) < 0.05;
  return (
    <Chart
      title={placeName === null ? say('places.year-unnamed') : say('places.year', { placeName })}
      summary={
        isSteady ? say('places.steady-emc', { emcPct: lowest.emcPct }) : say('places.lowest-emc', lowest)
      }
      x={{
        title: say('places.month'),
        from: 0.5,
        to: MONTHS + 0.5,
        text: (month) => formats.month(month),
        // All of them, or their first letters.
        ticks: (most) =>
          emcPct.map((_, index) => ({
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
          values: [{ x: thisMonth, word: say('places.now') }],
        },
        {
          kind: 'points',
          name: say('places.emc'),
          color: 'accent',
          shape: 'ring',
          isJoined: true,
          values: emcPct.map((pct, index) => ({ x: index + 1, y: pct })),
        },
        {
          kind: 'points',
          name: null,
          color: 'keep-drying',
          shape: 'disc',
          values: isSteady
            ? []
            : [
                {
                  x: driestMonth,
                  y: lowest.emcPct,
                  word: say('places.lowest-mark', { emcPct: lowest.emcPct }),
                },
              ],
        },
      ]}
    />
  );
}
