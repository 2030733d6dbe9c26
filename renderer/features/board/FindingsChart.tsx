import type { LatestFinding, Move } from '../../../shared-core/contract/yard.ts';
import type { EndUse } from '../../../shared-core/wood/species/end-use.ts';
import type { Say } from '../../../shared-core/words/words.ts';
import { ChartFigure } from '../../chart/ChartFigure.tsx';
import { ChartLegend, LegendItem } from '../../chart/ChartLegend.tsx';
import { useWords } from '../../words.ts';
import { DepthMark } from './DepthMark.tsx';
import { FindingsPlot, PLOT_HEIGHT } from './FindingsPlot.tsx';
import './findings-chart.css';

/** What each round found on a board, over time, with the target of its use and its places. */
export function FindingsChart({
  code,
  findings,
  moves,
  endUse,
}: {
  code: string;
  /** Oldest first, at least one. */
  findings: readonly LatestFinding[];
  moves: readonly Move[];
  /** Null where it is not known. */
  endUse: EndUse | null;
}) {
  const { say, formats } = useWords();
  const mc = (pct: number | null) => (pct === null ? '–' : formats.mc(pct));
  return (
    <ChartFigure
      title={say('board.history-chart', { boardCode: code })}
      summary={summaryOf(findings, endUse, say)}
      height={PLOT_HEIGHT}
      legend={<Legend hasUse={endUse !== null} hasMoves={moves.length > 0} />}
      columns={[
        say('chart.day'),
        say('board.average'),
        say('chart.likely'),
        say('board.shell'),
        say('board.core'),
      ]}
      rows={findings.map((finding) => ({
        key: finding.roundId,
        cells: [
          formats.day(finding.at),
          mc(finding.averagePct),
          finding.lowPct === null || finding.highPct === null
            ? '–'
            : formats.mcInterval({ minPct: finding.lowPct, maxPct: finding.highPct }),
          mc(finding.shellPct),
          mc(finding.corePct),
        ],
      }))}
    >
      {(width) => <FindingsPlot width={width} findings={findings} moves={moves} endUse={endUse} />}
    </ChartFigure>
  );
}

function summaryOf(findings: readonly LatestFinding[], endUse: EndUse | null, say: Say): string {
  const averages = findings.flatMap(({ at, averagePct }) =>
    averagePct === null ? [] : [{ at, averagePct }],
  );
  const [first, last] = [averages[0], averages.at(-1)];
  if (!first || !last) return say('board.history-none');
  const change =
    first === last
      ? say('board.history-one', { averagePct: last.averagePct, probedOn: last.at })
      : say('board.history-more', {
          firstPct: first.averagePct,
          firstOn: first.at,
          lastPct: last.averagePct,
          lastOn: last.at,
        });
  return endUse
    ? `${change} ${say('board.target-of-use', { useName: endUse.name, targetRange: endUse })}`
    : change;
}

/** What the marks mean, in the shapes of the drawing. */
function Legend({ hasUse, hasMoves }: { hasUse: boolean; hasMoves: boolean }) {
  const { say } = useWords();
  return (
    <ChartLegend>
      <LegendItem words={say('chart.average-likely')}>
        <path className="finding-interval" d="M10 1v18M6 1h8M6 19h8" />
        <circle className="finding-average" cx="10" cy="10" r="5" />
      </LegendItem>
      <LegendItem words={say('board.shell')}>
        <DepthMark depth="shell" x={10} y={10} />
      </LegendItem>
      <LegendItem words={say('board.core')}>
        <DepthMark depth="core" x={10} y={11} />
      </LegendItem>
      {hasUse && (
        <LegendItem words={say('chart.target')}>
          <rect className="finding-use" y="4" width="20" height="12" />
        </LegendItem>
      )}
      {hasMoves && (
        <LegendItem words={say('chart.move')}>
          <path className="finding-move" d="M10 0v20" />
        </LegendItem>
      )}
    </ChartLegend>
  );
}
