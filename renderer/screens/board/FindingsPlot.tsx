import type { LatestFinding, Move } from '../../../shared-core/contract/yard.ts';
import type { Use } from '../../../shared-core/probing/assessment.ts';
import { Axes, plotMargin } from '../../parts/chart/Axes.tsx';
import { linearScale, niceTicks, type Scale, timeTicks } from '../../parts/chart/scale.ts';

export const PLOT_HEIGHT = 320;
const DAY_MS = 86_400_000;
/** The room for the places' names above the plot. */
const NAMES_PX = 34;
const NAME_PX = 120;

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
  const y = linearScale(0, yTicks.at(-1) ?? 30, PLOT_HEIGHT - plotMargin.bottom, plotMargin.top + NAMES_PX);
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
        xTicks={timeTicks(x.from, x.to, Math.max(2, Math.floor(width / 110))).map((tick) => ({
          at: tick,
          label: tickWords(tick, x),
        }))}
        yTicks={yTicks.map((pct) => ({ at: pct, label: `${pct} %` }))}
      />
      <MoveMarks moves={moves} x={x} right={width - plotMargin.right} />
      <AverageLine findings={findings} x={x} y={y} />
      {findings.map((finding) => (
        <FindingMarks key={finding.roundId} finding={finding} x={x} y={y} />
      ))}
    </>
  );
}

/** A day within a year or less, a month beyond. */
function tickWords(tickMs: number, x: Scale): string {
  const long = x.to - x.from > 400 * DAY_MS;
  const format: Intl.DateTimeFormatOptions = long
    ? { month: 'short', year: 'numeric' }
    : { day: 'numeric', month: 'short' };
  return new Date(tickMs).toLocaleDateString('en-GB', format);
}

/** Where the board was moved, with the place's name; names that would run into each other take turns in two lines. */
function MoveMarks({ moves, x, right }: { moves: readonly Move[]; x: Scale; right: number }) {
  return moves.map((move, index) => {
    const left = x.at(at(move.since));
    const before = moves[index - 1];
    const isCrowded = before !== undefined && left - x.at(at(before.since)) < NAME_PX;
    const textY = plotMargin.top + (isCrowded && index % 2 === 1 ? 16 : 0);
    const isLate = left > right - NAME_PX;
    return (
      <g key={move.id}>
        <line
          className="finding-move"
          x1={left}
          x2={left}
          y1={textY + 4}
          y2={PLOT_HEIGHT - plotMargin.bottom}
        />
        <text x={isLate ? left - 4 : left + 4} y={textY} textAnchor={isLate ? 'end' : 'start'}>
          {shortened(move.placeName)}
        </text>
      </g>
    );
  });
}

const shortened = (name: string) => (name.length > 18 ? `${name.slice(0, 17)}…` : name);

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
