import { followingCode } from '../../../shared-core/contract/board-code.ts';
import { MOST_AT_ONCE } from '../../../shared-core/contract/first-stack.ts';
import { problemOfField } from '../../../shared-core/contract/validation.ts';
import { givenBoardSchema } from '../../../shared-core/contract/yard.ts';
import { pastedBoards } from '../../../shared-core/import/pasted-boards.ts';
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
  /** By column: what can be, and is more often a slip of the hand; null where nothing is. */
  questions: readonly (Message | null)[];
}

/** The boards of a grid: an ID that is left blank goes on from the one above. */
export function sizedBoards(
  typed: TypedSizes,
  firstCode: string,
  boards: number,
  units: DisplayUnits,
): SizedBoard[] {
  let next = firstCode;
  const sized = Array.from({ length: boards }, (_, row) => {
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
    const questions = [
      null,
      isUnusual('width', widthMm) ? message('stacks.size-wide', { widthMm }) : null,
      isUnusual('length', lengthMm) ? message('stacks.size-long', { boardLengthMm: lengthMm }) : null,
    ].map((question, column) => (problems[column] === null ? question : null));
    return { code, widthMm, lengthMm, problems, questions };
  });
  return withTwice(sized);
}

/** Between these, a board is as wide and as long as nearly all are, mm. Common practice, no source. */
const USUAL_MM = { width: [40, 1250], length: [300, 8000] } as const;

function isUnusual(of: keyof typeof USUAL_MM, mm: number | null): mm is number {
  const [least, most] = USUAL_MM[of];
  return mm !== null && (mm < least || mm > most);
}

/** Marks each of the lines that have the same ID. */
function withTwice(sized: readonly SizedBoard[]): SizedBoard[] {
  const linesOf = new Map<string, number[]>();
  for (const [row, { code }] of sized.entries()) linesOf.set(code, [...(linesOf.get(code) ?? []), row + 1]);
  return sized.map((board, row) => {
    const others = linesOf.get(board.code)!.filter((line) => line !== row + 1);
    if (others.length === 0) return board;
    const twice = message('stacks.size-twice', { boardCode: board.code, lines: others });
    return { ...board, problems: board.problems.with(0, twice) };
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

/** What was pasted into the grid. */
export interface Pasted {
  typed: TypedSizes;
  boards: number;
  /** What was not taken, as sentences. */
  leftOut: readonly Message[];
}

/**
 * Fills the lines from a cell on with copied cells, and makes as many boards. What was copied blank is blank then.
 *
 * @param today  local day
 * @returns      why nothing was taken, where nobody can know what is in its columns
 */
export function pastedSizes(
  typed: TypedSizes,
  boards: number,
  at: Cell,
  block: readonly (readonly string[])[],
  today: string,
): Pasted | { problem: Message } {
  const found = pastedBoards(block, { firstColumn: at.column, rowsThere: boards - at.row, today });
  if ('problem' in found) return found;
  const rows = found.rows.slice(0, MOST_AT_ONCE - at.row);
  const beyond = found.rows.length - rows.length;
  let filled = typed;
  for (const [down, texts] of rows.entries()) {
    for (const [column, text] of texts.entries()) {
      if (text !== null) filled = withSize(filled, { row: at.row + down, column }, text);
    }
  }
  return {
    typed: filled,
    boards: Math.max(boards, at.row + rows.length),
    leftOut: [
      ...found.leftOut,
      ...(beyond > 0 ? [message('stacks.pasted-beyond', { boards: beyond, most: MOST_AT_ONCE })] : []),
    ],
  };
}
