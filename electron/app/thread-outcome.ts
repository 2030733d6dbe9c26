import { Refusal } from '../../shared-core/contract/answer.ts';
import type { Outcome } from '../../shared-core/outcome.ts';

/** Does a task where the thread is: what is wrong with a file or a disk is an outcome, and no fault. */
export async function outcomeOf(work: () => unknown): Promise<Outcome<unknown>> {
  try {
    return { ok: true, value: await work() };
  } catch (error) {
    if (error instanceof Refusal) return { ok: false, problem: error.problem };
    throw error;
  }
}

/** What came of a task, where it was asked for. @throws Refusal */
export function orRefused(outcome: Outcome<unknown>): unknown {
  if (!outcome.ok) throw new Refusal(outcome.problem);
  return outcome.value;
}
