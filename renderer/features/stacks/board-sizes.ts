import { followingCode } from '../../../shared-core/contract/board-code.ts';
import { MOST_AT_ONCE } from '../../../shared-core/contract/first-stack.ts';
import { problemOfField } from '../../../shared-core/contract/validation.ts';
import { givenBoardSchema } from '../../../shared-core/contract/yard.ts';
import type { DisplayUnits } from '../../../shared-core/units/length.ts';
import { typedLengthMm, typedLongLengthMm } from '../../../shared-core/units/typed-length.ts';
import { type Message, message } from '../../../shared-core/words/message.ts';
import type { Cell } from '../../form/grid-moves.ts';

/** What a column of the grid holds. */
export const SIZE_COLUMNS = ['code', 'widthMm', 'lengthMm'] as const;
/** What was typed for each board, column by column. */
export type TypedSizes = readonly (readonly string[])[];

/** A board of the grid. What is blank there is null. */
export interface SizedBoard {
  code: string;
  widthMm: number | null;
  lengthMm: number | null;
  /** By column; null where nothing is wrong. */
  problems: readonly (Message | null)[];
}

/** The boards of a grid: an ID that is left blank goes on from the one above. */
export function sizedBoards(
  typed: TypedSizes,
  firstCode: string,
  boards: number,
  units: DisplayUnits,
): SizedBoard[] {
  let next = firstCode;
  return Array.from({ length: boards }, (_, row) => {
    const [codeText = '', widthText = '', lengthText = ''] = typed[row] ?? [];
    const code = codeText.trim().toUpperCase() || next;
    next = followingCode(code);
    const widthMm = typedLengthMm(widthText, units);
    const lengthMm = typedLongLengthMm(lengthText, units);
    const problems = [
      problemOf('code', code),
      Number.isNaN(widthMm)
        ? message('board.not-a-length', { typedText: widthText, exampleMm: 203.2 })
        : problemOf('widthMm', widthMm),
      Number.isNaN(lengthMm)
        ? message('board.not-a-board-length', { typedText: lengthText, exampleLengthMm: 2400 })
        : problemOf('lengthMm', lengthMm),
    ];
    return { code, widthMm, lengthMm, problems };
  });
}

function problemOf(field: (typeof SIZE_COLUMNS)[number], value: unknown): Message | null {
  const issue = givenBoardSchema.shape[field].safeParse(value).error?.issues[0];
  return issue ? problemOfField(field, issue) : null;
}

/** What is typed, with another text in one cell. */
export const withSize = (typed: TypedSizes, { row, column }: Cell, text: string): TypedSizes =>
  Array.from({ length: Math.max(typed.length, row + 1) }, (_, at) =>
    at === row
      ? SIZE_COLUMNS.map((_, each) => (each === column ? text : (typed[row]?.[each] ?? '')))
      : (typed[at] ?? []),
  );

/**
 * Fills cells with a block, its first at a cell. A first row without any number is the names of the columns.
 * @returns what is typed then, of how many boards, and how many values found no cell
 */
export function pastedSizes(
  typed: TypedSizes,
  boards: number,
  at: Cell,
  block: readonly (readonly string[])[],
): { typed: TypedSizes; boards: number; beyond: number } {
  const rows = block[0]?.some((text) => /\d/.test(text)) ? block : block.slice(1);
  let filled = typed;
  let beyond = 0;
  let most = boards;
  for (const [down, texts] of rows.entries()) {
    for (const [across, text] of texts.entries()) {
      const cell = { row: at.row + down, column: at.column + across };
      if (text.trim() === '') continue;
      if (cell.row >= MOST_AT_ONCE || cell.column >= SIZE_COLUMNS.length) {
        beyond += 1;
        continue;
      }
      filled = withSize(filled, cell, text.trim());
      most = Math.max(most, cell.row + 1);
    }
  }
  return { typed: filled, boards: most, beyond };
}
