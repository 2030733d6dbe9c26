import { setImmediate } from 'node:timers/promises';
import type { BoardForecast, Foreseen } from '../../shared-core/contract/forecast.ts';
import type { BoardRow, Place } from '../../shared-core/contract/yard.ts';
import { forecastReasons } from '../../shared-core/probing/forecast-reasons.ts';
import { targetOfUsePct } from '../../shared-core/probing/target-of-use.ts';
import { emcOfYear } from '../../shared-core/wood/climate.ts';
import { emcPct } from '../../shared-core/wood/emc.ts';
import { barkFaceOf, hasBarkOn } from '../../shared-core/wood/faces-of-board.ts';
import type { Forecast } from '../../shared-core/wood/forecast.ts';
import { warpOf } from '../../shared-core/wood/warp.ts';
import { boardToForesee, type PreparedBoard } from './board-to-foresee.ts';
import { type AppContext, wanted } from './context.ts';
import { dayText } from './day-text.ts';
import type { Forecaster } from './forecast-messages.ts';
import type { Judging } from './judging.ts';

/** More siblings teach nothing more: what is left is how boards of one log differ among themselves. */
const MOST_SIBLINGS = 40;
/** As many rows as the store gives at once. */
const MOST_ROWS = 500;
/** A place whose air differs by less than this from what was given is as it was given, % MC of EMC. */
const WORTH_SAYING_PCT = 1;

export function forecastUseCases(context: AppContext, judging: Judging, forecaster: Forecaster) {
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
          other.woodId === row.woodId &&
          other.log.toLowerCase() === row.log.toLowerCase(),
      )
      .slice(0, MOST_SIBLINGS);
  }

  function foreseen(
    row: BoardRow,
    { board, readings, stays, takenForGranted }: PreparedBoard,
    forecast: Forecast,
    learntFrom: number,
  ): Foreseen {
    const yard = context.yard();
    const use = wanted(yard.uses.get(wanted(yard.stacks.get(row.stackId), 'stack').useId), 'use');
    const places = forecast.places.map(({ placeId }) => {
      const { name, kind } = wanted(yard.places.get(placeId), 'place');
      return { placeId, name, kind };
    });
    const month = new Date(board.nowMs).getMonth();
    const place = wanted(yard.places.get(row.placeId), 'place');
    const air = wanted(place.air[month], 'month');
    const { information: _, ...shown } = forecast;
    return {
      forecast: shown,
      nowMs: board.nowMs,
      use,
      thicknessMm: row.thicknessMm,
      stays,
      places,
      emcNowPct: emcPct(air.tempC, air.rh),
      readings,
      learntFrom,
      takenForGranted: [...takenForGranted, ...otherAirThanSaid(forecast, place)],
      reasons: forecastReasons({
        forecast,
        nowMs: board.nowMs,
        use,
        placeNames: places.map(({ name }) => name),
        day: dayText,
      }),
      ...warp(row, forecast, use),
    };
  }

  function warp(
    { sawing, widthMm, thicknessMm, woodId, ringRadiusMm, barkSide }: BoardRow,
    forecast: Forecast,
    use: { minPct: number; maxPct: number; maxShellCorePct: number },
  ): Pick<Foreseen, 'warp' | 'whyNoWarp'> {
    const { name, radialPct, tangentialPct } = wanted(context.yard().species.get(woodId), 'wood');
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
        targetPct: Math.min(30, targetOfUsePct(use)),
        maxShellCorePct: use.maxShellCorePct,
      }),
      whyNoWarp: null,
    };
  }

  return {
    'boards.forecast': async ({ id }: { id: number }): Promise<BoardForecast> => {
      const row = wanted(context.yard().boards.get(id), 'board');
      const own = boardToForesee(context, judging, row);
      if ('whyNot' in own) return { foreseen: null, whyNot: own.whyNot };
      const boards = [own.board];
      for (const sibling of siblingsOf(row)) {
        // Preparing a board takes a moment; what else is going on comes in between.
        await setImmediate();
        const prepared = boardToForesee(context, judging, sibling);
        if ('board' in prepared) boards.push(prepared.board);
      }
      const [answer] = await forecaster.ask({ boards, wanted: [id] });
      if (answer === undefined || 'whyNot' in answer) {
        return { foreseen: null, whyNot: `Nothing can be foreseen of it. ${answer?.whyNot ?? ''}` };
      }
      return { foreseen: foreseen(row, own, answer.forecast, answer.learntFrom), whyNot: null };
    },
  };
}

/** Readings that want other air than the place's months give are worth a look at the months, or at the stack. */
function otherAirThanSaid(forecast: Forecast, { name, air }: Place): string[] {
  const offsetPct = wanted(forecast.places[0], 'place').floorPct.median - emcOfYear(air).driestEmcPct;
  if (Math.abs(offsetPct) < WORTH_SAYING_PCT) return [];
  return [
    `By its readings the air in ${name} keeps wood about ${Math.abs(offsetPct).toFixed(1)} % ${offsetPct > 0 ? 'damper' : 'drier'} than the months given for it: look whether they are right, and how freely air passes through the stack.`,
  ];
}
