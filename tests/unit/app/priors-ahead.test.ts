import { expect, test, vi } from 'vitest';
import { priorNow } from '../../../shared-core/probing/suspicions/first-round.ts';
import { aimAt, type } from './in-round.ts';
import { withYardOfTwo, yard } from './yard-of-two.ts';

vi.mock('../../../shared-core/probing/suspicions/first-round.ts', async (original) => {
  const real = await original<typeof import('../../../shared-core/probing/suspicions/first-round.ts')>();
  return { ...real, priorNow: vi.fn(real.priorNow) };
});

withYardOfTwo();

const runs = () => vi.mocked(priorNow).mock.calls.length;

// What a board sawn then can be takes up to five runs of the drying model, which are tens of milliseconds.
test('the first readings of boards are saved without a run of the drying model', async () => {
  const sawn = ['2026-01-10', '2026-01-20', '2026-01-30'];
  await yard.command(
    'boards.add',
    sawn.map((sawnOn, index) => ({ ...yard.board(`WAL-1${index}`), sawnOn })),
  );
  const { id: roundId } = await yard.command('rounds.start', { stackId: yard.stack.id, woodTempC: 20 });

  await aimAt(roundId, 2);
  // Of this board and the one after it, once the person is there.
  await vi.waitFor(() => expect(runs()).toBe(2));
  await type(roundId, 12.6);
  expect(yard.heard('round.changed').at(-1)?.board.assessment?.readings).toHaveLength(1);
  expect(runs()).toBe(2);

  await aimAt(roundId, 3);
  await type(roundId, 12.6);
  expect(yard.heard('round.changed').at(-1)?.board.assessment?.readings).toHaveLength(1);
  // Nor while the board that was gone to is told; the third board's comes by itself.
  await vi.waitFor(() => expect(runs()).toBe(3));
});
