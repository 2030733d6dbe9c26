import { Refusal } from '../../../shared-core/contract/answer.ts';
import type { ProbedBoard } from '../../../shared-core/contract/round.ts';
import { isAlongUnknown, isDepthUnknown } from '../../../shared-core/probing/readings/depth-read.ts';
import { isSlip } from '../../../shared-core/probing/readings/exclusion.ts';
import type { Reading } from '../../../shared-core/probing/readings/reading.ts';
import {
  extraSpots,
  isReadAt,
  type PlannedSpot,
  planSpots,
  spotAt,
  spotName,
} from '../../../shared-core/probing/readings/spots.ts';
import { message } from '../../../shared-core/words/message.ts';
import type { ReadingOwnerRow } from '../../store/reading-table.ts';
import { type AppContext, orRefuse, type QueryContext } from '../context.ts';
import { endOfDay } from '../forecast/end-of-day.ts';
import type { Commands, Queries } from '../handlers.ts';
import { leftOf, startOfDay } from '../stock/board-days.ts';
import type { Insertion } from './insertion.ts';
import { checkIsHere } from './moved-away.ts';
import type { MovingReadings } from './moving-readings.ts';
import type { RoundView } from './round-view.ts';

type Spotted = Pick<Reading, 'spotIndex' | 'spot'>;

/** The number of a reading's spot where another board has that spot too; null where it has none such. */
function keptSpot(board: ProbedBoard, { spotIndex, spot }: Spotted): number | null {
  if (spotIndex === null) return null;
  return isReadAt(spotAt(board, spotIndex), spot) ? spotIndex : null;
}

const allSpots = (board: ProbedBoard): [index: number, planned: PlannedSpot][] => [
  ...planSpots(board).plan.entries(),
  ...extraSpots(board),
];

/**
 * A board's spot for a reading: the same one, else the first of its depth, else one beyond its plan. One of unknown depth is
 * no less at the first than at any other.
 */
function likestSpot(board: ProbedBoard, reading: Spotted): number | null {
  const same = allSpots(board).find(([, planned]) => isReadAt(planned, reading.spot));
  return keptSpot(board, reading) ?? same?.[0] ?? (isDepthUnknown(reading) ? 0 : null);
}

/** Readings of a round under whichever record of a board, but for slips. */
function readOn({ yard }: QueryContext, boardId: number, roundId: number): Reading[] {
  const { origins, readings } = yard();
  return origins
    .records(origins.kept(boardId))
    .flatMap((record) => readings.takenOn(record, roundId))
    .filter(({ excluded, isDamaged }) => !isSlip(excluded) && !isDamaged);
}

export const movingToBoardQueries = (context: QueryContext, view: RoundView) =>
  ({
    'readings.onBoard': ({ readingId, boardId }) => {
      const reading = orRefuse(context.yard().readings.get(readingId), 'reading');
      const board = view.board(reading.roundId, boardId);
      return {
        // Where it was is asked of nobody who did not know it before.
        keptSpot: isAlongUnknown(reading) ? likestSpot(board, reading) : keptSpot(board, reading),
        spots: allSpots(board).map(([spotIndex, planned]) => ({ spotIndex, name: spotName(planned) })),
        own: readOn(context, reading.boardId, reading.roundId).length,
        others: readOn(context, boardId, reading.roundId).length,
      };
    },
  }) satisfies Partial<Queries>;

/** Moves readings that were saved for the wrong board, as on the wrong line of a page, to the board that was probed. */
export function movingToBoardCommands(
  context: AppContext,
  view: RoundView,
  moving: MovingReadings,
  insertion: Insertion,
) {
  /**
   * @param isThereThen  a person said that the board was at its first place by then
   * @throws Refusal where the board cannot have been probed then; a question where nobody knows that it was there
   */
  function checkThere(boardId: number, { takenAt, roundId }: Reading, isThereThen: boolean): void {
    const { boards, moves, origins } = context.yard();
    const board = orRefuse(boards.get(boardId), 'board');
    const { code: boardCode, sawnOn } = board;
    const left = leftOf(board);
    if (sawnOn !== null && startOfDay(sawnOn) > Date.parse(takenAt))
      throw new Refusal(message('refusal.reading-before-sawn', { boardCode, sawnOn }));
    if (left !== null && Date.parse(endOfDay(left.at)) < Date.parse(takenAt))
      throw new Refusal(message('refusal.reading-after-left', { boardCode, leftOn: left.at }));
    const cut = origins.cutFrom(boardId);
    if (cut && Date.parse(cut.at) > Date.parse(takenAt))
      throw new Refusal(
        message('refusal.reading-before-cut', { boardCode, otherCode: cut.code, cutOn: cut.at }),
      );
    const [first] = moves.ofBoard(boardId);
    if (first === undefined || Date.parse(first.since) <= Date.parse(takenAt)) return;
    // One that the round read was there, too.
    if (readOn(context, boardId, roundId).length > 0) return;
    if (!isThereThen)
      throw new Refusal(
        message('refusal.reading-before-place', {
          boardCode,
          placeName: first.placeName,
          movedOn: first.since,
        }),
      );
    moves.beganOn(boardId, takenAt);
  }

  /** @returns the reading on the other board */
  function move(
    reading: Reading,
    board: ProbedBoard,
    { asked = null, isThereThen }: { asked?: number | null; isThereThen: boolean },
  ): ReadingOwnerRow {
    const { readings, amendments, pictures } = context.yard();
    const { roundId } = reading;
    const { boardId } = board;
    checkThere(boardId, reading, isThereThen);
    const spotIndex = asked ?? likestSpot(board, reading);
    const planned = spotIndex === null ? undefined : orRefuse(spotAt(board, spotIndex), 'spot');
    // How deep it was is known of the reading, or of nobody; only a plan's depth is that of the other board.
    const isDepthOwn = reading.depthFrom !== 'plan' || isDepthUnknown(reading);
    const spot = {
      ...(planned?.spot ?? { ...reading.spot, fromEndMm: null }),
      ...(isDepthOwn && { depthMm: reading.spot.depthMm }),
      ...(asked === null && isAlongUnknown(reading) && { isAlongUnknown: true as const }),
    };
    const at = context.now();
    const { id, uuid, fromUuid } = readings.saveOn(reading, { boardId, spotIndex, spot });
    amendments.amendReading(id, 'movedFrom', fromUuid, at);
    // Longer pins than those of the meter's profile were chosen to reach it.
    if (planned?.by === 'long-pins' && reading.depthFrom !== 'person' && spot.depthMm !== null)
      amendments.amendReading(id, 'depthMm', spot.depthMm, at);
    amendments.exclude('reading', reading.id, { code: 'moved', to: uuid }, at);
    pictures.moveToReading(reading.id, id);
    return { id, boardId, roundId };
  }

  /** A board that is read for the first time in a round keeps the plan that it has. */
  function boardIn(roundId: number, boardId: number): ProbedBoard {
    const board = view.board(roundId, boardId);
    const { planBasis, isRead } = board;
    const givenAt = context.now();
    if (!isRead) context.yard().spotPlans.give({ roundId, boardId, basis: planBasis, givenAt });
    return board;
  }

  return {
    *'readings.moveToBoard'({ readingId, boardId, spotIndex, scope, isThereThen }) {
      const { boards, origins, readings } = context.yard();
      const reading = orRefuse(readings.get(readingId), 'reading');
      const { roundId, boardId: ownId } = reading;
      if (reading.isDamaged) throw new Refusal(message('refusal.reading-damaged'));
      checkIsHere(context, reading);
      if (isSlip(reading.excluded)) orRefuse(undefined, 'reading');
      const { code: boardCode } = orRefuse(boards.get(boardId), 'board');
      if (origins.kept(boardId) === origins.kept(ownId))
        throw new Refusal(message('refusal.reading-there-already', { boardCode }));
      const there = boardIn(roundId, boardId);
      const own = scope === 'reading' ? [reading] : readOn(context, ownId, roundId);
      const others = scope === 'swap' ? readOn(context, boardId, roundId) : [];
      const here = others.length > 0 ? boardIn(roundId, ownId) : null;
      const asked = scope === 'reading' ? spotIndex : null;
      const moved: ReadingOwnerRow[] = [];
      // In turns, so that the first of an act's changes tell that both boards had readings.
      for (let index = 0; index < Math.max(own.length, others.length); index++) {
        const [one, other] = [own[index], others[index]];
        if (one) moved.push(one, move(one, there, { asked, isThereThen }));
        if (other && here) moved.push(other, move(other, here, { isThereThen }));
      }
      const ids = [...own, ...others].map(({ id }) => id);
      context.afterwards(() => ids.forEach(insertion.free));
      const { readings: _, ...done } = yield* moving.amended(moved, () => undefined);
      return { ...done, readings: ids.length };
    },
  } satisfies Partial<Commands>;
}
