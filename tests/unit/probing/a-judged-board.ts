/** Facts of boards to be judged, made directly as data: random ones that could all be, and one to vary by hand. */
import type { Found } from '../../../shared-core/probing/calls/call-here.ts';
import type { JudgedPlace, JudgementFacts } from '../../../shared-core/probing/calls/judgement.ts';
import { DAY_MS } from '../../../shared-core/time.ts';
import { type Message, message } from '../../../shared-core/words/message.ts';
import type { Random } from '../../faults/random.ts';

export const nowMs = Date.UTC(2026, 8, 20, 12);
export const inDays = (days: number): number => nowMs + days * DAY_MS;
export const onDay = (days: number): string => new Date(inDays(days)).toISOString();
export const dayOf = (instant: string): string => instant.slice(0, 10);
export const around = (median: number) => ({ low: median - 1, median, high: median + 1 });

type Ahead = NonNullable<JudgementFacts['forecast']>;
type Reach = Ahead['places'][number]['reach'];

/** When it gets there: the early, the likely and the late day, each null for never. */
export const reach = (early: number | null, likely: number | null, late: number | null): Reach => ({
  earlyMs: early === null ? null : inDays(early),
  likelyMs: likely === null ? null : inDays(likely),
  lateMs: late === null ? null : inDays(late),
});

export const place = (
  placeId: number,
  name: string,
  kind: JudgedPlace['kind'],
  emcPct: number | null,
  month: number | null = 5,
): JudgedPlace => ({
  placeId,
  name,
  kind,
  lowestEmc: emcPct === null ? null : { placeName: name, emcPct, month, isByReadings: false, isRough: false },
});

export const found = (call: Found['call'], averagePct: number, more: Partial<Found> = {}): Found => ({
  call,
  reasons: [message('call.too-wet', { averagePct, targetRange: { minPct: 6, maxPct: 8 } })],
  at: onDay(-30),
  averagePct,
  averageIs: 'read',
  corePct: averagePct + 1,
  isQuestionable: false,
  spotsRead: null,
  ...more,
});

export function ahead(
  averagePct: number,
  reaches: readonly Reach[],
  more: Partial<Omit<Ahead, 'now' | 'places'>> & {
    probabilityReady?: number;
    corePct?: number;
    /** Of each place, its average in 200 days. */
    endsPct?: readonly number[];
  } = {},
): Ahead {
  const atMs = [0, 100, 200].map(inDays);
  const bandTo = (endPct: number | undefined) => {
    const average = (
      endPct === undefined
        ? [averagePct, averagePct - 1, averagePct - 1.2]
        : [averagePct, (averagePct + endPct) / 2, endPct]
    ).map(around);
    const medians = average.map(({ median }) => median);
    return { atMs, average, shellPct: medians, corePct: medians };
  };
  return {
    now: {
      average: around(averagePct),
      core: around(more.corePct ?? averagePct + 1),
      probabilityReady: more.probabilityReady ?? 0,
    },
    places: reaches.map((each, index) => {
      const endPct = more.endsPct?.[index];
      const fromMs = each.likelyMs ?? each.earlyMs ?? inDays(100);
      return {
        reach: each,
        best: { fromMs, toMs: fromMs + 60 * DAY_MS, averagePct: endPct ?? averagePct - 1.2 },
        band: bandTo(endPct),
      };
    }),
    nextProbe: more.nextProbe ?? { atMs: inDays(40), why: message('forecast.probe.not-sooner') },
  };
}

/** A board in a damp shed, with a room that could take it. */
export const facts = (more: Partial<JudgementFacts> = {}): JudgementFacts => ({
  found: found('keep-drying', 14.9),
  target: { minPct: 6, maxPct: 8 },
  mayCheck: true,
  places: [place(1, 'Pole shed', 'open-shed', 11.2), place(2, 'Bench room', 'heated-room', 6.5, null)],
  forecast: null,
  whyNot: null,
  nowMs,
  dayOf,
  ...more,
});

const targets = [
  { minPct: 6, maxPct: 8 },
  { minPct: 8, maxPct: 13 },
  { minPct: 12, maxPct: 15 },
  { minPct: 12, maxPct: 19 },
  { minPct: 0, maxPct: 20 },
];
const kinds = ['outdoors', 'open-shed', 'shop', 'heated-room'] as const;

/** A board as it could be: its call goes with its average, its forecast with both, and its dates with its places. */
export function randomFacts(random: Random): JudgementFacts {
  const between = (low: number, high: number): number => low + (high - low) * random();
  const one = <T>(of: readonly T[]): T => of[Math.floor(random() * of.length)] as T;
  const chance = (share: number): boolean => random() < share;
  const target = one(targets);
  const places = Array.from({ length: 1 + Math.floor(random() * 5) }, (_, index) =>
    place(
      index + 1,
      `Place ${index + 1}`,
      one(kinds),
      chance(0.05) ? null : between(4, 18),
      chance(0.2) ? null : 1 + Math.floor(random() * 12),
    ),
  ) as [JudgedPlace, ...JudgedPlace[]];
  const averagePct = chance(0.5)
    ? between(Math.max(4, target.minPct - 3), target.maxPct + 4)
    : between(5, 60);
  const made = randomFound(averagePct, target);
  const hasForecast = chance(0.75);
  return {
    found: chance(0.1) ? null : made,
    target,
    mayCheck: chance(0.8),
    places,
    forecast: hasForecast ? randomAhead(averagePct) : null,
    whyNot: !hasForecast && chance(0.5) ? message('forecast.none.no-fit') : null,
    nowMs,
    dayOf,
  };

  function randomFound(averagePct: number, targetRange: typeof target): Found {
    const likelyInterval = { minPct: averagePct - 1, maxPct: averagePct + 1 };
    const isDryEnough = averagePct <= targetRange.maxPct;
    const core = averagePct + between(-1, averagePct / 3);
    const of = (call: Found['call'], ...reasons: [Message, ...Message[]]): Found => ({
      call,
      reasons,
      at: new Date(nowMs - between(0, chance(0.2) ? 800 : 200) * DAY_MS).toISOString(),
      averagePct,
      averageIs: 'read',
      corePct: chance(0.8) ? core : null,
      isQuestionable: false,
      spotsRead: null,
    });
    if (chance(0.1))
      return { ...of('probe-again', message('call.all-questionable', { averagePct })), isQuestionable: true };
    if (chance(0.1)) return of('probe-again', message('call.likely', { likelyInterval }));
    if (chance(0.1)) {
      const spotsRead = { read: 1, planned: 4 };
      return { ...of(null, message('call.half-read', spotsRead)), spotsRead };
    }
    if (!isDryEnough)
      return chance(0.7)
        ? of('keep-drying', message('call.too-wet', { averagePct, targetRange }))
        : of(
            'keep-drying',
            message('call.probably-too-wet', { averagePct, targetRange }),
            message('call.more-will-not-help'),
          );
    if (averagePct < targetRange.minPct && chance(0.5))
      return of('too-dry', message('call.below-target', { averagePct, targetRange }));
    return chance(0.3)
      ? of('keep-drying', message('call.average-in-target', { averagePct, targetRange }))
      : of('ready', message('call.within-target', { averagePct, targetRange, likelyInterval }));
  }

  function randomAhead(readPct: number): Ahead {
    const today = Math.max(4, readPct - between(-0.5, chance(0.5) ? 1 : 5));
    const short = Math.max(today - target.maxPct, target.minPct - today);
    const probabilityReady = 1 / (1 + Math.exp(3 * short + between(-1, 1)));
    const reaches = places.map(({ lowestEmc }) => {
      const emcPct = lowestEmc?.emcPct ?? 10;
      // Air at the edge of the target may do it or not, whatever its lowest month is shown to be.
      const isDry = emcPct + between(-0.7, 0.7) <= target.maxPct;
      const likely = isDry && chance(0.9) ? Math.floor(between(0, 500)) : null;
      const early =
        likely === null ? (chance(0.3) ? Math.floor(between(0, 600)) : null) : Math.floor(likely * random());
      const late = likely === null || chance(0.2) ? null : likely + Math.floor(between(0, 200));
      return reach(early, likely, late);
    });
    return {
      ...ahead(today, reaches, {
        probabilityReady,
        endsPct: places.map(({ lowestEmc }) => (lowestEmc?.emcPct ?? 10) + between(0, 3)),
      }),
      nextProbe: probeAt(probabilityReady, reaches[0]!),
    };
  }

  function probeAt(probabilityReady: number, { earlyMs }: Reach): Ahead['nextProbe'] {
    const at = (
      atMs: number | null,
      code: 'known-ready' | 'check-ready' | 'decides' | 'undecided' | 'never' | 'learns-rate' | 'not-sooner',
    ) => ({
      atMs,
      why: message(`forecast.probe.${code}`),
    });
    if (probabilityReady >= 0.9) return chance(0.5) ? at(null, 'known-ready') : at(nowMs, 'check-ready');
    if (probabilityReady >= 0.1)
      return chance(0.5) ? at(nowMs, 'decides') : at(inDays(between(1, 7)), 'undecided');
    if (earlyMs === null) return at(null, 'never');
    return chance(0.3)
      ? at(inDays(between(0, 30)), 'learns-rate')
      : at(Math.max(earlyMs, nowMs), 'not-sooner');
  }
}
