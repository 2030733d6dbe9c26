import { isDeepStrictEqual } from 'node:util';
import { Refusal } from '../../../shared-core/contract/answer.ts';
import { likeCodes } from '../../../shared-core/contract/board-code.ts';
import type { PastLine, PastPage, ThereSince } from '../../../shared-core/contract/requests/past-rounds.ts';
import { codeOf } from '../../../shared-core/import/board-id.ts';
import { reachesOtherFace } from '../../../shared-core/probing/readings/depth-read.ts';
import {
  type ColumnDepth,
  type PageSpot,
  pageSpots,
} from '../../../shared-core/probing/readings/page-spots.ts';
import type { Pins } from '../../../shared-core/probing/readings/pins.ts';
import type { Reading } from '../../../shared-core/probing/readings/reading.ts';
import { isoOf } from '../../../shared-core/time.ts';
import { type Message, message, thicknessOf } from '../../../shared-core/words/message.ts';
import { NO_RECORD, unitOf } from '../../store/meter-table.ts';
import { asDeepAs } from '../../store/reading-table.ts';
import type { YardReader } from '../../store/yard.ts';
import { type AppContext, orRefuse, type QueryContext } from '../context.ts';
import { endOfDay } from '../forecast/end-of-day.ts';
import type { Commands, Queries } from '../handlers.ts';
import { type Assessing, moveAt } from '../judging/assessing.ts';
import type { Comparing } from '../judging/comparing.ts';
import type { Judging } from '../judging/judging.ts';
import { inSlices, type Slices } from '../slices.ts';
import { leftOf, startOfDay } from '../stock/board-days.ts';
import { longBeforeStack } from './long-before-stack.ts';
import { instantOfPage, orderMoves } from './page-order.ts';
import { saveReading } from './save-reading.ts';

/** What was read in one column of a line. */
interface PageReading extends PageSpot {
  column: number;
  raw: number;
  isAbove: boolean;
}

function startOfLocalDay(instant: string): string {
  const start = new Date(instant);
  start.setHours(0, 0, 0, 0);
  return start.toISOString();
}

/** Whether a piece was cut on a later day than that of a page. */
const isCutAfter = ({ cutOn }: { cutOn: string }, at: string): boolean => cutOn > endOfDay(at);

function pinsOfMeter({ meters }: Pick<YardReader, 'meters'>, meterId: number | null): Pins | null {
  return meterId === null ? null : (meters.get(meterId)?.profile?.pins ?? null);
}

/** Null of none. */
function mostCommon(names: readonly string[]): string | null {
  const counts = new Map<string, number>();
  for (const name of names) counts.set(name, (counts.get(name) ?? 0) + 1);
  return [...counts].toSorted(([, one], [, other]) => other - one)[0]?.[0] ?? null;
}

const inOrder = (raws: readonly number[]): number[] => raws.toSorted((one, other) => one - other);

/** The values of a line with their spots, and the plan that these are of. */
function readingsOf(
  board: { thicknessMm: number; lengthMm: number | null },
  pins: Pins | null,
  { depths }: Pick<PastPage, 'depths'>,
  { raws, above }: PastLine,
) {
  const { planBasis, spots } = pageSpots(board, pins, depths);
  const readings = raws.flatMap((raw, column): PageReading[] => {
    const spot = spots[column];
    return raw === null || spot === undefined
      ? []
      : [{ ...spot, column, raw, isAbove: above.includes(column) }];
  });
  return { planBasis, readings };
}

/** The spot and how deep it was, as the file will have them. */
function whereRead(
  { planned: { spot } }: PageReading,
  depth: ColumnDepth,
  pins: Pins | null,
): Pick<Reading, 'spot' | 'depthFrom'> {
  if (depth === 'unknown') return { spot, depthFrom: 'plan' };
  if (depth !== 'pins') return { spot: { ...spot, depthMm: depth }, depthFrom: 'person' };
  const lengthMm = pins?.lengthMm ?? null;
  return { spot: asDeepAs(lengthMm, spot), depthFrom: lengthMm === null ? 'plan' : 'pins' };
}

/** @throws Refusal where the values were typed in another unit than that of the meter */
function checkUnit({ meters }: Pick<YardReader, 'meters'>, { meterId, unit }: PastPage): void {
  const meter = meterId === null ? NO_RECORD : orRefuse(meters.get(meterId), 'meter');
  if (unit !== unitOf(meter)) throw new Refusal(message('refusal.typed-other-unit', { unit }));
}

export function pastRoundQueries(context: QueryContext, assessing: Assessing) {
  type OnPage = ReturnType<YardReader['boards']['onPage']>[number];

  function remarksOn(
    { leftAt, why, came, sawnOn, cut, otherCodes, ...board }: OnPage,
    stackId: number,
    at: string,
    elsewhere: string | null,
  ): { isLater: boolean; remarks: Message[] } {
    if (cut !== null && isCutAfter(cut, at))
      return { isLater: true, remarks: [message('past-round.cut-later', cut)] };
    if (sawnOn !== null && startOfDay(sawnOn) > Date.parse(at))
      return { isLater: true, remarks: [message('past-round.sawn-later', { sawnOn })] };
    const remarks: Message[] = [];
    if (otherCodes.length > 0) remarks.push(message('past-round.entered-too', { otherCodes }));
    if (leftAt !== null) remarks.push(message('past-round.left', { why, leftOn: leftAt }));
    else if (came !== null)
      remarks.push(message('past-round.in-other-stack', { stackName: came.stackName, cameOn: came.cameAt }));
    else if (board.stackId !== stackId)
      remarks.push(message('past-round.of-other-stack', { stackName: board.stackName }));
    else if (elsewhere !== null) remarks.push(message('past-round.at-other-place', { placeName: elsewhere }));
    return { isLater: false, remarks };
  }

  /** Whether a board was there on the day of a page: sold ones the whole day, cut ones until the cut, pieces from that day on. */
  function wasThere({ leftAt, why, cut }: OnPage, at: string): boolean {
    if (cut !== null && isCutAfter(cut, at)) return false;
    const isCut = why === 'ripped' || why === 'crosscut';
    return leftAt === null || leftAt > at || (!isCut && leftAt >= startOfLocalDay(at));
  }

  return {
    'pastRounds.page': ({ stackId, startedAt, more }) => {
      const { boards, moves, rounds, stacks } = context.yard();
      orRefuse(stacks.get(stackId), 'stack');
      const at = isoOf(Date.parse(startedAt));
      const all = boards
        .onPage(stackId, at, more)
        .filter((board) => more.includes(board.id) || wasThere(board, at));
      const movesOf = new Map(all.map(({ id }) => [id, moves.ofBoard(id)]));
      const placeOf = new Map(
        [...movesOf].map(([id, of]) => [id, orRefuse(moveAt(of, at), 'move').placeName]),
      );
      const placeName = mostCommon([...placeOf.values()]);
      const [sameDay] = rounds.onStackBetween(stackId, startOfLocalDay(at), endOfDay(at));
      return {
        placeName,
        gone: boards.goneBy(stackId, startOfLocalDay(at)),
        boards: all.map((board) => {
          const { id: boardId, code, thicknessMm, thicknessQuarters, lengthMm, speciesName } = board;
          const place = placeOf.get(boardId) ?? null;
          const remarked = remarksOn(board, stackId, at, place === placeName ? null : place);
          const first = movesOf.get(boardId)?.[0];
          const isLater = first !== undefined && Date.parse(first.since) > Date.parse(at);
          const placedLater = isLater
            ? { placeName: first.placeName, since: first.since, isSawnKnown: board.sawnOn !== null }
            : null;
          const known = { boardId, code, thicknessMm, thicknessQuarters, lengthMm, speciesName };
          return { ...known, placedLater, ...remarked };
        }),
        sameDay: sameDay && sameDay.boards > 0 ? { roundId: sameDay.roundId, boards: sameDay.boards } : null,
      };
    },

    'pastRounds.boardOf': ({ code: typed }) => {
      const { boards, origins } = context.yard();
      const code = typed.trim().toUpperCase();
      const leftId = boards.leftByCode(code);
      const keptId = leftId === undefined ? undefined : origins.kept(leftId);
      const renamedId = () => boards.earlierCodes().findLast((earlier) => earlier.code === code)?.boardId;
      const isWrittenSo = boards.idByCode(code) ?? keptId ?? renamedId();
      if (isWrittenSo !== undefined) return { code, boardId: isWrittenSo };
      // Written another way, as WAL1 for WAL-01, where that can mean one board alone.
      const like = likeCodes(codeOf(code) ?? code);
      const meant = new Set(like.flatMap((each) => boards.idByCode(each) ?? []));
      const left = new Set(
        like.flatMap((each) => boards.leftByCode(each) ?? []).map((id) => origins.kept(id)),
      );
      const [boardId = null, other] = meant.size > 0 ? meant : left;
      return { code, boardId: other === undefined ? boardId : null };
    },

    'pastRounds.check': ({ line, ...page }) => {
      const { boards, meters, readings: saved } = context.yard();
      checkUnit(context.yard(), page);
      const { boardId } = line;
      const board = orRefuse(boards.judgedBy(boardId), 'board');
      const pins = pinsOfMeter(context.yard(), page.meterId);
      const { planBasis, readings } = readingsOf(board, pins, page, line);
      const at = isoOf(Date.parse(page.startedAt));
      const unsaved = readings.map(
        (reading, index): Reading => ({
          id: index + 1,
          // Of no round that is saved; nothing is looked up by it.
          roundId: 1,
          boardId,
          spotIndex: reading.spotIndex,
          ...whereRead(reading, page.depths[reading.column]!, pins),
          raw: reading.raw,
          isAbove: reading.isAbove,
          unit: page.unit,
          how: 'typed',
          settled: null,
          woodTempC: page.woodTempC,
          meterId: page.meterId,
          meterProfileId: page.meterId === null ? null : meters.profileIdOf(page.meterId),
          takenAt: at,
          excluded: null,
        }),
      );
      const judged = assessing.assessUnsaved(boardId, {
        startedAt: at,
        airTempC: page.woodTempC === null ? page.airTempC : null,
        readings: unsaved,
        planBasis,
        isFinished: true,
        isTyped: true,
        before: saved.lastRoundBefore(boardId, at) ?? null,
      });
      return {
        planBasis,
        cells: judged.readings.map(({ id, raw, unit, corrected, suspicions, counts, spot }) => ({
          column: readings[id - 1]!.column,
          raw,
          unit,
          corrected,
          suspicions,
          counts,
          spot,
        })),
      };
    },
  } satisfies Partial<Queries>;
}

/** A page of no more lines is one slice: fewer than of other records, as each line has several readings. */
const LINES_AT_ONCE = 40;

/** Saves rounds that were written on paper. */
export function pastRoundCommands(context: AppContext, judging: Judging, comparing: Comparing) {
  /** @throws Refusal where the line cannot be of that day */
  function checkLine({ boardId, raws }: PastLine, { depths }: PastPage, at: string): void {
    const { boards, origins } = context.yard();
    const board = orRefuse(boards.judgedBy(boardId), 'board');
    const { code: boardCode, sawnOn, thicknessMm } = board;
    if (sawnOn !== null && startOfDay(sawnOn) > Date.parse(at))
      throw new Refusal(message('refusal.page-before-sawn', { boardCode, sawnOn }));
    const origin = origins.cutFrom(boardId);
    if (origin && isCutAfter({ cutOn: origin.at }, at))
      throw new Refusal(
        message('refusal.page-before-cut', { boardCode, fromCode: origin.code, cutOn: origin.at }),
      );
    const left = leftOf(boards.get(origins.kept(boardId)));
    if (left !== null && Date.parse(left.at) < Date.parse(startOfLocalDay(at)))
      throw new Refusal(message('refusal.page-after-left', { boardCode, leftOn: left.at }));
    const isThrough = raws.some((raw, column) => {
      const depth = depths[column];
      return raw !== null && typeof depth === 'number' && reachesOtherFace(depth, thicknessMm);
    });
    if (isThrough)
      throw new Refusal(
        message('refusal.page-deeper-than-board', { boardCode, boardThickness: thicknessOf(board) }),
      );
  }

  /** @throws Refusal where two lines are of one board, under whichever record of it */
  function checkOnce(lines: readonly PastLine[]): void {
    const { boards, origins } = context.yard();
    const seen = new Set<number>();
    for (const { boardId } of lines) {
      const keptId = origins.kept(boardId);
      if (seen.has(keptId))
        throw new Refusal(
          message('refusal.page-board-twice', { boardCode: orRefuse(boards.judgedBy(keptId), 'board').code }),
        );
      seen.add(keptId);
    }
  }

  /**
   * @throws Refusal, a question, where a round of that day has the same readings of a board, under whichever record of it:
   * as they were saved, or as the board has them now, whose order a person who moved some cannot know
   */
  function* checkNew(stackId: number, lines: readonly PastLine[], at: string): Slices<void> {
    const { origins, readings, rounds } = context.yard();
    for (const { roundId, savedAt } of rounds.onStackBetween(stackId, startOfLocalDay(at), endOfDay(at))) {
      let same = 0;
      yield* inSlices(lines, (slice) => {
        for (const { boardId, raws } of slice) {
          const typed = inOrder(raws.filter((raw) => raw !== null));
          const isTyped = (record: number) =>
            readings.pagesOf(record, roundId).some((page) => isDeepStrictEqual(inOrder(page), typed));
          if (origins.records(origins.kept(boardId)).some(isTyped)) same += 1;
        }
      });
      if (same > 0)
        throw new Refusal(message('past-round.saved-already', { boards: same, savedOn: savedAt }));
    }
  }

  /** A board that was read at its first place was there by then. */
  function placeEarlier(boardId: number, sawnOn: string | null, thereSince: ThereSince, at: string): void {
    const { moves } = context.yard();
    const [first] = moves.ofBoard(boardId);
    if (first === undefined || Date.parse(first.since) <= Date.parse(at)) return;
    const sawnMs = sawnOn === null ? null : startOfDay(sawnOn);
    const dayMs =
      thereSince === 'sawn' ? (sawnMs ?? Date.parse(startOfLocalDay(at))) : startOfDay(thereSince);
    // Never before it was sawn.
    moves.beganOn(boardId, isoOf(Math.max(dayMs, sawnMs ?? dayMs)));
  }

  return {
    *'pastRounds.save'({ lines: asked, isDateRight, isAnother, thereSince, work: _, ...page }) {
      const yard = context.yard();
      const { stackId, meterId, unit, woodTempC, depths, isDayOnly } = page;
      orRefuse(yard.stacks.get(stackId), 'stack');
      checkUnit(yard, page);
      const typedAt = isoOf(Date.parse(page.startedAt));
      const givenAt = context.now();
      if (Date.parse(typedAt) > Date.parse(givenAt)) throw new Refusal(message('refusal.page-to-come'));
      const lines = asked.filter(({ raws }) => raws.some((raw) => raw !== null));
      if (lines.length === 0) throw new Refusal(message('refusal.page-empty'));
      checkOnce(lines);
      yield* inSlices(lines, (slice) => {
        for (const line of slice) checkLine(line, page, typedAt);
      });
      if (thereSince !== null && thereSince !== 'sawn' && startOfDay(thereSince) > Date.parse(typedAt))
        throw new Refusal(message('refusal.page-place-later', { startedOn: typedAt }));
      const asks = isDateRight ? null : longBeforeStack(context, stackId, typedAt, 'page');
      if (asks !== null) throw new Refusal(asks);
      if (!isAnother) yield* checkNew(stackId, lines, typedAt);
      const boardIds = lines.map(({ boardId }) => boardId);
      const startedAt = instantOfPage(context, boardIds, { ...page, startedAt: typedAt });

      const roundId = yard.rounds.add({
        stackId,
        startedAt,
        datedBy: isDayOnly ? 'day' : 'time',
        airTempC: woodTempC === null ? page.airTempC : null,
      });
      // Its boards are those that were read: others may have come later.
      yard.rounds.finish(roundId, isDayOnly ? givenAt : startedAt, 0);
      yard.woodTemperatures.give({ roundId, boardId: null, tempC: woodTempC, givenAt });
      const pins = pinsOfMeter(yard, meterId);
      let saved = 0;
      yield* inSlices(
        lines,
        (slice) => {
          for (const line of slice) {
            const { boardId } = line;
            const board = orRefuse(yard.boards.judgedBy(boardId), 'board');
            orderMoves(context, boardId, { ...page, startedAt }, [startedAt]);
            if (thereSince !== null) placeEarlier(boardId, board.sawnOn, thereSince, startedAt);
            const { planBasis, readings } = readingsOf(board, pins, page, line);
            yard.spotPlans.give({ roundId, boardId, basis: planBasis, givenAt });
            for (const { spotIndex, planned, raw, isAbove, column } of readings) {
              const { spot } = planned;
              const value = { raw, isAbove, unit, how: 'typed' as const, settled: null, meterId };
              const at = { roundId, boardId, spotIndex, spot, woodTempC, takenAt: startedAt };
              const readingId = saveReading(yard, { ...at, ...value }, givenAt);
              const depth = depths[column]!;
              if (depth !== 'pins') {
                const depthMm = depth === 'unknown' ? null : depth;
                yard.amendments.amendReading(readingId, 'depthMm', depthMm, givenAt);
              }
              saved += 1;
            }
          }
          judging.judgeAgain(slice.map(({ boardId }) => boardId));
        },
        LINES_AT_ONCE,
      );
      context.afterwards(() => comparing.compare([roundId]));
      return {
        roundId,
        boardIds,
        readings: saved,
        act: yard.acts.now(),
      };
    },
  } satisfies Partial<Commands>;
}
