// @vitest-environment jsdom
import { cleanup, render, screen, waitFor } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { PastRoundScreen } from '../../../../renderer/features/past-round/PastRoundScreen.tsx';
import { Refusal } from '../../../../shared-core/contract/answer.ts';
import { PAIRS } from '../../../../shared-core/probing/readings/plan-basis.ts';
import { message } from '../../../../shared-core/words/message.ts';
import { typeDay } from '../form/type-day.ts';
import { expectNoBarriers, forgetEverything, playMachine } from '../shell/machine.ts';
import { aStack } from '../stacks/a-yard.ts';
import { aPageBoard } from './a-page-board.ts';

/** Locks as of the only window. */
const locks = {
  request: (_name: string, _options: LockOptions, have: () => Promise<void>) => have(),
  query: () => Promise.resolve({ held: [] }),
};
beforeEach(() => {
  forgetEverything();
  // jsdom has none.
  Object.defineProperty(navigator, 'locks', { value: locks, configurable: true });
});
afterEach(() => {
  cleanup();
  Reflect.deleteProperty(navigator, 'locks');
});

const local = (day: number) => new Date(2025, 5, day, 12).toISOString();
const question = /^OAK-01 was moved on .*Jun.* too\. Nothing was saved\. Choose which came first\.$/;
const choice = (name: string) => screen.queryByRole('radio', { name });

/** A page of the day on which its boards were moved, as typed. */
async function open() {
  const machine = playMachine({
    'stacks.get': () => aStack(),
    'meters.list': () => [],
    'pastRounds.page': () => ({
      placeName: 'Outdoors',
      boards: [aPageBoard(1), aPageBoard(2)],
      gone: [],
      sameDay: null,
    }),
    'pastRounds.check': () => ({ planBasis: PAIRS, cells: [] }),
    'pastRounds.save': ({ order }) => {
      if (!order)
        throw new Refusal(
          message('past-round.moved-or-probed-first', { boardCode: 'OAK-01', movedOn: local(10) }),
        );
      return { roundId: 7, boardIds: [1, 2], readings: 1, act: crypto.randomUUID() };
    },
  });
  render(
    <main>
      <PastRoundScreen stackId={1} />
    </main>,
  );
  const user = userEvent.setup();
  await screen.findByRole('group', { name: 'Day of the readings' });
  await typeDay(user, 'Day of the readings', '2025-06-10');
  await user.click(screen.getAllByRole('radio', { name: 'Unknown' })[0]!);
  await user.type(screen.getByRole('textbox', { name: /^OAK-01, reading 1:/ }), '24');
  const saves = () => machine.inputsOf('pastRounds.save') as { order: unknown; startedAt: string }[];
  return { user, saves, save: () => user.click(screen.getByRole('button', { name: 'Save 1 reading' })) };
}

test('a page of a day with a move asks which came first, and is saved with the answer', async () => {
  const { user, save, saves } = await open();
  expect(choice('Moved, then probed')).toBeNull();
  await save();
  // A question, and no fault: nothing is chosen for the person.
  expect((await screen.findByText(question)).closest('[role=status]')).toBeTruthy();
  for (const order of ['Moved, then probed', 'Probed, then moved'])
    expect(choice(order)).toHaveProperty('checked', false);
  await expectNoBarriers();

  // Saved without an answer, it is asked again.
  await save();
  await waitFor(() => expect(saves().map(({ order }) => order)).toEqual([undefined, undefined]));
  expect(screen.getByText(question)).toBeTruthy();

  await user.click(choice('Probed, then moved')!);
  await save();
  await waitFor(() => expect(location.hash).toBe('#/round/7'));
  expect(saves().at(-1)).toMatchObject({ order: 'probed-first', startedAt: local(10) });
});

test('an answer holds for the page that it was given for', async () => {
  const { user, save, saves } = await open();
  await save();
  await screen.findByText(question);
  await user.click(choice('Moved, then probed')!);
  await typeDay(user, 'Day of the readings', '2025-06-11');
  expect(choice('Moved, then probed')).toBeNull();
  await save();
  await waitFor(() => expect(saves()).toHaveLength(2));
  expect(saves()[1]).toMatchObject({ startedAt: local(11) });
  expect(saves()[1]!.order).toBeUndefined();
});
