import type { LatestFinding, Move } from '../../../shared-core/contract/yard.ts';
import type { Use } from '../../../shared-core/probing/assessment.ts';
import { Axes, plotMargin } from '../../parts/chart/Axes.tsx';
import { linearScale, niceTicks, type Scale } from '../../parts/chart/scale.ts';
import { timeAxisTicks } from '../../parts/chart/time-ticks.ts';
import { STAY_NAMES_PX, StayMarks } from './StayMarks.tsx';

export const PLOT_HEIGHT = 320;
const DAY_MS = 86_400_000;

const at = (instant: string) => new Date(instant).getTime();

/** The drawing itself: the use's band, the moves, and each round's average, interval, shell and core. */
export function FindingsPlot({
  width,
  findings,
  moves,
  use,
}: {
  width: number;
  findings: readonly LatestFinding[];
  moves: readonly Move[];
  use: Use | null;
}) {
  const times = [...findings, ...moves].map((event) => at('at' in event ? event.at : event.since));
  const spanMs = Math.max(Math.max(...times) - Math.min(...times), 4 * DAY_MS);
  const values = findings.flatMap(({ averagePct, highPct, shellPct, corePct }) =>
    [averagePct, highPct, shellPct, corePct].filter((pct) => pct !== null),
  );
  const yTicks = niceTicks(0, Math.max(...values, use?.maxPct ?? 0) * 1.05, 6);
  const x = linearScale(
    Math.min(...times) - 0.04 * spanMs,
    Math.min(...times) + 1.04 * spanMs,
    plotMargin.left,
    width - plotMargin.right,
  );
  const y = linearScale(
    0,
    yTicks.at(-1) ?? 30,
    PLOT_HEIGHT - plotMargin.bottom,
    plotMargin.top + STAY_NAMES_PX,
  );
  return (
    <>
      {use && (
        <rect
          className="finding-use"
          x={plotMargin.left}
          width={width - plotMargin.left - plotMargin.right}
          y={y.at(use.maxPct)}
          height={y.at(use.minPct) - y.at(use.maxPct)}
        />
      )}
      <Axes
        x={x}
        y={y}
        width={width}
        height={PLOT_HEIGHT}
        xTicks={timeAxisTicks(x, width)}
        yTicks={yTicks.map((pct) => ({ at: pct, label: `${pct} %` }))}
      />
      <StayMarks
        stays={moves.map(({ since, placeName }) => ({ fromMs: at(since), placeName }))}
        x={x}
        top={plotMargin.top}
        bottom={PLOT_HEIGHT - plotMargin.bottom}
        right={width - plotMargin.right}
      />
      <AverageLine findings={findings} x={x} y={y} />
      {findings.map((finding) => (
        <FindingMarks key={finding.roundId} finding={finding} x={x} y={y} />
      ))}
    </>
  );
}

function AverageLine({ findings, x, y }: { findings: readonly LatestFinding[]; x: Scale; y: Scale }) {
  const points = findings.flatMap(({ at: instant, averagePct }) =>
    averagePct === null ? [] : `${x.at(at(instant))},${y.at(averagePct)}`,
  );
  return <polyline className="finding-line" points={points.join(' ')} />;
}

function FindingMarks({ finding, x, y }: { finding: LatestFinding; x: Scale; y: Scale }) {
  const left = x.at(at(finding.at));
  const { averagePct, lowPct, highPct, shellPct, corePct } = finding;
  return (
    <g>
      {lowPct !== null && highPct !== null && (
        <path
          className="finding-interval"
          d={`M${left} ${y.at(lowPct)}V${y.at(highPct)}M${left - 5} ${y.at(lowPct)}h10M${left - 5} ${y.at(highPct)}h10`}
        />
      )}
      {shellPct !== null && (
        <rect className="finding-shell" x={left - 5} y={y.at(shellPct) - 5} width="10" height="10" />
      )}
      {corePct !== null && <path className="finding-core" d={`M${left} ${y.at(corePct) - 7}l6.5 12h-13z`} />}
      {averagePct !== null && <circle className="finding-average" cx={left} cy={y.at(averagePct)} r={5} />}
    </g>
  );
}
