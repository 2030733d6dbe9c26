import type { OwnFit } from '../../../shared-core/contract/oven-checks.ts';
import { mcAxis, numberAxis } from '../../../shared-core/drawing/chart/axes.ts';
import type { PointValue } from '../../../shared-core/drawing/chart/description.ts';
import { niceTicks } from '../../../shared-core/drawing/chart/scale.ts';
import type { Words } from '../../../shared-core/words/words.ts';
import { Chart } from '../../chart/Chart.tsx';
import { useWords } from '../../words.ts';

/** The meter's readings of the pieces against their oven-dry MC, with the line through them and the published one. */
export function CalibrationChart({ own, speciesName }: { own: OwnFit; speciesName: string }) {
  const words = useWords();
  const { say, formats } = words;
  const { fit, published } = own;
  if (!fit) return null;
  const pieces = piecesOf(own, words);
  const readings = pieces.map(({ x }) => x);
  const around = niceTicks(Math.min(...readings) - 0.5, Math.max(...readings) + 0.5, 6);
  const [from, to] = [around[0]!, around.at(-1)!];
  return (
    <Chart
      title={say('oven.chart', { speciesName })}
      summary={summaryOf(fit, words)}
      x={numberAxis(say('oven.axis-reading'), from, to, formats.mc, formats.percent)}
      y={mcAxis(say('oven.oven-dry'), words, { startsAtZero: false })}
      layers={[
        {
          kind: 'points',
          name: say('oven.oven-dry'),
          wordsName: say('oven.piece'),
          color: 'ink',
          shape: 'ring',
          values: pieces,
        },
        {
          kind: 'line',
          name: say('oven.your-line'),
          color: 'accent',
          stroke: 'solid',
          values: [from, to].map((readingPct) => ({ x: readingPct, y: (readingPct - fit.b) / fit.a })),
        },
        {
          kind: 'line',
          name: say('oven.without-checks'),
          color: 'line-strong',
          stroke: 'dashed',
          values: published.map(({ readingPct, mcPct }) => ({ x: readingPct, y: mcPct })),
        },
      ]}
    />
  );
}

/** Each piece by its reading, with its MC without the checks and how far the fit without it is off. */
function piecesOf({ fit, checks }: OwnFit, { say, formats }: Words): PointValue[] {
  return (fit?.leftOut ?? []).flatMap(({ checkId, errorPct }): PointValue[] => {
    const check = checks.find((each) => each.id === checkId);
    if (check?.readingPct == null || check.ovenDryMcPct === null) return [];
    const { piece, readingPct, ovenDryMcPct, publishedMcPct } = check;
    return [
      {
        x: readingPct,
        y: ovenDryMcPct,
        word: piece,
        isName: true,
        more: {
          [say('oven.without-checks')]: publishedMcPct === null ? '–' : formats.mc(publishedMcPct),
          [say('oven.left-out')]: formats.signedPoints(errorPct),
        },
      },
    ];
  });
}

/** The line, and how far off it is with and without the checks. */
function summaryOf(fit: NonNullable<OwnFit['fit']>, { say, formats }: Words): string {
  // MC = (reading - b) / a
  const term = { sign: fit.b < 0 ? 'plus' : 'minus', offset: Math.abs(fit.b) };
  const sentences =
    fit.model === 'line'
      ? [say('oven.line', { ...term, slope: formats.number(fit.a, 3) })]
      : [say('oven.offset', term), say('oven.no-slope')];
  sentences.push(say('oven.error', { errorPoints: fit.standardErrorPct }));
  if (fit.publishedErrorPct !== null) {
    sentences.push(say('oven.error-published', { errorPoints: fit.publishedErrorPct }));
  }
  return sentences.join(' ');
}
