import type { CheckedMeter } from '../../../shared-core/contract/meter-checks.ts';
import { timeAxis } from '../../../shared-core/drawing/chart/axes.ts';
import { Chart } from '../../chart/Chart.tsx';
import { useWords } from '../../words.ts';
import { checkSentence, offOf } from './check-sentence.ts';
import { useOffText } from './off-text.ts';

/** How far off a meter was at each of its checks, against what its block allows. */
export function CheckChart({
  meterName,
  of: { unit, block, checks },
}: {
  meterName: string;
  of: CheckedMeter;
}) {
  const words = useWords();
  const { say } = words;
  const text = useOffText(unit);
  const [last] = checks;
  const first = checks.at(-1);
  if (!last || !first) return null;
  return (
    <Chart
      title={say('meter-check.chart', { meterName })}
      summary={checkSentence(last, unit, say)}
      x={timeAxis(Date.parse(first.at), Date.parse(last.at), words)}
      y={{
        title: say('meter-check.column.off'),
        text,
        intervalText: (low, high) => `${text(low)} – ${text(high)}`,
        tickText: text,
        startsAtZero: false,
      }}
      layers={[
        {
          kind: 'target',
          name: say('meter-check.chart.right'),
          color: 'ready',
          low: -block.tolerance,
          high: block.tolerance,
        },
        {
          kind: 'points',
          name: say('meter-check.chart.shown'),
          color: 'accent',
          shape: 'disc',
          isJoined: true,
          values: checks.map((check) => ({ x: Date.parse(check.at), y: offOf(check, unit) })).toReversed(),
        },
      ]}
    />
  );
}
