// @vitest-environment jsdom
import '../ui/drawing-room.ts';
import { cleanup, screen, within } from '@testing-library/react';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { Refusal } from '../../../../shared-core/contract/answer.ts';
import type { PlaceRow } from '../../../../shared-core/contract/yard.ts';
import { message } from '../../../../shared-core/words/message.ts';
import { forgetEverything } from '../shell/machine.ts';
import { aBoardRow } from '../stacks/a-yard.ts';
import { answerOf } from './a-forecast.ts';
import { found, openBoard, panel } from './open-board.tsx';

const aPlace = (id: number, name: string) => ({ id, name }) as PlaceRow;

async function openMove() {
  const places = [aPlace(1, 'Pole shed'), aPlace(2, 'Shop')];
  const { machine, user } = openBoard(
    { ...found, board: aBoardRow(1, { placeId: 1 }) },
    {
      'places.list': () => [...places],
      'places.add': () => {
        places.push(aPlace(3, 'Loft'));
        machine.tell('changed', { yard: null, topics: ['places'] });
        return places[2]!;
      },
      'stations.find': () => ({ years: [], more: 0, isClear: false, onlyState: null }),
      'boards.move': () => ({ moved: 1 }),
    },
  );
  await user.click(await screen.findByRole('button', { name: 'Move' }));
  const form = within(await screen.findByRole('dialog', { name: 'Move OAK-01' }));
  const to = await form.findByLabelText('To');
  const offered = () =>
    within(to)
      .getAllByRole('option')
      .map((option) => option.textContent);
  return { machine, user, form, to, offered };
}

beforeEach(forgetEverything);
afterEach(cleanup);

test('a board is moved to another place, never to where it is', async () => {
  const { machine, user, form, to, offered } = await openMove();
  expect(offered()).toEqual(['Choose a place', 'Shop']);
  await user.click(form.getByRole('button', { name: 'Move' }));
  expect(form.getByText('Choose a place.', { selector: '.field-error' })).toBeTruthy();
  expect(machine.inputsOf('boards.move')).toEqual([]);
  await user.selectOptions(to, 'Shop');
  await user.click(form.getByRole('button', { name: 'Move' }));
  expect(machine.inputsOf('boards.move')).toMatchObject([{ boardIds: [1], placeId: 2 }]);
});

test('a place that is not there yet is added on the way, and the board can go there', async () => {
  const { machine, user, form, to, offered } = await openMove();
  await user.click(form.getByRole('button', { name: 'Add another place' }));
  const added = within(await screen.findByRole('dialog', { name: 'Add a place' }));
  await user.type(added.getByLabelText('Name'), 'Loft');
  await user.selectOptions(added.getByLabelText('Air'), 'Your own monthly averages');
  await user.click(added.getByLabelText('January, temperature'));
  await user.paste(Array.from({ length: 12 }, () => '12\t60').join('\n'));
  await user.click(added.getByRole('button', { name: 'Add' }));
  expect(screen.queryByRole('dialog', { name: 'Add a place' })).toBeNull();
  // Adding it moves nothing yet.
  expect(machine.inputsOf('boards.move')).toEqual([]);
  expect(offered()).toEqual(['Choose a place', 'Shop', 'Loft']);
  expect(to).toHaveProperty('value', '3');
  await user.click(form.getByRole('button', { name: 'Move' }));
  expect(machine.inputsOf('boards.move')).toMatchObject([{ boardIds: [1], placeId: 3 }]);
});

async function openMoves(more: Parameters<typeof openBoard>[1]) {
  const opened = openBoard(
    { ...found, board: aBoardRow(1, { placeId: 2 }) },
    {
      'places.list': () => [aPlace(1, 'Fence row'), aPlace(2, 'Pole shed'), aPlace(3, 'Shop')],
      'moves.together': () => ({ boards: 12 }),
      ...more,
    },
    { tab: 'about' },
  );
  return { ...opened, list: await panel('About and moves') };
}

test('a move is corrected for all boards moved with it, and its question is answered by saving again', async () => {
  let refusals = 1;
  const { machine, user, list } = await openMoves({
    'moves.edit': () => {
      if (refusals-- > 0)
        throw new Refusal(
          message('refusal.moved-or-probed-first', { boardCode: 'OAK-01', movedOn: found.moves[1]!.since }),
        );
      return { ...found.moves[1]!, version: 2 };
    },
  });
  await user.click(list.getByRole('button', { name: /^Edit the move to Pole shed on / }));
  const form = within(await screen.findByRole('dialog', { name: 'Move of OAK-01' }));
  await user.selectOptions(await form.findByLabelText('To'), 'Shop');
  await user.click(await form.findByLabelText('Change it for all 12 boards moved with it'));
  await user.click(form.getByRole('button', { name: 'Save' }));
  expect(await form.findByText(/^OAK-01 was also probed on .+\. Which came first\?$/)).toBeTruthy();
  await user.click(form.getByLabelText('Moved, then probed'));
  await user.click(form.getByRole('button', { name: 'Save' }));
  const edit = { id: 2, basedOn: 1, changed: { placeId: 3 }, together: true };
  expect(machine.inputsOf('moves.edit')).toMatchObject([edit, { ...edit, order: 'moved-first' }]);
  expect(screen.queryByRole('dialog')).toBeNull();
});

test('a move that never was is deleted after saying what then counts', async () => {
  const { machine, user, list } = await openMoves({
    'moves.delete': () => ({ act: crypto.randomUUID(), boardIds: [1] }),
  });
  await user.click(list.getByRole('button', { name: /^Delete the move to Pole shed on / }));
  const form = within(await screen.findByRole('dialog', { name: 'Delete this move of OAK-01?' }));
  expect(form.getByText(/^OAK-01 is then in Fence row for all that time\./)).toBeTruthy();
  await user.click(form.getByRole('button', { name: 'Delete' }));
  expect(machine.inputsOf('moves.delete')).toMatchObject([{ id: 2, basedOn: 1, together: false }]);
});

test('where no place is dry enough, the board’s page has the form of a heated room', async () => {
  const answer = answerOf(null);
  const { user } = openBoard(found, {
    'stations.find': () => ({ years: [], more: 0, isClear: false, onlyState: null }),
    'boards.forecast': () => ({
      ...answer,
      judgement: {
        ...answer.judgement,
        next: {
          step: 'move',
          due: 'add-place',
          placeId: null,
          why: message('next-step.no-place-dry-enough'),
        },
      },
    }),
  });
  await user.click(await screen.findByRole('button', { name: 'Add a place' }));
  const form = within(await screen.findByRole('dialog', { name: 'Add a place' }));
  expect(form.getByLabelText('Kind')).toHaveProperty('value', 'heated-room');
  expect(form.getByLabelText('Air')).toHaveProperty('value', 'heated');
});
