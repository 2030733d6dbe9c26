import { expect, test } from 'vitest';
import { doSteps, emptyYard, firstSteps, mergeBoards, rip } from '../exchange/a-filled-yard.ts';

test('two pieces of one board are merged while their calls are still due', () => {
  const yard = emptyYard();
  doSteps(yard, firstSteps, 0);
  const { rows } = yard.boards.page({ stackId: null, search: '', offset: 0, limit: 10 });
  const { id } = rows.find((board) => yard.readings.roundsOfBoard(board.id).length > 0)!;
  yard.transaction(() => {
    const at = '2026-02-01T08:00:00.000Z';
    yard.acts.begin({ id: crypto.randomUUID(), request: 'test', inputHash: '', at, who: 'test' });
    const [kept, other] = rip(yard, id, ['P1', 'P2'], at) as [number, number];
    mergeBoards(yard, kept, other, at);
    yard.acts.finish(null);
    expect(yard.origins.ancestors(kept).map(({ boardId }) => boardId)).toEqual([id, other]);
    expect(yard.readings.roundsOfBoard(kept)).toEqual(yard.readings.roundsOfBoard(id));
  });
  yard.close();
});
