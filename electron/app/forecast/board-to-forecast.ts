import type { ForecastDetails } from '../../../shared-core/contract/forecast.ts';
import { type AirSource, type BoardRow, movementIn, type Place } from '../../../shared-core/contract/yard.ts';
import type { Outcome } from '../../../shared-core/outcome.ts';
import type { Assessment } from '../../../shared-core/probing/calls/assessment.ts';
import { depthRead } from '../../../shared-core/probing/readings/depth-read.ts';
import { depthOf } from '../../../shared-core/probing/readings/estimate.ts';
import { ENTERED_AT_ONCE_DAYS } from '../../../shared-core/probing/readings/new-here.ts';
import type { JudgedReading } from '../../../shared-core/probing/readings/reading.ts';
import { isQuestionable } from '../../../shared-core/probing/suspicions/suspicion.ts';
import { DAY_MS, isoOf } from '../../../shared-core/time.ts';
import type { DayToDay } from '../../../shared-core/wood/climate/station.ts';
import { SWINGS_OUTDOORS } from '../../../shared-core/wood/climate/swings.ts';
import type { Stay } from '../../../shared-core/wood/drying/board-history.ts';
import {
  assumptionsOfFaces,
  type BarkSide,
  type Exposure,
  facesIn,
  pinFaceOf,
  withBarkOn,
} from '../../../shared-core/wood/drying/faces-of-board.ts';
import type { DryingBoard } from '../../../shared-core/wood/drying/history-fit.ts';
import { faceRatio } from '../../../shared-core/wood/drying/model/parabolic-start.ts';
import { mean } from '../../../shared-core/wood/maths/mean.ts';
import { dryingClassOf } from '../../../shared-core/wood/species/drying-class.ts';
import { type Message, message } from '../../../shared-core/words/message.ts';
import { type MeasuredPlace, measuredAt } from '../air/measured-places.ts';
import { orRefuse, type QueryContext } from '../context.ts';
import type { Assessing } from '../judging/assessing.ts';
import type { BoardToForecast } from './forecast-messages.ts';

/** How far ahead a forecast looks. */
const HORIZON_DAYS = 730;
/** As many as the forecast takes. */
const MOST_ELSEWHERE = 20;
/** How little of the start is assumed to be known from a first round: its readings tell the rest. */
const START_LOG_SD = 0.3;

/** A board as the forecaster needs it, with what a person should know of it. */
export interface PreparedBoard {
  board: BoardToForecast;
  readings: ForecastDetails['readings'];
  stays: ForecastDetails['stays'];
  assumptions: Message[];
  /**
   * Whether the forecast tells of its core without the core being read. Not where it was never read, for then nothing
   * tells its pace; nor where what its core was like in the beginning is assumed.
   */
  tellsCore: boolean;
  /** Whether it has nothing better than readings that are all questionable. */
  isByQuestionable: boolean;
  /** Whether where it was for a part of its history is assumed: then it tells nothing of that place. */
  isPlaceAssumed: boolean;
}

/**
 * Everything that is on file of a board's life, as the drying model needs it: where it was with the air there, and its
 * readings, each at its depth with its uncertainty; questionable ones only where there are no others, and no sawing date.
 *
 * @param rounds  those whose readings are used, oldest first
 * @param today   air that was logged for a later day does not count
 * @returns a problem where too little is known to begin with
 */
export function boardToForecast(
  context: QueryContext,
  assessing: Assessing,
  row: BoardRow,
  rounds = context.yard().readings.roundsOfBoard(row.id),
  today = context.now(),
): Outcome<PreparedBoard> {
  const yard = context.yard();
  const stack = orRefuse(yard.stacks.get(row.stackId), 'stack');
  const endUse = orRefuse(yard.endUses.get(stack.endUseId), 'use');
  const species = orRefuse(yard.species.get(row.speciesId), 'species');
  const places = new Map(yard.places.list().map((place) => [place.id, place]));
  // Boards stood at places that are closed now.
  const placeOf = (id: number): Place => orRefuse(places.get(id) ?? yard.places.get(id), 'place');
  const airAt = (place: Place): Pick<Stay, 'air' | 'measured'> => {
    const { air, stretches: measured } = measuredAt(yard, place, today);
    return measured.length === 0 ? { air } : { air, measured };
  };
  const moves = yard.moves.ofBoard(row.id);
  const assessments = rounds.map((roundId) => assessing.assess(row.id, roundId));
  const { used, unusedOn, isByQuestionable } = readingsToUse(assessments, row.sawnOn !== null);
  const barkOffMs = row.barkOffOn === null ? null : startOfDay(row.barkOffOn);
  const sideAt = (atMs: number): BarkSide =>
    barkOffMs !== null && atMs < barkOffMs ? withBarkOn(row.barkSide) : row.barkSide;
  const pinFaceAt = (atMs: number) => pinFaceOf(sideAt(atMs));
  const readings = fitReadings(used, row.thicknessMm, pinFaceAt);

  const entered = orRefuse(moves[0], 'move');
  const firstRound = assessments.find((each) => each.readings.some((reading) => used.includes(reading)));
  const begun = startOf(row, entered, firstRound);
  if (!begun.ok) return begun;
  const { start } = begun.value;
  const stays = moves.map(({ placeId, since }) => ({ fromMs: Date.parse(since), place: placeOf(placeId) }));
  const isTopInSun =
    stack.topCover === 'sun' && row.layer !== null && row.layer === yard.boards.topLayer(stack.id);
  const exposure = ({ place: { kind } }: { place: Place }): Exposure => ({
    isSunlit: kind === 'outdoors' && isTopInSun,
    isLowest: (kind === 'outdoors' || kind === 'open-shed') && row.layer === 1,
  });
  const namesWhere = (of: keyof Exposure): string[] => [
    ...new Set(stays.filter((stay) => exposure(stay)[of]).map(({ place }) => place.name)),
  ];
  stays[0] = { ...orRefuse(stays[0], 'move'), fromMs: Math.min(Date.parse(entered.since), start.atMs) };

  const value: PreparedBoard = {
    tellsCore: readings.length > 0 && begun.value.isCoreKnown,
    isByQuestionable,
    isPlaceAssumed: Date.parse(entered.since) - start.atMs > ENTERED_AT_ONCE_DAYS * DAY_MS,
    readings,
    stays: stays.map(({ fromMs, place }) => ({ fromMs, placeName: place.name })),
    assumptions: [
      ...begun.value.assumptions,
      ...(isByQuestionable ? [message('forecast.assumed.readings-questionable')] : []),
      ...unusedOn.map((readOn) => message('forecast.assumed.readings-unused', { readOn })),
      ...assumptionsOfFaces(row.barkSide, row.barkOffOn, namesWhere('isSunlit'), namesWhere('isLowest')),
      ...assumptionsOfAir(placeOf(row.placeId), measuredAt(yard, placeOf(row.placeId), today)),
      ...(species.basicSpecificGravity === null
        ? [message('forecast.assumed.average-density', { speciesName: species.name })]
        : []),
    ],
    board: {
      boardId: row.id,
      family: row.log === '' ? null : JSON.stringify([row.stackId, row.speciesId, row.log.toLowerCase()]),
      nowMs: Date.parse(context.now()),
      board: {
        thicknessMm: row.thicknessMm,
        basicSpecificGravity: species.basicSpecificGravity,
        dryingClass: dryingClassOf(species),
        start,
        stays: stays.flatMap((stay, index): Stay[] => {
          const { fromMs, place } = stay;
          const untilMs = stays[index + 1]?.fromMs ?? Number.POSITIVE_INFINITY;
          const isBarkOffWithin = barkOffMs !== null && barkOffMs > fromMs && barkOffMs < untilMs;
          return (isBarkOffWithin ? [fromMs, barkOffMs] : [fromMs]).map((atMs) => ({
            fromMs: atMs,
            ...airAt(place),
            days: dayToDayOf(place.airSource),
            movement: movementIn(place),
            faces: facesIn(sideAt(atMs), exposure(stay)),
          }));
        }),
      },
      readings: fitReadings(used.map(asWetAsLikely), row.thicknessMm, pinFaceAt),
      endUse: {
        minPct: endUse.minIsAdvice ? 0 : endUse.minPct,
        maxPct: endUse.maxPct,
        maxShellCorePct: endUse.maxShellCorePct,
      },
      placeId: row.placeId,
      elsewhere: [...places.values()]
        .filter(({ id }) => id !== row.placeId)
        .slice(0, MOST_ELSEWHERE)
        .map((place) => ({
          placeId: place.id,
          air: measuredAt(yard, place, today).air,
          days: dayToDayOf(place.airSource),
          movement: movementIn(place),
          faces: facesIn(row.barkSide, laidFree),
        })),
      horizonDays: HORIZON_DAYS,
    },
  };
  return { ok: true, value };
}

/** How it is assumed to lie at a place where it is not yet. */
const laidFree: Exposure = { isSunlit: false, isLowest: false };

/**
 * The readings that nothing speaks against, and when rounds were of which none is left (UTC, ISO 8601). Where none is
 * left of any round: none, if the sawing date tells how to begin; else all that count.
 */
function readingsToUse(
  assessments: readonly Assessment[],
  isSawingKnown: boolean,
): { used: JudgedReading[]; unusedOn: string[]; isByQuestionable: boolean } {
  const counted = assessments.map(({ readings }) => readings.filter((reading) => reading.counts));
  const firm = counted.map((readings) => readings.filter((reading) => !isQuestionable(reading.suspicions)));
  if (!isSawingKnown && firm.flat().length === 0) {
    const used = counted.flat();
    return { used, unusedOn: [], isByQuestionable: used.length > 0 };
  }
  const unused = counted.filter((_, index) => firm[index]?.length === 0);
  return {
    used: firm.flat(),
    unusedOn: unused.flatMap(([first]) => first?.takenAt ?? []),
    isByQuestionable: false,
  };
}

/** Wood that is above the scale of a meter is wetter than its end by this, give or take, % MC. Common practice, no source. */
const ABOVE_SCALE = { points: 10, sdPoints: 10 };

function asWetAsLikely(reading: JudgedReading): JudgedReading {
  const { isAbove, unit, corrected } = reading;
  const { mcPct, standardUncertaintyPct } = corrected;
  if (!isAbove || unit !== 'pct' || mcPct === null || standardUncertaintyPct === null) return reading;
  return {
    ...reading,
    corrected: {
      ...corrected,
      mcPct: mcPct + ABOVE_SCALE.points,
      standardUncertaintyPct: Math.hypot(standardUncertaintyPct, ABOVE_SCALE.sdPoints),
    },
  };
}

function fitReadings(
  readings: readonly JudgedReading[],
  thicknessMm: number,
  pinFaceAt: (atMs: number) => 'a' | 'b',
): ForecastDetails['readings'] {
  return readings.flatMap((reading) => {
    const { mcPct, standardUncertaintyPct } = reading.corrected;
    if (mcPct === null || standardUncertaintyPct === null) return [];
    const atMs = Date.parse(reading.takenAt);
    const fromPinFace = depthOf(reading, thicknessMm) / thicknessMm;
    return [
      {
        atMs,
        depth: depthRead(reading, thicknessMm),
        depthFraction: pinFaceAt(atMs) === 'a' ? fromPinFace : 1 - fromPinFace,
        mcPct,
        ...(reading.spot.depthMm === null ? { isDepthUnknown: true as const } : {}),
        standardUncertaintyPct,
      },
    ];
  });
}

type Start = { start: DryingBoard['start']; assumptions: Message[]; isCoreKnown: boolean };

/**
 * When the board's history begins and how wet it was: green on the day it was sawn, where it is known where it was
 * since; else as its first round found it, unless that left the average unknown.
 */
function startOf(
  { sawnOn, thicknessMm }: BoardRow,
  entered: { since: string; placeName: string },
  firstRound: Assessment | undefined,
): Outcome<Start> {
  const enteredOn = entered.since;
  const sawnMs = sawnOn === null ? null : startOfDay(sawnOn);
  if (sawnMs !== null && Date.parse(enteredOn) - sawnMs <= ENTERED_AT_ONCE_DAYS * DAY_MS)
    return { ok: true, value: { start: { atMs: sawnMs, ...green }, assumptions: [], isCoreKnown: true } };
  // Of wood wet within, the shell tells less than the sawing date does, wherever it was since.
  const isOpenWithin = firstRound?.estimate?.averageIs === 'unknown' && sawnMs !== null;
  const first = firstRound && !isOpenWithin && startOfRound(firstRound, thicknessMm);
  if (first) {
    const assumed =
      sawnMs === null
        ? message('forecast.assumed.from-first-round')
        : message('forecast.assumed.from-first-round-moved', { enteredOn });
    const inCore = firstRound?.estimate?.inCore ?? 0;
    return { ok: true, value: { start: first, assumptions: [assumed], isCoreKnown: inCore > 0 } };
  }
  if (sawnMs === null) return { ok: false, problem: message('forecast.none-to-begin-with') };
  const { placeName } = entered;
  const assumptions = [message('forecast.assumed.there-since-sawn', { enteredOn, placeName })];
  return { ok: true, value: { start: { atMs: sawnMs, ...green }, assumptions, isCoreKnown: false } };
}

const green = { mcPct: null, logSd: START_LOG_SD, shellRatio: 1 };

function startOfRound({ estimate, readings }: Assessment, thicknessMm: number): DryingBoard['start'] | null {
  if (estimate === null) return null;
  const { averagePct, shellPct } = estimate;
  const shellDepths = readings
    .filter(({ counts, spot }) => counts && spot.depth === 'shell')
    .map((reading) => depthOf(reading, thicknessMm) / thicknessMm);
  return {
    // Of all its readings, so that none is older than the start.
    atMs: Math.min(...readings.map((reading) => Date.parse(reading.takenAt))),
    mcPct: Math.max(1, averagePct),
    logSd: START_LOG_SD,
    shellRatio:
      shellPct === null || shellDepths.length === 0
        ? 1
        : Math.min(1.5, Math.max(0.1, faceRatio(shellPct / averagePct, mean(shellDepths)))),
  };
}

/** How single days stray from their month; not known of rooms and of months that were typed. */
function dayToDayOf(source: AirSource | null): DayToDay | null {
  switch (source?.kind) {
    case 'station':
      return source.station.days;
    case 'file':
      return source.days;
    case 'region':
      return SWINGS_OUTDOORS;
    default:
      return null;
  }
}

/** What is assumed of the air where it was not entered; where it was measured, since when, and what holds else. */
function assumptionsOfAir(place: Place, { days, shiftPct }: MeasuredPlace): Message[] {
  const { airSource: source, name: placeName } = place;
  const used = days.filter(({ doubt }) => doubt === null);
  const [first] = used;
  if (first) {
    const otherAir = airElse(source, shiftPct === 0 ? 'no' : 'yes');
    const sinceOn = isoOf(first.dayMs + DAY_MS / 2);
    return [message('forecast.air.measured', { placeName, sinceOn, days: used.length, otherAir })];
  }
  if (source?.kind === 'region') return [message('forecast.assumed.regional-air', { placeName })];
  return source?.kind === 'room' ? [message('forecast.assumed.room-air', { placeName })] : [];
}

/** What air a place has where none was measured. @param adjusted  whether what was measured shifts it */
function airElse(source: AirSource | null, adjusted: 'yes' | 'no'): Message {
  switch (source?.kind) {
    case 'station':
      return message('forecast.air.station', { stationName: source.station.name, adjusted });
    case 'file':
      return message('forecast.air.file', { siteName: source.siteName, adjusted });
    case 'region':
      return message('forecast.air.region', { adjusted });
    case 'room':
      return message('forecast.air.room', { adjusted });
    default:
      return message('forecast.air.months', { adjusted });
  }
}

/** Local midnight of a day "2026-11-03". */
function startOfDay(day: string): number {
  const [year = Number.NaN, month = Number.NaN, date = Number.NaN] = day.split('-').map(Number);
  return new Date(year, month - 1, date).getTime();
}
