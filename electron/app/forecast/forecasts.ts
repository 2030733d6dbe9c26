import { setImmediate } from 'node:timers/promises';
import type { ForecastDetails } from '../../../shared-core/contract/forecast.ts';
import type { BoardRow, Place } from '../../../shared-core/contract/yard.ts';
import type { Judgement } from '../../../shared-core/probing/calls/judgement.ts';
import { targetOfUsePct } from '../../../shared-core/probing/calls/target-of-end-use.ts';
import { emcOfYear } from '../../../shared-core/wood/climate/climate.ts';
import { airSdPct } from '../../../shared-core/wood/climate/monthly-air.ts';
import { barkFaceOf, hasBarkOn } from '../../../shared-core/wood/drying/faces-of-board.ts';
import type { Forecast } from '../../../shared-core/wood/drying/forecast.ts';
import { isShrinkage } from '../../../shared-core/wood/movement/shrinkage.ts';
import { warpOf } from '../../../shared-core/wood/movement/warp.ts';
import type { EndUse } from '../../../shared-core/wood/species/end-use.ts';
import { type Message, message } from '../../../shared-core/words/message.ts';
import type { YardReader } from '../../store/yard.ts';
import { measuredAt, readMeasured } from '../air/measured-places.ts';
import { orRefuse, type QueryContext } from '../context.ts';
import type { Queries } from '../handlers.ts';
import type { Assessing } from '../judging/assessing.ts';
import { boardToForecast, type PreparedBoard } from './board-to-forecast.ts';
import { endOfDay } from './end-of-day.ts';
import { type Forecaster, MOST_SIBLINGS } from './forecast-messages.ts';
import { judgementOf } from './judging-board.ts';
import { learnerOfPlaces } from './learned-of-places.ts';

type Prepared = ReturnType<typeof boardToForecast>;

/** Boards that are kept prepared: the siblings of a few stacks. More would only fill memory. */
const MOST_REMEMBERED = 500;

export function forecastQueries(context: QueryContext, assessing: Assessing, forecaster: Forecaster) {
  function details(
    row: BoardRow,
    { board, readings, stays, assumptions, isByQuestionable }: PreparedBoard,
    forecast: Forecast,
    learnedFrom: number,
    judgement: Judgement,
  ): ForecastDetails {
    const yard = context.yard();
    const endUse = orRefuse(
      yard.endUses.get(orRefuse(yard.stacks.get(row.stackId), 'stack').endUseId),
      'use',
    );
    const offsetOf = (placeId: number) => yard.places.airOffsetPct(placeId) ?? 0;
    const places = forecast.places.map(({ placeId }, index) => {
      const { name, kind, air } = orRefuse(yard.places.get(placeId), 'place');
      const { driestEmcPct, driestMonth } = emcOfYear(air, offsetOf(placeId));
      const { ready } = orRefuse(judgement.places[index], 'place');
      return { placeId, name, kind, lowestEmcPct: driestEmcPct, lowestEmcMonth: driestMonth, ready };
    });
    const month = new Date(board.nowMs).getMonth();
    const place = orRefuse(yard.places.get(row.placeId), 'place');
    const { information: _, ...shown } = forecast;
    const here = orRefuse(forecast.places[0], 'place');
    return {
      forecast: shown,
      nowMs: board.nowMs,
      endUse,
      thicknessMm: row.thicknessMm,
      stays,
      places,
      emcNowPct: orRefuse(emcOfYear(place.air, offsetOf(place.id)).monthlyEmcPct[month], 'month'),
      readings,
      learnedFrom,
      isByQuestionable,
      assumptions: [
        ...airToCheck(place, offsetOf(place.id) - measuredAt(yard, place, context.now()).shiftPct),
        ...assumptions,
        ...airInDoubt(here, place, endUse),
      ],
      ...warp(row, forecast, endUse),
    };
  }

  function warp(
    { sawing, widthMm, thicknessMm, speciesId, ringRadiusMm, barkSide }: BoardRow,
    { now }: Forecast,
    endUse: Pick<EndUse, 'minPct' | 'maxPct' | 'maxShellCorePct'>,
  ): Pick<ForecastDetails, 'warp' | 'whyNoWarp'> {
    const { name, radialPct, tangentialPct } = orRefuse(context.yard().species.get(speciesId), 'species');
    const missing = [
      ...(widthMm === null ? [message('cup.missing.width')] : []),
      ...(sawing === 'unknown' ? [message('cup.missing.sawing')] : []),
    ];
    if (widthMm === null || sawing === 'unknown')
      return { warp: null, whyNoWarp: message('cup.missing', { missing }) };
    if (!isShrinkage(radialPct) || !isShrinkage(tangentialPct))
      return { warp: null, whyNoWarp: message('cup.shrinkage-unknown', { speciesName: name }) };
    return {
      warp: warpOf({
        thicknessMm,
        widthMm,
        sawing,
        ringRadiusMm,
        barkFace: barkFaceOf(barkSide),
        isBarkOn: hasBarkOn(barkSide),
        radialPct,
        tangentialPct,
        profilePct: now.profile.map(({ pct }) => Math.max(0, pct.median)),
        atPins: {
          faceAPct: now.faceAPct,
          faceBPct: now.faceBPct,
          shellPct: now.shell.median,
          corePct: now.core.median,
        },
        targetPct: Math.min(30, targetOfUsePct(endUse)),
        maxShellCorePct: endUse.maxShellCorePct,
      }),
      whyNoWarp: null,
    };
  }

  let remembered: { yard: YardReader; version: unknown; now: string; boards: Map<number, Prepared> } | null =
    null;
  /**
   * Prepares boards, and remembers them until anything is written: a person who goes through a stack board by board asks
   * for the same siblings each time.
   */
  function preparing(today: QueryContext): (row: BoardRow) => Prepared {
    const [yard, now] = [today.yard(), today.now()];
    const version = yard.version();
    const isSame = remembered?.yard === yard && remembered.version === version && remembered.now === now;
    if (!isSame) remembered = { yard, version, now, boards: new Map() };
    const { boards } = remembered!;
    return (row) => {
      const known = boards.get(row.id);
      if (known !== undefined) return known;
      const made = boardToForecast(today, assessing, row);
      // If anything was written meanwhile, the next question begins with an empty map.
      if (boards.size < MOST_REMEMBERED) boards.set(row.id, made);
      return made;
    };
  }

  return {
    'boards.forecast': async ({ id }) => {
      await readMeasured(context);
      const row = orRefuse(context.yard().boards.get(id), 'board');
      const now = endOfDay(context.now());
      const today = { ...context, now: () => now };
      const prepare = preparing(today);
      const own = prepare(row);
      const none = (whyNot: Message) => ({
        details: null,
        whyNot,
        judgement: judgementOf(context, assessing, row, { forecast: null, whyNot }, Date.parse(now)),
      });
      if (row.archived) return none(message('forecast.archived'));
      if (!own.ok) return none(own.problem);
      const boards = [learnerOfPlaces(context.yard(), context.now())(own.value.board)];
      for (const siblingId of context.yard().boards.probedSiblings(id, MOST_SIBLINGS)) {
        // Preparing a board takes a moment; what else is going on comes in between.
        await setImmediate();
        const sibling = context.yard().boards.get(siblingId);
        if (sibling === undefined) continue;
        const prepared = prepare(sibling);
        if (prepared.ok) boards.push(prepared.value.board);
      }
      const [answer] = await forecaster.ask({ boards, boardIds: [id] });
      const { made } = orRefuse(answer, 'board');
      if (!made.ok) return none(made.problem);
      const { forecast, learnedFrom } = made.value;
      const judgement = judgementOf(context, assessing, row, { forecast }, Date.parse(now));
      return { details: details(row, own.value, forecast, learnedFrom, judgement), whyNot: null, judgement };
    },
  } satisfies Partial<Queries>;
}

/**
 * A place's months are worth checking where they are further off than usual.
 * @param offsetPct  how far the readings of its boards put the EMC of a place from that of its months and of what was
 *                   measured, % MC
 */
const airToCheck = ({ name: placeName, air }: Place, offsetPct: number): Message[] =>
  Math.abs(offsetPct) < airSdPct(air) ? [] : [message('forecast.assumed.check-air', { placeName })];

/** The latest date is open because the air may keep the board above its target: more readings of the board hardly close it. */
const airInDoubt = (
  { reach, floorPct }: Forecast['places'][number],
  { name: placeName }: Place,
  { maxPct }: Pick<EndUse, 'maxPct'>,
): Message[] =>
  reach.likelyMs !== null && reach.lateMs === null && floorPct.high > maxPct
    ? [message('forecast.assumed.air-in-doubt', { placeName, emcPct: floorPct.high })]
    : [];
