import type { When } from '../../words/message.ts';
import { type StackDue, stackDueKindSchema } from './stack-call.ts';

/** What a stack is due for, and when it was and will be. */
interface Waiting {
  due: StackDue | null;
  nextReady: { when: When } | null;
  lastProbedAt: string | null;
}

const rankOf = ({ due }: Waiting): number =>
  due === null ? stackDueKindSchema.options.length : stackDueKindSchema.options.indexOf(due.kind);

/** Never comes before any time. */
const probedMs = ({ lastProbedAt }: Waiting): number =>
  lastProbedAt === null ? 0 : Date.parse(lastProbedAt);

/** What needs doing first comes first; of those alike, the one that is likely ready first, then the one probed longest ago. */
export const byUrgency = <S extends Waiting>(stacks: readonly S[]): S[] =>
  stacks.toSorted(
    (a, b) =>
      rankOf(a) - rankOf(b) ||
      (a.nextReady?.when.likely ?? '9').localeCompare(b.nextReady?.when.likely ?? '9') ||
      probedMs(a) - probedMs(b),
  );
