import { followingCode } from './board-code.ts';
import { positionInStack, type StackOrder } from './stack-order.ts';
import type { NewBoard } from './yard.ts';

/** The IDs of boards added together, each continuing the one before. */
export function codesFrom(first: string, count: number): string[] {
  const codes = [first];
  for (let code = first; codes.length < count; codes.push(code)) code = followingCode(code);
  return codes;
}

/** Boards alike but for their IDs and where they lie: one alone as it was typed, several as they are laid. */
export function manyBoards(
  board: NewBoard,
  codes: readonly string[],
  stackOrder: StackOrder | null,
): NewBoard[] {
  return codes.map((code, index) => {
    if (codes.length === 1) return { ...board, code };
    const position = stackOrder ? positionInStack(stackOrder, index) : { layer: null, column: null };
    return { ...board, code, ...position };
  });
}
