import type { CheckedMeter, MeterCheck } from '../../../shared-core/contract/meter-checks.ts';
import { timeAxis } from '../../../shared-core/drawing/chart/axes.ts';
import { Chart } from '../../chart/Chart.tsx';
import { useWords } from '../../words.ts';
import { checkSentence, offOf } from './check-sentence.ts';
import { useOffText } from './off-text.ts';

/** How far off a meter was at each of its checks, against what its block allows. */
export function CheckChart({
  meterName,
  of: { unit, block, checks, last },
}: {
  meterName: string;
  of: CheckedMeter;
}) {
  const words = useWords();
  const { say } = words;
  const text = useOffText(unit);
  const ats = checks.map(({ at }) => Date.parse(at));
  const pointOf = (check: MeterCheck) => ({ x: Date.parse(check.at), y: offOf(check, unit) });
  const isUsed = ({ excluded, isAhead }: MeterCheck) => excluded === null && !isAhead;
  const unused = checks.filter((check) => !isUsed(check)).map(pointOf);
  return (
    <Chart
      title={say('meter-check.chart', { meterName })}
      summary={last ? checkSentence(last, unit, say) : say('meter-check.none-used')}
      x={timeAxis(Math.min(...ats), Math.max(...ats), words)}
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
          values: checks.filter(isUsed).map(pointOf).toReversed(),
        },
        ...(unused.length === 0
          ? []
          : [
              {
                kind: 'points' as const,
                name: say('meter-check.chart.excluded'),
                color: 'ink-soft' as const,
                shape: 'ring' as const,
                values: unused,
              },
            ]),
      ]}
    />
  );
}
