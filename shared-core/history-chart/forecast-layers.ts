import type { ForecastDetails } from '../contract/forecast.ts';
import type { Layer, Value } from '../drawing/chart/description.ts';
import { likelyInterval } from '../probing/readings/likely-interval.ts';
import type { Depth } from '../probing/readings/reading.ts';
import type { Words } from '../words/words.ts';
import { readyWords } from './ready-words.ts';

/** Today, the likely past, the likely time ahead in one of the places, when it is ready there, and its lowest EMC. */
export function forecastLayers(details: ForecastDetails, index: number, words: Words): Layer[] {
  const { say } = words;
  const { forecast, places, nowMs } = details;
  const place = forecast.places[index]!;
  const { name: placeName, lowestEmcPct } = places[index]!;
  const { earlyMs, likelyMs, lateMs } = place.reach;
  const text = readyWords(places[index]!, words);
  const kind = places[index]!.ready?.kind;
  // None where it is unlikely: the curve stays out of the target.
  const isDated = kind === 'likely' || kind === 'any-day';
  const bands = [forecast.past, place.band];
  const curve = (of: 'shellPct' | 'corePct'): Value[] =>
    bands.flatMap((band) => band.atMs.map((x, at) => ({ x, y: band[of][at]! })));
  const average = bands.flatMap(({ atMs, average }) =>
    atMs.map((x, at): Value => {
      const { median, low, high } = average[at]!;
      return { x, y: median, low, high };
    }),
  );
  const ready: Layer[] =
    earlyMs === null || text === null || !isDated
      ? []
      : [
          {
            kind: 'interval',
            name: say('forecast.ready'),
            color: 'ready',
            from: earlyMs,
            to: lateMs,
            likely: likelyMs,
            text,
          },
        ];
  return [
    {
      kind: 'marks',
      name: null,
      color: 'ink',
      stroke: 'solid',
      values: [
        {
          x: nowMs,
          word: index === 0 ? say('forecast.today') : say('history.today-moved', { placeName }),
        },
      ],
    },
    {
      kind: 'line',
      name: say('history.forecast-average'),
      color: 'accent',
      stroke: 'solid',
      values: average,
    },
    {
      kind: 'line',
      name: say('history.forecast-shell'),
      color: 'keep-drying',
      stroke: 'dashed',
      values: curve('shellPct'),
    },
    {
      kind: 'line',
      name: say('history.forecast-core'),
      color: 'bring-in',
      stroke: 'dotted',
      values: curve('corePct'),
    },
    ...ready,
    {
      kind: 'level',
      name: say('forecast.driest-month'),
      color: 'ink-soft',
      y: lowestEmcPct,
      from: nowMs,
      word: say('forecast.lowest-emc', { emcPct: lowestEmcPct }),
    },
  ];
}

/** What each round read at a depth, or at depths that nobody knows, as the forecast uses it. */
export const readingsOf = ({ forecast, readings }: ForecastDetails, depth: Depth | 'unknown'): Value[] =>
  forecast.residuals
    .filter(({ atMs, depthFraction }) =>
      readings.some(
        (each) =>
          (each.isDepthUnknown ? 'unknown' : each.depth) === depth &&
          each.atMs === atMs &&
          each.depthFraction === depthFraction,
      ),
    )
    .map(({ atMs, measuredPct, sdPct }) => {
      const { minPct, maxPct } = likelyInterval(measuredPct, sdPct);
      return { x: atMs, y: measuredPct, low: minPct, high: maxPct };
    });
