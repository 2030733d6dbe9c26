import { setImmediate } from 'node:timers/promises';
import type { ForecastDetails } from '../../../shared-core/contract/forecast.ts';
import type { BoardRow, Place } from '../../../shared-core/contract/yard.ts';
import { forecastReasons } from '../../../shared-core/probing/calls/forecast-reasons.ts';
import { targetOfUsePct } from '../../../shared-core/probing/calls/target-of-end-use.ts';
import { emcOfYear } from '../../../shared-core/wood/climate/climate.ts';
import { emcPct } from '../../../shared-core/wood/climate/emc.ts';
import { barkFaceOf, hasBarkOn } from '../../../shared-core/wood/drying/faces-of-board.ts';
import type { Forecast } from '../../../shared-core/wood/drying/forecast.ts';
import { warpOf } from '../../../shared-core/wood/movement/warp.ts';
import { orRefuse, type QueryContext } from '../context.ts';
import type { Queries } from '../handlers.ts';
import type { Assessing } from '../judging/assessing.ts';
import { boardToForecast, type PreparedBoard } from './board-to-forecast.ts';
import { dayText } from './day-text.ts';
import type { Forecaster } from './forecast-messages.ts';

/** More siblings teach nothing more: what is left is how boards of one log differ among themselves. */
const MOST_SIBLINGS = 40;
/** As many rows as the store gives at once. */
const MOST_ROWS = 500;
/** A place whose air differs by less than this from what was given is as it was given, % MC of EMC. */
const WORTH_SAYING_PCT = 1;

export function forecastQueries(context: QueryContext, assessing: Assessing, forecaster: Forecaster) {
  /** Boards of the same stack, wood and log that were probed. */
  function siblingsOf(row: BoardRow): BoardRow[] {
    if (row.log === '') return [];
    return context
      .yard()
      .boards.page({ stackId: row.stackId, search: '', offset: 0, limit: MOST_ROWS })
      .rows.filter(
        (other) =>
          other.id !== row.id &&
          other.latest !== null &&
          other.speciesId === row.speciesId &&
          other.log.toLowerCase() === row.log.toLowerCase(),
      )
      .slice(0, MOST_SIBLINGS);
  }

  function details(
    row: BoardRow,
    { board, readings, stays, assumptions }: PreparedBoard,
    forecast: Forecast,
    learntFrom: number,
  ): ForecastDetails {
    const yard = context.yard();
    const endUse = orRefuse(
      yard.endUses.get(orRefuse(yard.stacks.get(row.stackId), 'stack').endUseId),
      'use',
    );
    const places = forecast.places.map(({ placeId }) => {
      const { name, kind } = orRefuse(yard.places.get(placeId), 'place');
      return { placeId, name, kind };
    });
    const month = new Date(board.nowMs).getMonth();
    const place = orRefuse(yard.places.get(row.placeId), 'place');
    const air = orRefuse(place.air[month], 'month');
    const { information: _, ...shown } = forecast;
    return {
      forecast: shown,
      nowMs: board.nowMs,
      endUse,
      thicknessMm: row.thicknessMm,
      stays,
      places,
      emcNowPct: emcPct(air.tempC, air.rh),
      readings,
      learntFrom,
      assumptions: [...assumptions, ...otherAirThanSaid(forecast, place)],
      reasons: forecastReasons({
        forecast,
        nowMs: board.nowMs,
        endUse,
        placeNames: places.map(({ name }) => name),
        day: dayText,
      }),
      ...warp(row, forecast, endUse),
    };
  }

  function warp(
    { sawing, widthMm, thicknessMm, speciesId, ringRadiusMm, barkSide }: BoardRow,
    forecast: Forecast,
    endUse: { minPct: number; maxPct: number; maxShellCorePct: number },
  ): Pick<ForecastDetails, 'warp' | 'whyNoWarp'> {
    const { name, radialPct, tangentialPct } = orRefuse(context.yard().species.get(speciesId), 'species');
    const missing = [
      ...(widthMm === null ? ['its width'] : []),
      ...(sawing === 'unknown' ? ['how it was sawn'] : []),
    ];
    if (widthMm === null || sawing === 'unknown') {
      return {
        warp: null,
        whyNoWarp: `To say how much it will cup, give ${missing.join(' and ')} under “Change”.`,
      };
    }
    if (!radialPct || !tangentialPct) {
      return {
        warp: null,
        whyNoWarp: `How much ${name} shrinks is not known, so neither is how much it will cup. Give both figures under Woods.`,
      };
    }
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
        profilePct: forecast.now.profile.map(({ pct }) => Math.max(0, pct.median)),
        targetPct: Math.min(30, targetOfUsePct(endUse)),
        maxShellCorePct: endUse.maxShellCorePct,
      }),
      whyNoWarp: null,
    };
  }

  return {
    'boards.forecast': async ({ id }) => {
      const row = orRefuse(context.yard().boards.get(id), 'board');
      const own = boardToForecast(context, assessing, row);
      if ('whyNot' in own) return { details: null, whyNot: own.whyNot };
      const boards = [own.board];
      for (const sibling of siblingsOf(row)) {
        // Preparing a board takes a moment; what else is going on comes in between.
        await setImmediate();
        const prepared = boardToForecast(context, assessing, sibling);
        if ('board' in prepared) boards.push(prepared.board);
      }
      const [answer] = await forecaster.ask({ boards, wanted: [id] });
      if (answer === undefined || 'whyNot' in answer) {
        return { details: null, whyNot: `Nothing can be foreseen of it. ${answer?.whyNot ?? ''}` };
      }
      return { details: details(row, own, answer.forecast, answer.learntFrom), whyNot: null };
    },
  } satisfies Partial<Queries>;
}

/** Readings that want other air than the place's months give are worth a look at the months, or at the stack. */
function otherAirThanSaid(forecast: Forecast, { name, air }: Place): string[] {
  const offsetPct = orRefuse(forecast.places[0], 'place').floorPct.median - emcOfYear(air).driestEmcPct;
  if (Math.abs(offsetPct) < WORTH_SAYING_PCT) return [];
  return [
    `By its readings the air in ${name} keeps wood about ${Math.abs(offsetPct).toFixed(1)} % ${offsetPct > 0 ? 'damper' : 'drier'} than the months given for it: look whether they are right, and how freely air passes through the stack.`,
  ];
}
