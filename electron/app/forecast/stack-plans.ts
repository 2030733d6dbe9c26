import { setImmediate } from 'node:timers/promises';
import type { BoardRow } from '../../../shared-core/contract/yard.ts';
import { type BoardStanding, planStack } from '../../../shared-core/probing/plan/stack-plan.ts';
import type { Forecast } from '../../../shared-core/wood/drying/forecast.ts';
import { Z_90 } from '../../../shared-core/wood/maths/gaussian.ts';
import { orRefuse, type QueryContext } from '../context.ts';
import type { Queries } from '../handlers.ts';
import type { Assessing } from '../judging/assessing.ts';
import { boardToForecast } from './board-to-forecast.ts';
import type { BoardToForecast, Forecaster } from './forecast-messages.ts';

/** Boards whose today is forecast: some seconds' work. Of a larger stack the latest findings must do. */
const MOST_FORECAST = 300;
/** As many rows as the store gives at once. */
const MOST_ROWS = 500;
/** Only today is needed; the forecast looks a week ahead at least. */
const SHORTEST_DAYS = 7;
/** From the 10 to the 90 % point of a normal distribution, in standard deviations. */
const TEN_TO_NINETY = 2 * Z_90;

export function stackPlanQueries(context: QueryContext, assessing: Assessing, forecaster: Forecaster) {
  function boardsOf(stackId: number): BoardRow[] {
    const rows: BoardRow[] = [];
    for (;;) {
      const page = context.yard().boards.page({ stackId, search: '', offset: rows.length, limit: MOST_ROWS });
      rows.push(...page.rows);
      if (rows.length >= page.total || page.rows.length === 0) return rows;
    }
  }

  async function today(rows: readonly BoardRow[]): Promise<Map<number, Forecast['now']>> {
    if (rows.length > MOST_FORECAST) return new Map();
    const boards: BoardToForecast[] = [];
    for (const row of rows) {
      // Preparing a board takes a moment; what else is going on comes in between.
      await setImmediate();
      const prepared = boardToForecast(context, assessing, row);
      if (prepared.ok) {
        boards.push({ ...prepared.value.board, elsewhere: [], horizonDays: SHORTEST_DAYS });
      }
    }
    const answers = await forecaster.ask({ boards, boardIds: boards.map(({ boardId }) => boardId) });
    return new Map(
      answers.flatMap(({ boardId, made }) => (made.ok ? [[boardId, made.value.forecast.now]] : [])),
    );
  }

  return {
    'stacks.plan': async ({ id, certainty }) => {
      const stack = orRefuse(context.yard().stacks.get(id), 'stack');
      const endUse = orRefuse(context.yard().endUses.get(stack.endUseId), 'use');
      const rows = boardsOf(id);
      if (rows.length === 0) return null;
      const details = await today(rows);
      return planStack(
        rows.map((row) => standingOf(row, details.get(row.id))),
        endUse,
        certainty,
      );
    },
  } satisfies Partial<Queries>;
}

/** What is known of a board today: by its forecast, else what its latest round found. */
function standingOf({ id, code, latest }: BoardRow, now: Forecast['now'] | undefined): BoardStanding {
  const board = { boardId: id, code, latest };
  if (now !== undefined) {
    const { low, median, high } = now.average;
    return {
      ...board,
      today: { averagePct: median, standardUncertaintyPct: (high - low) / TEN_TO_NINETY },
      probabilityReady: now.probabilityReady,
    };
  }
  const { averagePct = null, lowPct = null, highPct = null } = latest ?? {};
  const isKnown = averagePct !== null && lowPct !== null && highPct !== null && highPct > lowPct;
  return {
    ...board,
    today: isKnown ? { averagePct, standardUncertaintyPct: (highPct - lowPct) / TEN_TO_NINETY } : null,
    probabilityReady: null,
  };
}
