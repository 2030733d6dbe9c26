import type { ForecastDetails } from '../contract/forecast.ts';
import type { LatestFinding } from '../contract/yard.ts';
import type { Layer } from '../drawing/chart/description.ts';
import { toldDepths } from '../probing/readings/told-depths.ts';
import { DAY_MS } from '../time.ts';
import type { EndUse } from '../wood/species/end-use.ts';
import type { Words } from '../words/words.ts';
import { forecastLayers, readingsOf } from './forecast-layers.ts';

/** What is known of a board over time. */
export interface History {
  /** What each round found, oldest first. */
  findings: readonly LatestFinding[];
  /** Where it was, oldest first. */
  stays: ForecastDetails['stays'];
  /** Null where it is not known. */
  endUse: Pick<EndUse, 'name' | 'minPct' | 'maxPct'> | null;
  /** Null where there is none. */
  forecast: ForecastDetails | null;
}

/**
 * All layers of a board's chart: its forecast in one of the places, what was read, its target, and its moves.
 * @param fromMs  where the chart begins
 */
export function historyLayers(
  { findings, stays, endUse, forecast }: History,
  index: number,
  fromMs: number,
  words: Words,
): Layer[] {
  const target = endUse && words.say('chart.target', { targetRange: endUse });
  return [
    ...(forecast ? forecastLayers(forecast, index, words) : []),
    ...readLayers(findings, forecast, words),
    ...(endUse
      ? [
          {
            kind: 'target' as const,
            name: target,
            color: 'ready' as const,
            low: endUse.minPct,
            high: endUse.maxPct,
          },
        ]
      : []),
    ...stayLayers(stays, fromMs, words),
  ];
}

/** What the rounds found: averages, and the shell and the core as the forecast has them, with their intervals. */
function readLayers(
  findings: readonly LatestFinding[],
  forecast: ForecastDetails | null,
  { say }: Words,
): Layer[] {
  const found = (of: 'averagePct' | 'shellPct' | 'corePct') =>
    findings.flatMap((finding) => {
      const { lowPct, highPct } = finding;
      const pct = { ...finding, ...toldDepths(finding) }[of];
      const interval =
        of === 'averagePct' && lowPct !== null && highPct !== null ? { low: lowPct, high: highPct } : {};
      const isRead = of !== 'averagePct' || finding.averageIs === 'read';
      return pct === null || !isRead ? [] : [{ x: Date.parse(finding.at), y: pct, ...interval }];
    });
  const depths = (['shell', 'core'] as const).map((depth): Layer => {
    const read = forecast ? readingsOf(forecast, depth) : [];
    return {
      kind: 'points',
      name: say(depth === 'shell' ? 'history.shell-read' : 'history.core-read'),
      color: depth === 'shell' ? 'keep-drying' : 'bring-in',
      shape: depth === 'shell' ? 'square' : 'triangle',
      values: read.length > 0 ? read : found(depth === 'shell' ? 'shellPct' : 'corePct'),
    };
  });
  const unknown = forecast ? readingsOf(forecast, 'unknown') : [];
  return [
    {
      kind: 'points',
      name: say('history.average-read'),
      color: 'ink',
      shape: 'disc',
      isJoined: forecast === null,
      values: found('averagePct'),
    },
    ...depths,
    ...(unknown.length === 0
      ? []
      : [
          {
            kind: 'points' as const,
            name: say('history.depth-unknown'),
            color: 'ink-soft' as const,
            shape: 'diamond' as const,
            values: unknown,
          },
        ]),
  ];
}

/**
 * Each move by the name of its place, the last of a day alone. A stay that began before what is shown is named at the
 * left edge.
 */
function stayLayers(stays: ForecastDetails['stays'], fromMs: number, { say }: Words): Layer[] {
  const rules = (name: string | null, shown: ForecastDetails['stays']): Layer => ({
    kind: 'marks',
    name,
    color: 'line-strong',
    stroke: 'dashed',
    values: shown.map((stay) => ({
      x: Math.max(fromMs, stay.fromMs),
      word: shortened(stay.placeName),
      isName: true,
    })),
  });
  const shown = stays.filter((_, at) => {
    const { fromMs: next } = stays[at + 1] ?? { fromMs: Number.POSITIVE_INFINITY };
    return next - Math.max(fromMs, stays[at]!.fromMs) >= DAY_MS;
  });
  const begun = shown.filter((stay) => stay.fromMs < fromMs);
  return [rules(null, begun.slice(-1)), rules(say('history.moved'), shown.slice(begun.length))];
}

const shortened = (name: string) => (name.length > 18 ? `${name.slice(0, 17)}…` : name);
