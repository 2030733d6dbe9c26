import type { LatestFinding, Move } from '../../../shared-core/contract/yard.ts';
import type { EndUse } from '../../../shared-core/wood/species/end-use.ts';
import { ChartFigure } from '../../parts/chart/ChartFigure.tsx';
import { ChartLegend, LegendItem } from '../../parts/chart/ChartLegend.tsx';
import { dayWords } from '../../parts/days.ts';
import { pctWords } from '../../parts/McValue.tsx';
import { DepthMark } from './DepthMark.tsx';
import { FindingsPlot, PLOT_HEIGHT } from './FindingsPlot.tsx';
import './findings-chart.css';

/** What each round found on a board, over time, against what its use wants and where it stood. */
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
  return (
    <ChartFigure
      title={`Moisture content of ${code} over time`}
      summary={summaryOf(findings, endUse)}
      height={PLOT_HEIGHT}
      legend={<Legend hasUse={endUse !== null} hasMoves={moves.length > 0} />}
      columns={['Day', 'Average, %', 'Likely from, %', 'to, %', 'Shell, %', 'Core, %']}
      rows={findings.map((finding) => ({
        key: finding.roundId,
        cells: [
          dayWords(finding.at),
          pctWords(finding.averagePct),
          pctWords(finding.lowPct),
          pctWords(finding.highPct),
          pctWords(finding.shellPct),
          pctWords(finding.corePct),
        ],
      }))}
    >
      {(width) => <FindingsPlot width={width} findings={findings} moves={moves} endUse={endUse} />}
    </ChartFigure>
  );
}

function summaryOf(findings: readonly LatestFinding[], endUse: EndUse | null): string {
  const sound = findings.filter((finding) => finding.averagePct !== null);
  const [first, last] = [sound[0], sound.at(-1)];
  if (!first || !last) return 'No round gave a sound average yet.';
  const wanted = endUse ? ` ${endUse.name} wants ${endUse.minPct} to ${endUse.maxPct} %.` : '';
  if (first === last) return `${pctWords(last.averagePct)} % on ${dayWords(last.at)}.${wanted}`;
  return `From ${pctWords(first.averagePct)} % on ${dayWords(first.at)} to ${pctWords(last.averagePct)} % on ${dayWords(last.at)}.${wanted}`;
}

/** What the marks mean, in the shapes of the drawing. */
function Legend({ hasUse, hasMoves }: { hasUse: boolean; hasMoves: boolean }) {
  return (
    <ChartLegend>
      <LegendItem words="average, and where it likely lies">
        <path className="finding-interval" d="M10 1v18M6 1h8M6 19h8" />
        <circle className="finding-average" cx="10" cy="10" r="5" />
      </LegendItem>
      <LegendItem words="shell">
        <DepthMark depth="shell" x={10} y={10} />
      </LegendItem>
      <LegendItem words="core">
        <DepthMark depth="core" x={10} y={11} />
      </LegendItem>
      {hasUse && (
        <LegendItem words="what the use wants">
          <rect className="finding-use" y="4" width="20" height="12" />
        </LegendItem>
      )}
      {hasMoves && (
        <LegendItem words="moved to a place">
          <path className="finding-move" d="M10 0v20" />
        </LegendItem>
      )}
    </ChartLegend>
  );
}
