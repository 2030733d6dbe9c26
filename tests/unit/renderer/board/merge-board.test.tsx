// @vitest-environment jsdom
import '../ui/drawing-room.ts';
import { cleanup, screen, waitFor, within } from '@testing-library/react';
import { afterEach, beforeEach, expect, test } from 'vitest';
import type { TwiceRecord } from '../../../../shared-core/contract/entered-twice.ts';
import type { BoardRow } from '../../../../shared-core/contract/yard.ts';
import { expectNoBarriers, forgetEverything } from '../shell/machine.ts';
import { aBoardRow } from '../stacks/a-yard.ts';
import { found, openBoard } from './open-board.tsx';

beforeEach(forgetEverything);
afterEach(cleanup);

const own = aBoardRow(1, { widthMm: 200, lengthMm: null, note: 'Knot' });
const other = aBoardRow(2, { widthMm: 210, lengthMm: 2400, note: 'Stain', version: 4 });
const record = (board: BoardRow, more: Partial<TwiceRecord> = {}): TwiceRecord => ({
  board,
  moves: [{ ...found.moves[0]!, boardId: board.id }],
  endUseName: 'Furniture',
  projectName: null,
  readings: 3,
  ...more,
});

async function openMerge(two: TwiceRecord | Promise<never> = record(other), one: TwiceRecord = record(own)) {
  const { machine, user } = openBoard(
    { ...found, board: own },
    {
      'boards.alike': ({ search }) => [other].filter(({ code }) => code.includes(search)),
      'boards.twice': () => (two instanceof Promise ? two : { own: one, other: two }),
      'boards.merge': ({ id }) => ({ id }),
    },
  );
  await user.click(await screen.findByRole('button', { name: 'More' }));
  await user.click(screen.getByRole('menuitem', { name: 'Merge with another board' }));
  return { machine, user, form: within(await screen.findByRole('dialog')) };
}
type Opened = Awaited<ReturnType<typeof openMerge>>;
const choose = async ({ user, form }: Opened) => {
  await user.click(await form.findByRole('radio', { name: new RegExp(`^${other.code} `) }));
  await form.findByRole('group', { name: 'Which ID stays?' });
};
const press = ({ user, form }: Opened) => user.click(form.getByRole('button', { name: 'Merge' }));

test('what differs is side by side, and what one record knows alone is proposed', async () => {
  const opened = await openMerge();
  const { machine, form } = opened;
  await choose(opened);
  const group = (name: string) => within(form.getByRole('group', { name }));
  expect(group('Width').getByRole<HTMLInputElement>('radio', { name: `${own.code}: 200 mm` }).checked).toBe(
    true,
  );
  expect(group('Length').getByRole<HTMLInputElement>('radio', { name: `${other.code}: 2.4 m` }).checked).toBe(
    true,
  );
  expect(group('Length').getByRole('radio', { name: `${own.code}: not given` })).toBeTruthy();
  // They are of one species, and were in the same places.
  for (const name of ['Species', 'Moves', 'Reserved for'])
    expect(form.queryByRole('group', { name })).toBeNull();
  await expectNoBarriers();
  await press(opened);
  await waitFor(() => expect(screen.queryByRole('dialog')).toBeNull());
  expect(machine.inputsOf('boards.merge')).toEqual([
    {
      id: 1,
      basedOn: own.version,
      otherId: 2,
      otherBasedOn: 4,
      taken: ['length'],
      note: 'both',
      moves: 'both',
      reservation: 'own',
    },
  ]);
});

test('where the other ID stays, what was chosen is the same seen from there', async () => {
  const opened = await openMerge(
    record(other, { moves: found.moves, projectName: 'Table' }),
    record(own, { projectName: 'Desk' }),
  );
  const { machine, user, form } = opened;
  await choose(opened);
  const pick = (group: string, name: RegExp) =>
    user.click(within(form.getByRole('group', { name: group })).getByRole('radio', { name }));
  await pick('Which ID stays?', new RegExp(other.code));
  await pick('Note', /: Knot$/);
  await pick('Moves', new RegExp(`^${other.code}: Fence row since .*Pole shed since`));
  await pick('Reserved for', /: Desk$/);
  await press(opened);
  await waitFor(() => expect(screen.queryByRole('dialog')).toBeNull());
  expect(machine.inputsOf('boards.merge')).toEqual([
    {
      id: 2,
      basedOn: 4,
      otherId: 1,
      otherBasedOn: own.version,
      taken: ['width'],
      note: 'other',
      moves: 'own',
      reservation: 'other',
    },
  ]);
  expect(location.hash).toBe('#/boards/2');
});

test('other species and thicknesses are warned of', async () => {
  const opened = await openMerge(
    record({ ...other, speciesId: 'oak-red', speciesName: 'Red oak', thicknessMm: own.thicknessMm + 25 }),
  );
  await choose(opened);
  expect(opened.form.getByText(/^The species differ\./)).toBeTruthy();
  expect(opened.form.getByText(/^The thicknesses differ\./)).toBeTruthy();
});

test('a board is found by its ID, and without one nothing is merged', async () => {
  const opened = await openMerge();
  const { machine, user, form } = opened;
  await press(opened);
  expect(await form.findByText('Choose the board that is the same.')).toBeTruthy();
  await user.type(form.getByRole('searchbox'), 'nothing');
  expect(await form.findByText('No other board has an ID like that.')).toBeTruthy();
  expect(machine.inputsOf('boards.merge')).toEqual([]);
});

test('nothing is merged before both boards were compared', async () => {
  const opened = await openMerge(new Promise<never>(() => {}));
  const { machine, user, form } = opened;
  await user.click(await form.findByRole('radio', { name: new RegExp(`^${other.code} `) }));
  await press(opened);
  expect(await form.findByText('Nothing was merged. Wait until both boards are compared.')).toBeTruthy();
  expect(machine.inputsOf('boards.merge')).toEqual([]);
});

test('a board that was merged names the one that stays, and cannot be brought back', async () => {
  const at = new Date(2026, 10, 3, 12).toISOString();
  openBoard({
    ...found,
    board: aBoardRow(1, { archived: { code: 'merged', note: '', at, into: 'WAL-09' } }),
    becameOf: [{ boardId: 9, code: 'WAL-09', how: 'merged', at }],
  });
  expect(await screen.findByText(/^Merged into WAL-09 on Nov/)).toBeTruthy();
  expect(screen.getByRole('link', { name: 'WAL-09' }).getAttribute('href')).toBe('#/boards/9');
  expect(screen.queryByRole('button', { name: 'Bring back' })).toBeNull();
});
