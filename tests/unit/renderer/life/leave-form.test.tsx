// @vitest-environment jsdom
import { cleanup, render, screen, within } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { LeaveForm } from '../../../../renderer/features/life/LeaveForm.tsx';
import { useNotices } from '../../../../renderer/stores/notices.ts';
import { Refusal } from '../../../../shared-core/contract/answer.ts';
import { message } from '../../../../shared-core/words/message.ts';
import { forgetEverything, playMachine } from '../shell/machine.ts';
import { aBoardRow } from '../stacks/a-yard.ts';

beforeEach(forgetEverything);
afterEach(cleanup);

const codeOf = (id: number) => aBoardRow(id).code;

test('a reserved board is sold by a button that says so, and the notice names it', async () => {
  const reserved = { boards: 1, boardCode: codeOf(2), projectName: 'Smith table', why: 'sold' };
  playMachine({
    'boards.archive': ({ isReserved }) => {
      if (!isReserved) throw new Refusal(message('refusal.left-reserved', reserved));
      return { archived: 2, released: [2] };
    },
  });
  const user = userEvent.setup();
  render(<LeaveForm boards={[aBoardRow(1), aBoardRow(2)]} why="sold" onClose={() => undefined} />);
  const form = within(screen.getByRole('dialog'));
  await user.click(form.getByRole('button', { name: 'Mark as sold' }));
  expect(await form.findByText(/^.* is reserved for Smith table\./)).toBeTruthy();
  await user.click(form.getByRole('button', { name: 'Mark anyway' }));
  const [notice] = useNotices.getState().notices;
  expect(notice?.link).toEqual({ words: 'Sheet for a buyer', href: '#/report/1?kind=buyer&more=2' });
  expect(notice?.sentence).toBe(`2 boards marked as sold. No longer reserved: ${codeOf(2)}.`);
});
