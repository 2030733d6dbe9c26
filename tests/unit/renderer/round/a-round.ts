import type { ProbedBoard, RoundState } from '../../../../shared-core/contract/round.ts';
import type { Call } from '../../../../shared-core/probing/calls/assessment.ts';
import { openSpot, readingsBySpot } from '../../../../shared-core/probing/readings/open-spot.ts';
import { PAIRS } from '../../../../shared-core/probing/readings/plan-basis.ts';
import type { JudgedReading } from '../../../../shared-core/probing/readings/reading.ts';
import { message } from '../../../../shared-core/words/message.ts';

/** A round of our own invention on three boards of walnut, begun and nothing read. The first board is aimed at. */
export function aRound(boards: ProbedBoard[] = [aBoard(1), aBoard(2), aBoard(3)]): RoundState {
  return {
    id: 12,
    version: 1,
    stackId: 4,
    stackName: 'Walnut from the lane',
    placeName: 'Open shed',
    placeId: 5,
    endUseName: 'Indoor furniture',
    usualCoreWay: null,
    startedAt: '2026-05-04T08:00:00.000Z',
    isDated: false,
    finishedAt: null,
    woodTempC: 14,
    lastMeterId: null,
    boards: boards.map(({ assessment: _, lastRound: __, ...row }) => row),
    aim: { boardId: boards[0]?.boardId ?? 0, spotIndex: 0 },
    probed: boards[0] ?? null,
    summary: {
      boards: boards.length,
      probed: boards.filter((board) => board.isRead).length,
      calls: { ready: 0, 'bring-in': 0, 'keep-drying': 0, 'too-dry': 0, 'probe-again': 0 },
      message: message('round-summary.none-probed', { boards: boards.length }),
    },
    updating: 0,
  };
}

export function aBoard(number: number, changes: Partial<ProbedBoard> = {}): ProbedBoard {
  return {
    boardId: 100 + number,
    code: `WAL-0${number}`,
    speciesName: 'Black walnut',
    thicknessMm: 50,
    thicknessQuarters: null,
    lengthMm: 1800,
    planBasis: PAIRS,
    woodTempC: 14,
    ownTemp: false,
    isRead: false,
    isReadSince: false,
    finding: null,
    assessment: null,
    lastRound: null,
    ...changes,
  };
}

export function aReading(id: number, changes: Partial<JudgedReading> = {}): JudgedReading {
  return {
    id,
    roundId: 12,
    boardId: 101,
    spotIndex: 0,
    spot: {
      depth: (changes.spotIndex ?? 0) % 2 === 0 ? 'shell' : 'core',
      depthMm: 5,
      fromEndMm: 600,
      face: 'face',
    },
    depthFrom: 'pins',
    raw: 11.4,
    unit: 'pct',
    how: 'typed',
    settled: null,
    woodTempC: 14,
    meterId: null,
    meterProfileId: null,
    takenAt: '2026-05-04T08:01:00.000Z',
    excluded: null,
    corrected: {
      mcPct: 12.1,
      steps: [{ step: 'temperature', pct: 12.1 }],
      standardUncertaintyPct: 0.8,
      warnings: [],
    },
    suspicions: [],
    counts: true,
    ...changes,
  };
}

/** @param call  with open spots left there is none, unless those that are read decide it */
export function read(
  board: ProbedBoard,
  readings: JudgedReading[],
  call: Call | null = openSpot(board, readings) === null ? 'keep-drying' : null,
): ProbedBoard {
  const found = {
    averagePct: 12.6,
    averageIs: 'read' as const,
    shellPct: 12.1,
    corePct: 13.4,
    lowPct: 11.4,
    highPct: 13.8,
  };
  const estimate = {
    ...found,
    differencePct: 1.3,
    standardUncertaintyPct: 0.7,
    likelyInterval: { minPct: 11.4, maxPct: 13.8 },
    countedShell: 1,
    countedAverage: 0,
    inCore: 0,
    countedCore: 1,
  };
  const reason = message('call.too-wet', { averagePct: 12.6, targetRange: { minPct: 6, maxPct: 8 } });
  return {
    ...board,
    isRead: true,
    finding: {
      ...found,
      isQuestionable: false,
      spotsRead: null,
      roundId: 12,
      at: '2026-05-04T08:01:00.000Z',
      call,
      reason,
      openSpot: openSpot(board, readings),
      spotPcts: readingsBySpot(board, readings).map((reading) => reading?.corrected.mcPct ?? null),
      filledSpots: new Set(readings.filter(({ counts }) => counts).map(({ spotIndex }) => spotIndex)).size,
    },
    assessment: {
      readings,
      estimate,
      reliable: estimate,
      spotsRead: null,
      call,
      reasons: [reason],
    },
  };
}
