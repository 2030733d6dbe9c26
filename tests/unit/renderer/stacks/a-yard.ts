import type { BoardRow, LatestFinding, StackOnPage } from '../../../../shared-core/contract/yard.ts';
import { type Judgement, judgeByFinding } from '../../../../shared-core/probing/calls/judgement.ts';
import type { Ready } from '../../../../shared-core/probing/calls/ready-in.ts';
import { DAY_MS } from '../../../../shared-core/time.ts';
import { message } from '../../../../shared-core/words/message.ts';

/** Pieces of an invented yard, for tests of the screens. */

export const aStack = (more: Partial<StackOnPage> = {}): StackOnPage => ({
  id: 1,
  version: 1,
  name: 'Ridge oak',
  placeId: 1,
  placeName: 'Pole shed',
  endUseId: 'furniture',
  endUseName: 'Furniture',
  topCover: 'covered',
  note: '',
  targetRange: { minPct: 6, maxPct: 8 },
  boards: 6,
  elsewhere: { boards: 0, ready: 0, places: [] },
  averagePct: 14.9,
  averaged: 4,
  averageRead: null,
  withoutPlace: 0,
  shouldBeReady: 0,
  isForecasting: false,
  nextReady: null,
  withDay: 6,
  lastReady: null,
  call: {
    call: 'keep-drying',
    reasons: [message('stack-call.some.keep-drying', { boards: 3, probed: 4 })],
  },
  due: null,
  probed: 4,
  halfProbed: 0,
  calls: { ready: 1, 'bring-in': 0, 'keep-drying': 3, 'too-dry': 0, 'probe-again': 0 },
  lastProbedAt: new Date(Date.now() - 3 * DAY_MS).toISOString(),
  nextProbe: { forecastMs: null, oldestReadAt: null, oldestCode: null },
  openRoundId: null,
  lastRoundId: null,
  closed: null,
  closedAt: null,
  speciesNames: ['Northern red oak'],
  ...more,
});

export const aFinding = (more: Partial<LatestFinding> = {}): LatestFinding => ({
  roundId: 7,
  at: new Date(2026, 7, 22, 12).toISOString(),
  averagePct: 14.9,
  averageIs: 'read' as const,
  lowPct: 13.7,
  highPct: 16.1,
  shellPct: 14.1,
  corePct: 15.8,
  isQuestionable: false,
  spotsRead: null,
  call: 'keep-drying',
  reason: message('call.too-wet', { averagePct: 14.9, targetRange: { minPct: 6, maxPct: 8 } }),
  ...more,
});

export const aBoardRow = (number: number, more: Partial<BoardRow> = {}): BoardRow => ({
  id: number,
  version: 1,
  code: `OAK-${String(number).padStart(2, '0')}`,
  stackId: 1,
  stackName: 'Ridge oak',
  speciesId: 'oak-northern-red',
  speciesName: 'Northern red oak',
  thicknessMm: 27,
  thicknessQuarters: null,
  widthMm: null,
  lengthMm: 2400,
  sawnOn: null,
  driedBy: 'air',
  sawing: 'unknown',
  ringRadiusMm: null,
  barkSide: 'unknown',
  barkOffOn: null,
  log: '',
  layer: null,
  column: null,
  note: '',
  placeId: 1,
  placeName: 'Pole shed',
  placeSince: new Date(2026, 2, 3, 12).toISOString(),
  isElsewhere: false,
  latest: null,
  outlook: null,
  judgement: judgeByFinding(more.latest ?? null),
  bestPlaceName: null,
  archived: null,
  ...more,
});

/** Of a board that is ready so where it is and, moved, in place 2. */
export const judgedReady = (here: Ready, elsewhere: Ready | null = null): Judgement => ({
  ...judgeByFinding(aFinding()),
  places: [
    { placeId: 1, ready: here },
    { placeId: 2, ready: elsewhere },
  ],
  bestPlaceId: elsewhere && 2,
});
