import type {
  BoardOfStack,
  BuyerList,
  BuyerSheet,
  Passport,
  StackList,
  StackReport,
} from '../../../shared-core/contract/report.ts';
import type { TallyAmounts } from '../../../shared-core/tally/tally.ts';
import { message } from '../../../shared-core/words/message.ts';
import { aForecast } from '../renderer/board/a-forecast.ts';
import { aReading } from '../renderer/round/a-round.ts';
import { aBoardRow, aFinding, aStack } from '../renderer/stacks/a-yard.ts';

/** Reports of an invented yard. */

const printedAt = '2026-09-20T17:05:00.000Z';
const endUse = { name: 'Furniture', minPct: 6, maxPct: 8, maxShellCorePct: 2, cautions: [] };
export const checkCode = 'OAK-07/B39E-0RK7-Y34F-1CDY';

export const aPassport = (more: Partial<Passport> = {}): Passport => {
  const board = aBoardRow(7, { latest: aFinding(), widthMm: 190, log: 'Ridge' });
  return {
    kind: 'passport',
    printedAt,
    checkCode,
    board,
    endUse,
    judgement: board.judgement,
    readings: [
      aReading(1),
      aReading(2, { spotIndex: 1, excluded: { code: 'defect' }, counts: false }),
      aReading(3, { raw: 1_250_000, unit: 'ohm' }),
    ],
    findings: [aFinding({ roundId: 6, averagePct: 21.4, lowPct: 19, highPct: 24 }), aFinding()],
    moves: [
      {
        id: 1,
        version: 1,
        boardId: 7,
        placeId: 1,
        placeName: 'Pole shed',
        since: '2026-03-10T12:00:00.000Z',
        datedBy: 'day',
      },
    ],
    forecast: aForecast(),
    readBefore: [],
    samples: {
      boardId: 7,
      cuts: [
        {
          id: 1,
          boardKg: 8.2,
          at: '2026-04-01T12:00:00.000Z',
          sections: [{ id: 1, wetGrams: 210.5, dryGrams: 140.25 }],
          excluded: null,
          estimate: { ovenDryKg: 5.4, mcWhenCutPct: 50.1, standardErrorPct: null },
        },
      ],
      weights: [{ id: 1, kg: 7.1, at: '2026-05-01T12:00:00.000Z', excluded: null, mcPct: 31.5 }],
      target: null,
      status: message('weights.mc-now', { mcPct: 31.5, mcWhenCutPct: 50.1 }),
    },
    ...more,
  };
};

export const aBuyerSheet = (more: Partial<BuyerSheet> = {}): BuyerSheet => {
  const { findings: _, moves: __, forecast: ___, samples: ____, readBefore: _____, ...shown } = aPassport();
  return { ...shown, kind: 'buyer', yardName: 'Ridge Sawmill', soldTo: '', priceText: '', ...more };
};

export const aBuyerList = (more: Partial<BuyerList> = {}): BuyerList => ({
  kind: 'buyer-list',
  printedAt,
  yardName: 'Ridge Sawmill',
  soldTo: '',
  priceText: '',
  stack: null,
  cautions: [],
  boards: boardsInLayers(6, 3).map((board) => ({ ...board, checkCode })),
  ...more,
});

const amounts: TallyAmounts = {
  boards: 6,
  measured: 6,
  boardFeet: 48,
  cubicMeters: 0.113,
  weighed: 4,
  nowKg: 61.2,
  targetKg: 57.3,
  notProbed: 2,
  withoutDensity: [],
};

/** So many boards in layers of so many columns. */
export const boardsInLayers = (count: number, columns: number): BoardOfStack[] =>
  Array.from({ length: count }, (_, index) => {
    const latest = index % 5 === 4 ? null : aFinding();
    return {
      ...aBoardRow(index + 1, { widthMm: 150 + (index % 90) }),
      layer: Math.floor(index / columns) + 1,
      column: (index % columns) + 1,
      latest,
      call: latest?.call ?? null,
    };
  });

export const aStackReport = (more: Partial<StackReport> = {}): StackReport => {
  const boards = more.boards ?? boardsInLayers(6, 3);
  return {
    kind: 'stack',
    printedAt,
    stack: aStack({ boards: boards.length }),
    endUse,
    boards,
    elsewhere: [],
    plan: null,
    tally: {
      rows: [
        {
          ...amounts,
          speciesName: 'Northern red oak',
          thickness: { thicknessMm: 27, quarters: null },
        },
      ],
      total: amounts,
    },
    ...more,
  };
};

export const aStackList = (more: Partial<StackList> = {}): StackList => {
  const boards = more.boards ?? boardsInLayers(6, 3).map((board) => ({ ...board, spots: fourSpots }));
  return { kind: 'list', printedAt, stack: aStack({ boards: boards.length }), boards, ...more };
};

const fourSpots: StackList['boards'][number]['spots'] = [600, 600, 1800, 1800].map((mm, index) => ({
  depth: index % 2 === 0 ? 'shell' : 'core',
  depthMm: index % 2 === 0 ? 3 : 13.5,
  along: message('spot.from-left', { fromDistanceMm: mm }),
}));
