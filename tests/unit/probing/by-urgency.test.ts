import { expect, test } from 'vitest';
import { byUrgency } from '../../../shared-core/probing/plan/by-urgency.ts';
import { type StackDue, stackDueKindSchema } from '../../../shared-core/probing/plan/stack-call.ts';
import { message } from '../../../shared-core/words/message.ts';

const dueFor = (kind: StackDue['kind']): StackDue => ({ kind, why: message('stack-call.not-probed-yet') });
const stack = (name: string, due: StackDue | null, likely: string | null, lastProbedAt: string | null) => ({
  name,
  due,
  nextReady: likely === null ? null : { when: { likely, from: likely, to: likely } },
  lastProbedAt,
});

test('stacks come by what they are due for, then by when they are likely ready, then by how long ago they were probed', () => {
  const [most, least] = [stackDueKindSchema.options[0]!, stackDueKindSchema.options.at(-1)!];
  const inOrder = [
    stack('due for the most urgent', dueFor(most), null, null),
    stack('due for the least urgent', dueFor(least), null, null),
    stack('ready in June', null, '2026-06-01', null),
    stack('ready in July', null, '2026-07-01', null),
    stack('probed in March', null, null, '2026-03-01T08:00:00Z'),
    stack('probed in April', null, null, '2026-04-01T08:00:00Z'),
  ];
  expect(byUrgency(inOrder.toReversed())).toEqual(inOrder);
  expect(byUrgency(inOrder)).toEqual(inOrder);
});

test('a stack never probed comes before those that were', () => {
  const [never, once] = [stack('never', null, null, null), stack('once', null, null, '2026-03-01T08:00:00Z')];
  expect(byUrgency([once, never])).toEqual([never, once]);
  expect(byUrgency([never, once])).toEqual([never, once]);
});

test('each thing that a stack can be due for has one rank, the most urgent first', () => {
  expect(stackDueKindSchema.options).toEqual([
    'open-round',
    'move-back',
    'overdue',
    'first-round',
    'should-be-ready',
    'probe-again',
    'may-not-be-ready',
    'could-change-call',
    'learns-rate',
    'bring-in',
    'add-place',
    'more-boards',
  ]);
});
