import type { LatestFinding, Move } from '../../../shared-core/contract/yard.ts';
import type { EndUse } from '../../../shared-core/wood/species/end-use.ts';
import { Axes, pctTicks, plotMargin } from '../../chart/Axes.tsx';
import { linearScale, niceTicks, type Scale } from '../../chart/scale.ts';
import { timeAxisTicks, timeScale } from '../../chart/time-axis.ts';
import { useWords } from '../../words.ts';
import { DepthMark } from './DepthMark.tsx';
import { EndUseBand } from './EndUseBand.tsx';
import { STAY_NAMES_PX, StayMarks } from './StayMarks.tsx';

export const PLOT_HEIGHT = 320;

const at = (instant: string) => new Date(instant).getTime();

/** The drawing itself: the use's band, the moves, and each round's average, interval, shell and core. */
export function FindingsPlot({
  width,
  findings,
  moves,
  endUse,
}: {
  width: number;
  findings: readonly LatestFinding[];
  moves: readonly Move[];
  endUse: EndUse | null;
}) {
  const { formats } = useWords();
  const times = [...findings, ...moves].map((event) => at('at' in event ? event.at : event.since));
  const values = findings.flatMap(({ averagePct, highPct, shellPct, corePct }) =>
    [averagePct, highPct, shellPct, corePct].filter((pct) => pct !== null),
  );
  const yTicks = niceTicks(0, Math.max(...values, endUse?.maxPct ?? 0) * 1.05, 6);
  const x = timeScale(times, width);
  const y = linearScale(
    0,
    yTicks.at(-1) ?? 30,
    PLOT_HEIGHT - plotMargin.bottom,
    plotMargin.top + STAY_NAMES_PX,
  );
  return (
    <>
      {endUse && <EndUseBand endUse={endUse} y={y} width={width} />}
      <Axes
        x={x}
        y={y}
        width={width}
        height={PLOT_HEIGHT}
        xTicks={timeAxisTicks(x, width, formats)}
        yTicks={pctTicks(yTicks, formats)}
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
      {shellPct !== null && <DepthMark depth="shell" x={left} y={y.at(shellPct)} />}
      {corePct !== null && <DepthMark depth="core" x={left} y={y.at(corePct)} />}
      {averagePct !== null && <circle className="finding-average" cx={left} cy={y.at(averagePct)} r={5} />}
    </g>
  );
}
