import { Refusal } from '../../../shared-core/contract/answer.ts';
import { type Archived, becameOf } from '../../../shared-core/contract/archive.ts';
import type { ImportCounts } from '../../../shared-core/contract/requests/imports.ts';
import { newBoardSchema, unknownOfBoard } from '../../../shared-core/contract/yard.ts';
import type { DatedAir } from '../../../shared-core/import/check-air.ts';
import {
  type ImportPlan,
  type PlaceOfPlan,
  withMonths,
  withoutKnown,
} from '../../../shared-core/import/check-table.ts';
import { reachesOtherFace } from '../../../shared-core/probing/readings/depth-read.ts';
import type { DayOrder } from '../../../shared-core/probing/readings/order-of-day.ts';
import { type ColumnDepth, pageSpots } from '../../../shared-core/probing/readings/page-spots.ts';
import type { Depth } from '../../../shared-core/probing/readings/reading.ts';
import { HOUR_MS, isoOf } from '../../../shared-core/time.ts';
import { message } from '../../../shared-core/words/message.ts';
import { instantOfAir } from '../air/place-air.ts';
import { type AppContext, orRefuse } from '../context.ts';
import type { Comparing } from '../judging/comparing.ts';
import type { Judging } from '../judging/judging.ts';
import { instantOfPage, orderMoves } from '../rounds/page-order.ts';
import { saveReading } from '../rounds/save-reading.ts';
import { inSlices, paced, type Slices } from '../slices.ts';
import { leftOf, startOfDay } from '../stock/board-days.ts';
import { reopenThoseInUse } from '../stock/open-ones.ts';
import { localDay } from '../yard/backup-tasks.ts';
import type { PlanPart } from './import-tasks.ts';

type BoardPlan = ImportPlan['boards'][number];
type DayPlan = ImportPlan['days'][number];
type TableReading = DayPlan['readings'][number];

/** Pins do not go into the wood all at once: where only the day is known, noon stands for it. */
const NOON_MINUTES = 720;
/** A piece is weighed again after this in the oven. Common practice, no source. */
const IN_OVEN_MS = 24 * HOUR_MS;
const BETWEEN_WEIGHTS_MS = 4 * HOUR_MS;
/** What was read under the ID of a board on the day it was cut was read so long before the cut, or longer. */
const BEFORE_CUT_MS = 1000;
/** Two weights of a piece are never of one moment. */
const LEAST_APART_MS = 60_000;

/**
 * Saves what a table brings, part by part. Stacks and places are looked up as the yard has them now: one that came since
 * the table was checked is not added once more.
 *
 * @throws Refusal where a board of the table is no longer, or not yet, the one that it was checked with
 */
export function* saveImport(
  context: AppContext,
  judging: Judging,
  comparing: Comparing,
  parts: readonly string[],
): Slices<ImportCounts> {
  const yard = context.yard();
  const {
    airLogs,
    amendments,
    boards,
    meters,
    ovenChecks,
    places,
    readings,
    rounds,
    spotPlans,
    stacks,
    woodTemperatures,
  } = yard;
  const now = context.now();
  const nowMs = Date.parse(now);
  const counts: ImportCounts = { places: 0, stacks: 0, boards: 0, readings: 0, airValues: 0, ovenChecks: 0 };
  // An open one of the same name comes last, and is meant.
  const placeIds = new Map(
    [...places.closed(), ...places.list()].map(({ id, name }) => [name.toLowerCase(), id]),
  );
  const stackOf = new Map(
    [...stacks.closed().flatMap(({ id }) => stacks.get(id) ?? []), ...stacks.list()].map(
      ({ id, name, placeId }) => [name.toLowerCase(), { id, placeId }],
    ),
  );
  const roundIds = new Map<string, number>();
  const isNewRound = new Set<number>();
  const roundTempC = new Map<number, number | null>();
  let meterId: number | null = null;
  let order: DayOrder | null = null;
  /** Places that get other air. */
  const airOf = new Set<number>();
  /** Boards of the table that the yard did not have, by their IDs. */
  const newIds = new Map<string, number>();
  const changed = (boardCode: string) => new Refusal(message('import.refused-changed', { boardCode }));

  const placeIdOf = (place: PlaceOfPlan): number =>
    'placeId' in place ? place.placeId : orRefuse(placeIds.get(place.name.toLowerCase()), 'place');

  function saveHead(head: Extract<PlanPart, { stacks: unknown }>): void {
    meterId = head.meterId;
    order = head.order ?? null;
    if (meterId !== null) orRefuse(meters.get(meterId), 'meter');
    for (const place of head.places) {
      if (placeIds.has(place.name.toLowerCase())) continue;
      placeIds.set(place.name.toLowerCase(), places.add(place));
      counts.places++;
    }
    for (const { name, place, endUseId } of head.stacks) {
      if (stackOf.has(name.toLowerCase())) continue;
      orRefuse(yard.endUses.get(endUseId), 'use');
      const placeId = placeIdOf(place);
      orRefuse(places.get(placeId), 'place');
      const id = stacks.add({ name, placeId, endUseId, topCover: 'covered', note: '' });
      stackOf.set(name.toLowerCase(), { id, placeId });
      counts.stacks++;
    }
  }

  function saveBoard({ stackName, place, placeName: _, firstReadOn, ...fields }: BoardPlan): void {
    if (boards.idByCode(fields.code) !== undefined) throw changed(fields.code);
    const stack = orRefuse(stackOf.get(stackName.toLowerCase()), 'stack');
    orRefuse(yard.species.get(fields.speciesId), 'species');
    const from = fields.sawnOn ?? firstReadOn;
    const since = from === null ? now : isoOf(Math.min(nowMs, startOfDay(from)));
    const board = newBoardSchema.parse({ ...unknownOfBoard, ...fields, stackId: stack.id });
    const id = boards.add(
      board,
      place === null ? stack.placeId : placeIdOf(place),
      since,
      from === null ? 'clock' : 'day',
    );
    newIds.set(fields.code, id);
    counts.boards++;
  }

  /** @param key  one round for all of the same */
  function roundFor(key: string, stackId: number, at: string, isDayOnly: boolean): number {
    const known = roundIds.get(key);
    if (known !== undefined) return known;
    const roundId = rounds.add({
      stackId,
      startedAt: at,
      datedBy: isDayOnly ? 'day' : 'time',
      airTempC: null,
    });
    // Its boards are those that were read: others may have come later.
    rounds.finish(roundId, isDayOnly ? now : at, 0);
    roundIds.set(key, roundId);
    isNewRound.add(roundId);
    return roundId;
  }

  function depthOf(
    { depth, depthMm }: TableReading,
    thicknessMm: number,
    hasPins: boolean,
  ): ColumnDepth | Depth {
    if (depthMm !== null && !reachesOtherFace(depthMm, thicknessMm)) return depthMm;
    if (depth !== null) return depth;
    return hasPins ? 'pins' : 'unknown';
  }

  /**
   * How a board left; null while it is in the yard.
   * @throws Refusal where an ID no longer means the board that it was checked with, or that one had left by that day
   */
  function leftIfStillThat(code: string, boardId: number, day: string): Archived | null {
    const inYard = boards.idByCode(code);
    if (inYard === boardId) return null;
    const board = inYard === undefined ? boards.get(boardId) : undefined;
    const left = leftOf(board);
    if (board?.code !== code || left === null || day > localDay(left.at)) throw changed(code);
    return left;
  }

  function saveDay({ code, boardId: known, day, minutes, readings: all }: DayPlan): void {
    const boardId = known ?? newIds.get(code);
    if (boardId === undefined) throw changed(code);
    const left = leftIfStillThat(code, boardId, day);
    const there = readings.ofDays(boardId).filter(({ takenAt }) => localDay(takenAt) === day);
    const added = withoutKnown(all, there);
    if (added.length === 0) return;
    const { stackId } = orRefuse(boards.versionsOf([boardId])[0], 'board');
    const board = orRefuse(boards.judgedBy(boardId), 'board');
    function instantOf(sinceMidnight: number | null): string {
      const local = new Date(`${day}T00:00`);
      local.setMinutes(sinceMidnight ?? NOON_MINUTES);
      return isoOf(Math.min(nowMs, local.getTime()));
    }
    const typedAt = instantOf(minutes);
    const isDayOnly = minutes === null;
    const page = { startedAt: left === null ? typedAt : beforeCut(typedAt, left), isDayOnly, order };
    const startedAt = instantOfPage(context, [boardId], page);
    // What was moved or cut on that day may be read before others of its stack, or after them.
    const key = startedAt === typedAt ? `${stackId} ${day}` : `${stackId} ${startedAt}`;
    const roundId = roundFor(key, stackId, startedAt, isDayOnly);
    const takenAt = (own: number | null) =>
      own === null && isDayOnly ? startedAt : instantOf(own ?? minutes);
    orderMoves(
      context,
      boardId,
      { startedAt, isDayOnly, order },
      added.map((reading) => takenAt(reading.minutes)),
    );
    const pins = meterId === null ? null : (meters.get(meterId)?.profile?.pins ?? null);
    const hasPins = (pins?.lengthMm ?? null) !== null;
    const depths = added.map((reading) => depthOf(reading, board.thicknessMm, hasPins));
    const { planBasis, spots } = pageSpots(board, pins, depths);
    spotPlans.give({ roundId, boardId, basis: planBasis, givenAt: now });
    const boardTempC = added.find(({ tempC }) => tempC !== null)?.tempC ?? null;
    // One of the round holds for all; giving it for a board goes through the round's readings.
    if (!roundTempC.has(roundId)) {
      roundTempC.set(roundId, boardTempC);
      woodTemperatures.give({ roundId, boardId: null, tempC: boardTempC, givenAt: now });
    } else if (roundTempC.get(roundId) !== boardTempC) {
      woodTemperatures.give({ roundId, boardId, tempC: boardTempC, givenAt: now });
    }
    for (const [index, reading] of added.entries()) {
      const { raw, unit, isAbove, depthMm, tempC, minutes: own, note, excluded } = reading;
      const { spotIndex, planned } = spots[index]!;
      const { spot } = planned;
      const value = { raw, isAbove, unit, how: 'typed' as const, settled: null, woodTempC: tempC, meterId };
      const at = { roundId, boardId, spotIndex, spot, takenAt: takenAt(own) };
      const readingId = saveReading(context.yard(), { ...at, ...value }, now);
      if (depths[index] === depthMm) amendments.amendReading(readingId, 'depthMm', depthMm, now);
      if (tempC !== boardTempC) amendments.amendReading(readingId, 'woodTempC', tempC, now);
      if (note !== '') amendments.amendReading(readingId, 'note', note, now);
      if (excluded !== null) amendments.amendReading(readingId, 'excluded', { text: excluded }, now);
    }
    counts.readings += added.length;
    judging.judgeAgain([boardId]);
  }

  function saveAir({ place, months }: ImportPlan['air'][number]): void {
    const id = placeIdOf(place);
    const before = orRefuse(places.get(id), 'place');
    const air = withMonths(before.air, months);
    if (JSON.stringify(air) === JSON.stringify(before.air)) return;
    places.edit({ id, basedOn: before.version, changed: { air, airSource: null } });
    airOf.add(id);
    counts.places++;
  }

  function saveAirLog(place: PlaceOfPlan, { tempC, rh, ...when }: DatedAir): void {
    const placeId = placeIdOf(place);
    airOf.add(placeId);
    const row = { placeId, at: instantOfAir(when), tempC, rh };
    if (airLogs.isTyped(row)) return;
    airLogs.add({ ...row, sensorId: null });
    counts.airValues++;
  }

  function saveOvenCheck(check: ImportPlan['ovenChecks'][number]): void {
    const { day, dry, ...measured } = check;
    const same = ovenChecks
      .ofSpecies(check.speciesId)
      .some(
        (known) =>
          known.piece === check.piece &&
          known.wetGrams === check.wetGrams &&
          JSON.stringify(known.readings) === JSON.stringify(check.readings) &&
          known.weights[0]?.grams === dry[0]?.grams &&
          localDay(known.at) === day &&
          !(known.excluded && 'code' in known.excluded && known.excluded.code === 'undone'),
      );
    if (same) return;
    const atMs = startOfDay(day) + 12 * HOUR_MS;
    const id = ovenChecks.add({ ...measured, meterId, rule: 'ASTM D4442' }, isoOf(Math.min(nowMs, atMs)));
    for (const [index, { grams, day: weighedOn }] of dry.entries()) {
      const weighedMs =
        weighedOn === null
          ? atMs + IN_OVEN_MS + index * BETWEEN_WEIGHTS_MS
          : startOfDay(weighedOn) + 12 * HOUR_MS + (index + 1) * LEAST_APART_MS;
      // Of a piece begun today the weights are of today as well, one after the other.
      const latestMs = nowMs - (dry.length - 1 - index) * LEAST_APART_MS;
      ovenChecks.weigh(id, grams, isoOf(Math.min(weighedMs, latestMs)));
    }
    counts.ovenChecks++;
  }

  /** What a part brings, one after the other. */
  function* saved(part: PlanPart): Generator<void> {
    if ('stacks' in part) yield saveHead(part);
    else if ('boards' in part) for (const board of part.boards) yield saveBoard(board);
    else if ('days' in part) for (const day of part.days) yield saveDay(day);
    else if ('air' in part) for (const air of part.air) yield saveAir(air);
    else if ('airLog' in part)
      for (const value of part.airLog.values) yield saveAirLog(part.airLog.place, value);
    else for (const check of part.ovenChecks) yield saveOvenCheck(check);
  }

  yield* paced(function* (isOver) {
    for (const [index, text] of parts.entries())
      for (const _ of saved(JSON.parse(text) as PlanPart))
        if (isOver()) yield { done: index, total: parts.length };
  });
  const inOtherAir = [...airOf].flatMap((placeId) => yard.moves.boardsEverAt(placeId));
  yield* inSlices([...new Set(inOtherAir)], (some) => judging.judgeAgain(some));

  reopenThoseInUse(context);
  context.afterwards(() => {
    judging.takeUp();
    comparing.compare([...isNewRound]);
  });
  return counts;
}

/** When a page begins of a board that left: what it was cut into has its readings of before. */
const beforeCut = (at: string, left: Archived): string =>
  becameOf(left.code) === 'cut' ? isoOf(Math.min(Date.parse(at), Date.parse(left.at) - BEFORE_CUT_MS)) : at;
