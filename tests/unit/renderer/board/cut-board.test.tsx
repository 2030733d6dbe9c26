// @vitest-environment jsdom
import '../ui/drawing-room.ts';
import { cleanup, screen, waitFor, within } from '@testing-library/react';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { Refusal } from '../../../../shared-core/contract/answer.ts';
import { message } from '../../../../shared-core/words/message.ts';
import { expectNoBarriers, forgetEverything } from '../shell/machine.ts';
import { aBoardRow } from '../stacks/a-yard.ts';
import { found, openBoard } from './open-board.tsx';

const codes = (pieces: number) => ({
  codes: Array.from({ length: pieces }, (_, index) => `WAL-01-${index + 1}`),
});

beforeEach(forgetEverything);
afterEach(cleanup);

async function openCut(cut: () => { pieceIds: number[]; projectName: string | null }) {
  const { machine, user } = openBoard(
    { ...found, board: aBoardRow(1, { widthMm: 200, lengthMm: 2400 }) },
    { 'boards.pieceCodes': ({ pieces }) => codes(pieces), 'boards.cut': cut },
  );
  await user.click(await screen.findByRole('button', { name: 'More' }));
  await user.click(screen.getByRole('menuitem', { name: 'Rip or crosscut' }));
  return { machine, user, form: within(await screen.findByRole('dialog')) };
}

test('a board is ripped into as many pieces as were given, each with its ID and width', async () => {
  const { machine, user, form } = await openCut(() => ({ pieceIds: [2, 3, 4], projectName: 'Table' }));
  await user.clear(form.getByLabelText('Pieces'));
  await user.type(form.getByLabelText('Pieces'), '3');
  await user.type(await form.findByLabelText('Width of piece 1'), '60');
  await user.clear(await form.findByLabelText('ID of piece 3'));
  await user.type(form.getByLabelText('ID of piece 3'), 'scrap-1');
  await expectNoBarriers();
  await user.click(form.getByRole('button', { name: 'Save the cut' }));
  await waitFor(() => expect(screen.queryByRole('dialog')).toBeNull());
  expect(machine.inputsOf('boards.cut')).toMatchObject([
    {
      boardId: 1,
      how: 'ripped',
      isLarger: false,
      pieces: [
        { code: 'WAL-01-1', widthMm: 60, lengthMm: 2400 },
        { code: 'WAL-01-2', widthMm: null, lengthMm: 2400 },
        { code: 'SCRAP-1', widthMm: null, lengthMm: 2400 },
      ],
    },
  ]);
});

test('what is larger than the board is asked about, and cut on yes', async () => {
  let isAsked = false;
  const { machine, user, form } = await openCut(() => {
    if (isAsked) return { pieceIds: [2, 3], projectName: null };
    isAsked = true;
    throw new Refusal(
      message('refusal.pieces-longer', { boardCode: 'WAL-01', boardLengthMm: 2400, piecesLengthMm: 3000 }),
    );
  });
  await user.click(form.getByRole('radio', { name: 'Crosscut, across the grain' }));
  expect(form.getByText('Fresh ends dry faster and may check. Coat them.')).toBeTruthy();
  await user.type(await form.findByLabelText('Length of piece 1'), '3');
  await user.click(form.getByRole('button', { name: 'Save the cut' }));
  expect(await form.findByText(/^The pieces are 3.0 m long together, and WAL-01 is 2.4 m./)).toBeTruthy();
  await user.click(form.getByRole('button', { name: 'Save anyway' }));
  await waitFor(() => expect(screen.queryByRole('dialog')).toBeNull());
  expect(machine.inputsOf('boards.cut')).toMatchObject([{ isLarger: false }, { isLarger: true }]);
});

test('a size that cannot be is shown at its field, and nothing is asked of the machine', async () => {
  const { machine, user, form } = await openCut(() => ({ pieceIds: [], projectName: null }));
  await user.type(await form.findByLabelText('Width of piece 2'), '4000');
  await user.click(form.getByRole('button', { name: 'Save the cut' }));
  expect(form.getByText(/^At most 3.?000 mm.$/)).toBeTruthy();
  expect(machine.inputsOf('boards.cut')).toEqual([]);
});

test('a board that was cut names its pieces and cannot be brought back; a piece names what it was cut from', async () => {
  const at = new Date(2026, 10, 3, 12).toISOString();
  const origin = { code: 'WAL-09', how: 'ripped' as const, at };
  openBoard({
    ...found,
    board: aBoardRow(1, { archived: { code: 'ripped', note: '', at } }),
    cameFrom: [{ ...origin, boardId: 9 }],
    becameOf: [{ ...origin, boardId: 2, code: 'WAL-01-1' }],
  });
  const link = await screen.findByRole('link', { name: 'WAL-01-1' });
  expect(link.getAttribute('href')).toBe('#/boards/2');
  expect(screen.getByRole('link', { name: 'WAL-09' }).getAttribute('href')).toBe('#/boards/9');
  expect(screen.queryByRole('button', { name: 'Bring back' })).toBeNull();
});

test('readings from before the cut say on which board they were taken', async () => {
  openBoard({
    ...found,
    readings: found.readings.map((reading) => ({ ...reading, boardId: 9 })),
    readBefore: [{ boardId: 9, code: 'WAL-09', lengthMm: 4800, isSame: false }],
  });
  expect((await screen.findAllByText(/, on WAL-09/)).length).toBe(found.readings.length);
});
