import type { StackRow } from '../../../shared-core/contract/yard.ts';
import { stackDueKindSchema } from '../../../shared-core/probing/plan/stack-call.ts';

const rankOf = ({ due }: StackRow): number =>
  due === null ? stackDueKindSchema.options.length : stackDueKindSchema.options.indexOf(due.kind);

/** What needs doing first comes first; of those alike, the one that is likely ready first, then the one probed longest ago. */
export const byUrgency = (stacks: readonly StackRow[]): StackRow[] =>
  stacks.toSorted(
    (a, b) =>
      rankOf(a) - rankOf(b) ||
      (a.nextReady?.when.likely ?? '9').localeCompare(b.nextReady?.when.likely ?? '9') ||
      (a.lastProbedAt ?? '').localeCompare(b.lastProbedAt ?? ''),
  );
