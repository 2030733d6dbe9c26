// @vitest-environment jsdom
import '../ui/drawing-room.ts';
import { cleanup, render, screen, waitFor } from '@testing-library/react';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { RoundScreen } from '../../../../renderer/features/round/RoundScreen.tsx';
import { Conflict } from '../../../../shared-core/contract/answer.ts';
import { expectNoBarriers, forgetEverything, playMachine } from '../shell/machine.ts';
import { aRound } from './a-round.ts';
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

  test('stays as it was by Esc', async () => {
    const { machine, user } = await open();
    await user.keyboard('*');
    await field();
    await user.keyboard('x{Escape}');
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
    await screen.findByText('Saved meanwhile: Split');
    await user.click(screen.getByRole('button', { name: 'Keep mine' }));
    await waitFor(() => expect(screen.queryByRole('dialog')).toBeNull());
    expect(machine.inputsOf('notes.set').at(-1)).toEqual({
      subject: board,
      note: 'Knot at 3 ft!',
      shown: 'Split',
    });
  });
});
