// @vitest-environment jsdom
import '../ui/drawing-room.ts';
import { cleanup, render, screen, waitFor } from '@testing-library/react';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { RoundScreen } from '../../../../renderer/features/round/RoundScreen.tsx';
import { Conflict } from '../../../../shared-core/contract/answer.ts';
import { expectNoBarriers, forgetEverything, playMachine } from '../shell/machine.ts';
import { aBoard, aReading, aRound, read } from './a-round.ts';
import { byHand } from './by-hand.ts';

beforeEach(forgetEverything);
afterEach(cleanup);

const board = { kind: 'board', id: 101 };
const placed = { boardId: 101, stackId: 4, roundId: null };

async function open(more: Parameters<typeof playMachine>[0] = {}) {
  const machine = playMachine({
    'rounds.open': () => aRound(),
    'notes.get': () => ({ note: 'Knot at 3 ft' }),
    'notes.set': () => placed,
    ...more,
  });
  const user = byHand();
  render(
    <main>
      <RoundScreen id={12} />
    </main>,
  );
  await screen.findByText('Knot at 3 ft');
  return { machine, user };
}

const field = () => screen.findByRole('textbox', { name: 'Note' });

describe('the note on the board in hand', () => {
  test('is written by one key and saved by Enter, and the round goes on', async () => {
    const { machine, user } = await open();
    await user.keyboard('*');
    expect(document.activeElement).toBe(await field());
    await expectNoBarriers();
    await user.keyboard(' end{Shift>}{Enter}{/Shift}checked{Enter}');
    await waitFor(() => expect(screen.queryByRole('dialog')).toBeNull());
    expect(machine.inputsOf('notes.set')).toEqual([
      { subject: board, note: 'Knot at 3 ft end\nchecked', shown: 'Knot at 3 ft' },
    ]);
    expect(machine.inputsOf('rounds.aim')).toEqual([]);
  });

  test('stays as it was by Esc, which asks first', async () => {
    const { machine, user } = await open();
    await user.keyboard('*');
    await field();
    await user.keyboard('x{Escape}');
    await screen.findByText(/press Escape again to discard it/);
    await user.keyboard('{Escape}');
    await waitFor(() => expect(screen.queryByRole('dialog')).toBeNull());
    expect(machine.inputsOf('notes.set')).toEqual([]);
  });

  test('shows the one that another window saved meanwhile, and saves over it only when asked', async () => {
    const { machine, user } = await open({
      'notes.set': ({ shown }) => {
        if (shown === 'Knot at 3 ft') throw new Conflict({ note: 'Split' });
        return placed;
      },
    });
    await user.keyboard('*');
    await field();
    await user.keyboard('!{Enter}');
    await screen.findByText('The note is now: Split');
    await user.click(screen.getByRole('button', { name: 'Use what I typed' }));
    await waitFor(() => expect(screen.queryByRole('dialog')).toBeNull());
    expect(machine.inputsOf('notes.set').at(-1)).toEqual({
      subject: board,
      note: 'Knot at 3 ft!',
      shown: 'Split',
    });
  });
});

describe('a note in the round', () => {
  const notes = { board: 'Knot at 3 ft', reading: 'Near a check', round: '' };
  const openRead = () =>
    open({
      'rounds.open': () => aRound([read(aBoard(1), [aReading(31)]), aBoard(2)]),
      'notes.get': ({ subject }) => ({ note: notes[subject.kind as keyof typeof notes] }),
    });

  test('can be on the last reading, and what was typed goes along', async () => {
    const { machine, user } = await openRead();
    await user.keyboard('*');
    await field();
    await user.keyboard(' and sap');
    const choice = screen.getByRole('radio', { name: /^Last reading, 11.4%/ });
    await user.click(choice);
    expect((await field()).textContent).toBe('Near a check\nand sap');
    await user.click(await field());
    await user.keyboard('{Enter}');
    await waitFor(() => expect(screen.queryByRole('dialog')).toBeNull());
    expect(machine.inputsOf('notes.set')).toEqual([
      { subject: { kind: 'reading', id: 31 }, note: 'Near a check\nand sap', shown: 'Near a check' },
    ]);
  });

  test('can be on the round, chosen by arrow keys', async () => {
    const { machine, user } = await openRead();
    await user.keyboard('*');
    await field();
    await user.tab();
    await user.keyboard('{ArrowDown}{ArrowDown}');
    const round = screen.getByRole('radio', { name: 'Round' });
    expect(round).toHaveProperty('checked', true);
    expect(document.activeElement).toBe(round);
    await user.tab({ shift: true });
    await user.keyboard('Rain{Enter}');
    await waitFor(() => expect(screen.queryByRole('dialog')).toBeNull());
    expect(machine.inputsOf('notes.set')).toEqual([
      { subject: { kind: 'round', id: 12 }, note: 'Rain', shown: '' },
    ]);
  });

  test('has pictures of what is chosen below it', async () => {
    const { machine, user } = await openRead();
    await user.keyboard('*');
    await field();
    expect(machine.inputsOf('pictures.list')).toEqual([{ subject: board }]);
    await user.click(screen.getByRole('radio', { name: 'Round' }));
    await waitFor(() =>
      expect(machine.inputsOf('pictures.list')).toContainEqual({ subject: { kind: 'round', id: 12 } }),
    );
    expect(screen.getByRole('button', { name: 'Add pictures' })).toBeTruthy();
    await expectNoBarriers();
  });
});
