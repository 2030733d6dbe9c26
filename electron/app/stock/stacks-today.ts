import type { StackRow } from '../../../shared-core/contract/yard.ts';
import { byUrgency } from '../../../shared-core/probing/plan/by-urgency.ts';
import { withElsewhere } from '../../../shared-core/probing/plan/due-elsewhere.ts';
import { dueToday } from '../../../shared-core/probing/plan/next-probe.ts';
import type { QueryContext } from '../context.ts';
import { endOfDay } from '../forecast/end-of-day.ts';
import { dayOf } from '../forecast/judging-board.ts';

type Context = Pick<QueryContext, 'yard' | 'now'>;

/** A stack with what it is due for today, as every screen and report says it. */
export function stackToday<S extends StackRow>(context: Context, stack: S): S {
  const nowMs = Date.parse(endOfDay(context.now()));
  return { ...stack, due: withElsewhere(dueToday(stack, nowMs, dayOf), stack.elsewhere.places) };
}

/** All stacks, the one that needs doing first before the others. */
export const stacksToday = (context: Context): StackRow[] =>
  byUrgency(
    context
      .yard()
      .stacks.list()
      .map((stack) => stackToday(context, stack)),
  );
