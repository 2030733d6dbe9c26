/** Two files of one yard, in each of which something else was corrected of a reading. */
import { expect, test, vi } from 'vitest';
import type { Side } from '../../../shared-core/contract/exchange.ts';
import { withYardOfTwo, yard } from '../app/yard-of-two.ts';
import { elsewhere } from './elsewhere.ts';

// Real threads on a busy computer.
vi.setConfig({ testTimeout: 60_000, hookTimeout: 60_000 });
withYardOfTwo({ forecastAfterMs: 600_000 });

const on = async (index: number) =>
  (await yard.query('boards.get', { id: yard.boards[index]!.id })).readings.map(
    ({ raw, savedRaw, excluded }) => ({
      raw,
      savedRaw,
      why: excluded && 'code' in excluded ? excluded.code : null,
    }),
  );
const move = async () => {
  const [reading] = (await yard.query('boards.get', { id: yard.boards[0]!.id })).readings;
  const readingId = reading!.id;
  const boardId = yard.boards[1]!.id;
  await yard.command('readings.moveToBoard', { readingId, boardId, spotIndex: null, scope: 'reading' });
};
async function bringIn(file: string, rest: Side): Promise<void> {
  await yard.command('exchange.merge', { file, fileName: 'theirs.sqlite', rest, others: [], work: null });
  await yard.query('yard.info', {});
}

test('a value corrected in one holds on the board to which the other moved the reading', async () => {
  await yard.beginRound();
  const file = await elsewhere((theirs) => theirs.amendments.amendReading(1, 'raw', 14.2, yard.now()));
  await move();
  await bringIn(file, 'mine');
  expect(await on(1)).toEqual([{ raw: 14.2, savedRaw: 12.4, why: null }]);
  expect(await on(0)).toMatchObject([{ why: 'moved' }]);
});

test.each<[Side, string, string | null]>([
  ['mine', 'moved', null],
  ['theirs', 'defect', 'unmoved'],
])(
  'moved here and excluded there, of which %s is chosen: it counts on one board at most',
  async (rest, here, there) => {
    await yard.beginRound();
    const file = await elsewhere((theirs) =>
      theirs.amendments.exclude('reading', 1, { code: 'defect' }, yard.now()),
    );
    await move();
    await bringIn(file, rest);
    expect(await on(0)).toMatchObject([{ why: here }]);
    expect(await on(1)).toMatchObject([{ why: there }]);
  },
);
