import type { BoardRow } from './yard.ts';

/** Where a board is in its stack. */
type Placed = Pick<BoardRow, 'layer' | 'column'>;

/** Which way an arrow key leads over the stack. */
const STEPS: Record<string, { up: number; right: number }> = {
  ArrowUp: { up: 1, right: 0 },
  ArrowDown: { up: -1, right: 0 },
  ArrowLeft: { up: 0, right: -1 },
  ArrowRight: { up: 0, right: 1 },
};

/** The nearest board in the key's direction: in the same layer or column first, else the one least out of line. */
export function nextInStack<B extends Placed>(
  key: string,
  from: Placed,
  placed: readonly B[],
): B | undefined {
  const step = STEPS[key];
  if (step === undefined) return undefined;
  const { up, right } = step;
  const away = (board: Placed) => {
    const layers = (board.layer ?? 1) - (from.layer ?? 1);
    const columns = (board.column ?? 1) - (from.column ?? 1);
    return { ahead: layers * up + columns * right, aside: Math.abs(up === 0 ? layers : columns) };
  };
  return placed
    .filter((board) => away(board).ahead > 0 && (up !== 0 || away(board).aside === 0))
    .toSorted((a, b) => away(a).ahead - away(b).ahead || away(a).aside - away(b).aside)[0];
}
