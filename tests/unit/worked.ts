import type { Outcome } from '../../shared-core/outcome.ts';

/** What came of it; a test that has no answer fails by the problem's code. */
export function worked<T>(outcome: Outcome<T>): T {
  if (!outcome.ok) throw new Error(outcome.problem.code);
  return outcome.value;
}
