import type { BoardForecast, ForecastDetails } from '../../../../shared-core/contract/forecast.ts';
import type { LatestFinding } from '../../../../shared-core/contract/yard.ts';
import { type JudgedPlace, judge } from '../../../../shared-core/probing/calls/judgement.ts';
import { DAY_MS } from '../../../../shared-core/time.ts';
import { forecastBoard } from '../../../../shared-core/wood/drying/forecast.ts';
import { warpOf } from '../../../../shared-core/wood/movement/warp.ts';
import type { Message } from '../../../../shared-core/words/message.ts';
import { worked } from '../../worked.ts';
import { aFinding } from '../stacks/a-yard.ts';

const sawnMs = Date.UTC(2026, 2, 10, 12);
export const nowMs = Date.UTC(2026, 8, 20, 12);
const steady = (tempC: number, rh: number) => Array.from({ length: 12 }, () => ({ tempC, rh }));

const poleShed = { placeId: 1, name: 'Pole shed', kind: 'open-shed' } as const;
const benchRoom = { placeId: 2, name: 'Bench room', kind: 'heated-room' } as const;

/** A 27 mm board of an invented yard, probed once, in a damp shed: forecast by the core itself, there and in a room. */
export function aForecast(more: Partial<ForecastDetails> = {}): ForecastDetails {
  const readMs = sawnMs + 150 * DAY_MS;
  const readings = (['shell', 'core'] as const).flatMap((depth) =>
    [0, 0.3].map((more) => ({
      atMs: readMs,
      depth,
      depthFraction: depth === 'shell' ? 0.1 : 0.5,
      mcPct: (depth === 'shell' ? 15 : 17) + more,
      standardUncertaintyPct: 0.8,
    })),
  );
  const endUse = { name: 'Furniture', minPct: 6, maxPct: 8, maxShellCorePct: 2 };
  const { information: _, ...forecast } = worked(
    forecastBoard({
      nowMs,
      board: {
        thicknessMm: 27,
        basicSpecificGravity: 0.51,
        start: { atMs: sawnMs, mcPct: null, logSd: 0.3, shellRatio: 1 },
        stays: [{ fromMs: sawnMs, air: steady(16, 0.72) }],
      },
      readings: readings.map(({ depth: _depth, ...reading }) => reading),
      siblings: [],
      endUse,
      placeId: 1,
      elsewhere: [{ placeId: 2, air: steady(20, 0.36) }],
      horizonDays: 365,
    }),
  );
  const places: ForecastDetails['places'] = [
    { ...poleShed, lowestEmcPct: 13.4, lowestEmcMonth: null, ready: null },
    { ...benchRoom, lowestEmcPct: 7, lowestEmcMonth: null, ready: null },
  ];
  const details: ForecastDetails = {
    forecast,
    nowMs,
    endUse,
    thicknessMm: 27,
    stays: [{ fromMs: sawnMs, placeName: 'Pole shed' }],
    places,
    emcNowPct: 13.4,
    readings,
    learnedFrom: 2,
    isByQuestionable: false,
    assumptions: [],
    warp: warpOf({
      thicknessMm: 27,
      widthMm: 210,
      sawing: 'flat',
      ringRadiusMm: null,
      barkFace: null,
      isBarkOn: false,
      radialPct: 5.5,
      tangentialPct: 7.8,
      profilePct: forecast.now.profile.map(({ pct }) => pct.median),
      atPins: {
        faceAPct: forecast.now.faceAPct,
        faceBPct: forecast.now.faceBPct,
        shellPct: forecast.now.shell.median,
        corePct: forecast.now.core.median,
      },
      targetPct: 7,
      maxShellCorePct: 2,
    }),
    whyNoWarp: null,
    ...more,
  };
  return answerOf(details).details!;
}

/** What the machine answers for a board that was found so, with this forecast. */
export function answerOf(
  details: ForecastDetails | null,
  { found = aFinding(), whyNot = null }: { found?: LatestFinding | null; whyNot?: Message | null } = {},
): BoardForecast {
  const judgement = judge({
    found: found && { ...found, reasons: [found.reason] },
    target: { minPct: 6, maxPct: 8 },
    mayCheck: true,
    places: (details?.places ?? [{ ...poleShed, lowestEmcPct: 7.5, lowestEmcMonth: null }]).map(
      ({ placeId, name, kind, lowestEmcPct: emcPct, lowestEmcMonth: month }) => ({
        placeId,
        name,
        kind,
        lowestEmc: { placeName: name, emcPct, month, isByReadings: false, isRough: false },
      }),
    ) as [JudgedPlace, ...JudgedPlace[]],
    forecast: details?.forecast ?? null,
    whyNot,
    nowMs,
    dayOf: (instant) => instant.slice(0, 10),
  });
  const places = details?.places.map((place, at) => ({ ...place, ready: judgement.places[at]!.ready }));
  return { details: details && places ? { ...details, places } : null, whyNot, judgement };
}
