// @vitest-environment jsdom
import '../ui/drawing-room.ts';
import { cleanup, render, screen, waitFor, within } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { LifeMenu } from '../../../../renderer/features/life/LifeMenu.tsx';
import { StackScreen } from '../../../../renderer/features/stacks/StackScreen.tsx';
import { StacksScreen } from '../../../../renderer/features/stacks/StacksScreen.tsx';
import { useNotices } from '../../../../renderer/stores/notices.ts';
import { Refusal } from '../../../../shared-core/contract/answer.ts';
import { builtInEndUses } from '../../../../shared-core/wood/species/built-in.ts';
import { message } from '../../../../shared-core/words/message.ts';
import { expectNoBarriers, forgetEverything, playMachine } from '../shell/machine.ts';
import { aBoardRow, aStack } from './a-yard.ts';

const other = aStack({ id: 2, name: 'Other oak', placeId: 8, placeName: 'Barn' });
const closedAt = '2026-05-01T12:00:00.000Z';
const none = aStack({ boards: 0, probed: 0 });

function open(stack = none, more: Parameters<typeof playMachine>[0] = {}) {
  const machine = playMachine({
    'stacks.get': () => stack,
    'stacks.list': () => [stack, other],
    'stacks.nextLayer': () => ({ layer: 4 }),
    'stacks.hereSince': () => ({ since: null }),
    'boards.list': () => ({ total: 0, rows: [] }),
    'endUses.list': () => builtInEndUses.map((endUse) => ({ ...endUse, version: 1, builtIn: true })),
    ...more,
  });
  return { machine, user: userEvent.setup() };
}
const openStack = (...given: Parameters<typeof open>) => {
  const opened = open(...given);
  render(
    <main>
      <StackScreen id={1} />
    </main>,
  );
  return opened;
};
const told = () => useNotices.getState().notices.map(({ sentence }) => sentence);
async function choose(user: ReturnType<typeof userEvent.setup>, item: string, dialog: string) {
  await user.click(await screen.findByRole('button', { name: 'More' }));
  await user.click(screen.getByRole('menuitem', { name: item }));
  return within(await screen.findByRole('dialog', { name: dialog }));
}

beforeEach(forgetEverything);
afterEach(cleanup);

test('a stack is closed after saying what that comes to, and the refusal says what to do', async () => {
  let boards = 2;
  const { machine, user } = openStack(none, {
    'stacks.close': () => {
      if (boards > 0)
        throw new Refusal(message('refusal.stack-has-boards', { stackName: 'Ridge oak', boards }));
      return { ...none, closedAt };
    },
  });
  const dialog = await choose(user, 'Close stack', 'Close Ridge oak?');
  await user.click(dialog.getByRole('button', { name: 'Close stack' }));
  expect(await dialog.findByText(/^2 boards are in Ridge oak\. Nothing was closed\./)).toBeTruthy();
  boards = 0;
  await user.click(dialog.getByRole('button', { name: 'Close stack' }));
  await waitFor(() => expect(told()).toEqual(['Ridge oak closed.']));
  expect(machine.inputsOf('stacks.close').at(-1)).toEqual({ id: 1, basedOn: 1 });
});

test('a stack that cannot be closed is merged from there, and one that cannot be deleted is closed from there', async () => {
  const refusing = (code: 'refusal.stack-has-records' | 'refusal.stack-has-boards') => () => {
    throw new Refusal(message(code, { stackName: 'Ridge oak', boards: 2 }));
  };
  const { machine, user } = openStack(none, {
    'stacks.close': refusing('refusal.stack-has-boards'),
    'stacks.delete': refusing('refusal.stack-has-records'),
  });
  const dialog = await choose(user, 'Delete stack', 'Delete Ridge oak?');
  expect(dialog.queryByRole('button', { name: 'Close stack' })).toBeNull();
  await user.click(dialog.getByRole('button', { name: 'Delete' }));
  expect(await dialog.findByText(/Nothing was deleted\. Close it instead\.$/)).toBeTruthy();
  await user.click(dialog.getByRole('button', { name: 'Close stack' }));

  const closing = within(await screen.findByRole('dialog', { name: 'Close Ridge oak?' }));
  expect(closing.queryByText(/Nothing was deleted/)).toBeNull();
  expect(machine.inputsOf('stacks.close')).toEqual([]);
  expect(closing.queryByRole('button', { name: 'Merge into another stack' })).toBeNull();
  await user.click(closing.getByRole('button', { name: 'Close stack' }));
  const merge = await closing.findByRole('button', { name: 'Merge into another stack' });
  // What was refused is no longer the main button.
  const kinds = closing.getAllByRole('button').map(({ className, textContent }) => [textContent, className]);
  expect(kinds).toEqual([
    ['Merge into another stack', 'button button-main'],
    ['Close stack', 'button button-plain'],
    ['Cancel', 'button button-plain'],
  ]);
  expect(document.activeElement).toBe(merge);
  await user.click(merge);
  expect(await screen.findByRole('dialog', { name: 'Merge Ridge oak' })).toBeTruthy();
});

test('a stack with a round that is not finished leads there', async () => {
  const { user } = openStack(aStack({ boards: 0, openRoundId: 5 }), {
    'stacks.close': () => {
      throw new Refusal(message('refusal.stack-round-open', { stackName: 'Ridge oak' }));
    },
  });
  // Its page leads there too, now that no board is left in it.
  const resume = await screen.findByRole('link', { name: /^Resume/ });
  expect(resume.getAttribute('href')).toBe('#/round/5');
  const dialog = await choose(user, 'Close stack', 'Close Ridge oak?');
  expect(dialog.queryByRole('button', { name: 'Resume the round' })).toBeNull();
  await user.click(dialog.getByRole('button', { name: 'Close stack' }));
  await user.click(await dialog.findByRole('button', { name: 'Resume the round' }));
  await waitFor(() => expect(location.hash).toBe('#/round/5'));
  expect(screen.queryByRole('dialog')).toBeNull();
});

test('a stack is merged into another, with the day on which its boards were moved there', async () => {
  const { machine, user } = openStack(aStack({ boards: 3 }), { 'stacks.merge': () => other });
  const dialog = await choose(user, 'Merge into another stack', 'Merge Ridge oak');
  await user.selectOptions(await dialog.findByLabelText('Merge into'), 'Other oak');
  expect(dialog.getByLabelText('They were moved to Barn')).toHaveProperty('checked', true);
  await user.click(dialog.getByRole('button', { name: 'Merge' }));
  await waitFor(() => expect(told()).toEqual(['Ridge oak merged into Other oak.']));
  // A notice goes with the page where it was told.
  expect(useNotices.getState().notices.map(({ at }) => at)).toEqual(['#/stacks/2']);
  expect(machine.inputsOf('stacks.merge')).toMatchObject([
    { id: 1, basedOn: 1, intoId: 2, move: { placeId: 8, isDayOnly: false } },
  ]);
});

test('two notes that are too long for one: the dialog says where the one of the merged stack stays', async () => {
  const long = 'n'.repeat(1200);
  const { user } = openStack(aStack({ note: long }), {
    'stacks.list': () => [other, { ...other, id: 3, name: 'Third oak', note: long }],
  });
  const dialog = await choose(user, 'Merge into another stack', 'Merge Ridge oak');
  const into = await dialog.findByLabelText('Merge into');
  await user.selectOptions(into, 'Other oak');
  expect(dialog.queryByText(/too long/)).toBeNull();
  await user.selectOptions(into, 'Third oak');
  expect(dialog.getByText(/^The two notes are too long for one\. The note of Ridge oak stays/)).toBeTruthy();
});

test('a closed stack says where its boards are', async () => {
  const closed = { hasArchived: true, mergedInto: { id: 2, name: 'Other oak' } };
  openStack(aStack({ boards: 0, closedAt, closed }));
  expect((await screen.findByRole('link', { name: 'Other oak' })).getAttribute('href')).toBe('#/stacks/2');
  expect(screen.getByText(/Merged into/).textContent).toMatch(
    /^Closed on May 1.*\. Merged into Other oak\. Find its boards under All boards/,
  );
});

test('a closed stack says so and is reopened, under another name if need be', async () => {
  const stack = aStack({ boards: 0, closedAt });
  const { machine, user } = openStack(stack, { 'stacks.reopen': () => none });
  expect(await screen.findByText(/^Closed on May 1/)).toBeTruthy();
  expect(screen.queryByRole('button', { name: 'Add boards' })).toBeNull();
  await expectNoBarriers();
  await user.click(screen.getByRole('button', { name: 'Reopen' }));
  const dialog = within(await screen.findByRole('dialog', { name: 'Reopen Ridge oak' }));
  const name = dialog.getByLabelText('Name');
  await user.clear(name);
  await user.type(name, 'Old oak');
  await user.click(dialog.getByRole('button', { name: 'Reopen' }));
  expect(machine.inputsOf('stacks.reopen')).toEqual([{ id: 1, basedOn: 1, name: 'Old oak' }]);
});

test('closed stacks are found under the open ones', async () => {
  const { user } = open(none, {
    'stacks.closed': () => [{ id: 7, version: 2, name: 'Sold oak', placeName: 'Pole shed', closedAt }],
  });
  render(
    <main>
      <StacksScreen />
    </main>,
  );
  await user.click(await screen.findByText('Closed stacks: 1'));
  expect(screen.getByRole('link', { name: 'Sold oak' }).getAttribute('href')).toBe('#/stacks/7');
});

test('boards are put in another stack, laid on top of what is there, and stay where they are if so said', async () => {
  const boards = [1, 2].map((number) => aBoardRow(number, { stackId: 1, placeId: 1 }));
  const { machine, user } = open(none, {
    'boards.editTogether': () => ({ act: crypto.randomUUID(), boards: [], callsBefore: [] }),
  });
  render(
    <main>
      <LifeMenu boards={boards} canDelete={false} onDeleted={() => {}} />
    </main>,
  );
  const dialog = await choose(user, 'Put in another stack', 'Put 2 boards in another stack');
  await user.selectOptions(await dialog.findByLabelText('Stack'), 'Other oak');
  await user.click(dialog.getByLabelText('They were moved to Barn'));
  await user.type(await dialog.findByLabelText('Boards per layer'), '2');
  await user.click(dialog.getByRole('button', { name: 'Put in stack' }));
  await waitFor(() => expect(told()).toEqual(['2 boards are in Other oak now.']));
  expect(machine.inputsOf('boards.editTogether')).toMatchObject([
    { stackId: 2, move: null, stackOrder: { perLayer: 2, firstLayer: 4, firstColumn: 1 } },
  ]);
});
