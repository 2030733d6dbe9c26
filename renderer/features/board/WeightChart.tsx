import type { SampleBoardState } from '../../../shared-core/contract/sample-board.ts';
import type { LatestFinding } from '../../../shared-core/contract/yard.ts';
import { mcAxis, timeAxis } from '../../../shared-core/drawing/chart/axes.ts';
import type { PointValue } from '../../../shared-core/drawing/chart/description.ts';
import { isoOf } from '../../../shared-core/time.ts';
import { Chart } from '../../chart/Chart.tsx';
import { useWords } from '../../words.ts';

/** Moisture content over time by the board's weight, beside what the meter found. */
export function WeightChart({
  code,
  state,
  findings,
}: {
  code: string;
  state: SampleBoardState;
  findings: readonly LatestFinding[];
}) {
  const words = useWords();
  const { say, formats } = words;
  const weighed = (at: string, kg: number, mcPct: number): PointValue => ({
    x: Date.parse(at),
    y: mcPct,
    more: { [say('weights.weight')]: formats.weight(kg) },
  });
  const byWeight = [
    ...state.cuts.flatMap(({ at, boardKg, estimate }) =>
      estimate ? [weighed(at, boardKg, estimate.mcWhenCutPct)] : [],
    ),
    ...state.weights.flatMap(({ at, kg, mcPct, excluded }) =>
      mcPct !== null && excluded === null ? [weighed(at, kg, mcPct)] : [],
    ),
  ].sort((a, b) => a.x - b.x);
  const [first, last] = [byWeight[0], byWeight.at(-1)];
  if (!first || !last) return null;
  const byMeter = findings.flatMap(({ at, averagePct, averageIs }): PointValue[] =>
    averagePct === null || averageIs !== 'read' ? [] : [{ x: Date.parse(at), y: averagePct }],
  );
  const times = [...byWeight, ...byMeter].map(({ x }) => x);
  return (
    <Chart
      title={say('weights.chart', { boardCode: code })}
      summary={
        first === last
          ? say('weights.chart-one', { mcPct: last.y, weighedOn: isoOf(last.x) })
          : say('weights.chart-more', {
              firstPct: first.y,
              firstOn: isoOf(first.x),
              lastPct: last.y,
              lastOn: isoOf(last.x),
            })
      }
      x={timeAxis(Math.min(...times), Math.max(...times), words)}
      y={mcAxis(say('chart.mc'), words)}
      layers={[
        {
          kind: 'points',
          name: say('weights.by-weight'),
          color: 'accent',
          shape: 'disc',
          isJoined: true,
          values: byWeight,
        },
        { kind: 'points', name: say('weights.by-meter'), color: 'ink', shape: 'diamond', values: byMeter },
      ]}
    />
  );
}
