import { problemOf } from '../../../shared-core/contract/validation.ts';
import {
  type Board,
  boardCodeSchema,
  type NewBoard,
  type Sawing,
} from '../../../shared-core/contract/yard.ts';
import type { DisplayUnits } from '../../../shared-core/units/length.ts';
import { typedLengthMm, typedLengthText, typedQuarters } from '../../../shared-core/units/typed-length.ts';
import type { BarkSide } from '../../../shared-core/wood/drying/faces-of-board.ts';
import { type Message, message } from '../../../shared-core/words/message.ts';

/** A board as a form's fields have it. */
export interface BoardDraft {
  code: string;
  speciesId: string;
  /** "27", "5/4", "1 1/16 in". */
  thickness: string;
  width: string;
  lengthMm: number | null;
  sawnOn: string;
  sawing: Sawing;
  /** As the thickness is typed. */
  ringRadius: string;
  barkSide: BarkSide;
  barkOffOn: string;
  log: string;
  layer: number | null;
  column: number | null;
  note: string;
}

export const emptyBoardDraft: BoardDraft = {
  code: '',
  speciesId: '',
  thickness: '',
  width: '',
  lengthMm: null,
  sawnOn: '',
  sawing: 'unknown',
  ringRadius: '',
  barkSide: 'unknown',
  barkOffOn: '',
  log: '',
  layer: null,
  column: null,
  note: '',
};

const shortText = (mm: number | null, units: DisplayUnits) => (mm === null ? '' : typedLengthText(mm, units));

const thicknessText = ({ thicknessMm, thicknessQuarters }: NewBoard, units: DisplayUnits) =>
  thicknessQuarters === null ? shortText(thicknessMm, units) : `${thicknessQuarters}/4`;

export function draftOfBoard(board: NewBoard, units: DisplayUnits): BoardDraft {
  return {
    code: board.code,
    speciesId: board.speciesId,
    thickness: thicknessText(board, units),
    width: shortText(board.widthMm, units),
    lengthMm: board.lengthMm,
    sawnOn: board.sawnOn ?? '',
    sawing: board.sawing,
    ringRadius: shortText(board.ringRadiusMm, units),
    barkSide: board.barkSide,
    barkOffOn: board.barkOffOn ?? '',
    log: board.log,
    layer: board.layer,
    column: board.column,
    note: board.note,
  };
}

/** The board's end as far as it can be drawn from the draft; null where its sizes are no lengths. */
export function endOf({ thickness, width, ringRadius, sawing, barkSide }: BoardDraft, units: DisplayUnits) {
  const [thicknessMm, widthMm, ringRadiusMm] = [thickness, width, ringRadius].map((typed) => {
    const mm = typedLengthMm(typed, units);
    return mm !== null && mm > 0 ? mm : null;
  });
  if (!thicknessMm) return null;
  return { sawing, barkSide, thicknessMm, widthMm: widthMm ?? null, ringRadiusMm: ringRadiusMm ?? null };
}

export type BoardProblems = Partial<Record<keyof BoardDraft, Message>>;

const outside = (value: number | null, least: number, most: number) =>
  value !== null && !(value >= least && value <= most);

/** What is wrong with the draft, by field; empty when it can be saved. */
export function boardProblems(draft: BoardDraft, units: DisplayUnits): BoardProblems {
  const problems: BoardProblems = {};
  const code = boardCodeSchema.safeParse(draft.code);
  if (!code.success) problems.code = problemOf(code.error);
  if (draft.speciesId === '') problems.speciesId = message('board.species-missing');
  const thicknessMm = typedLengthMm(draft.thickness, units);
  if (thicknessMm === null) problems.thickness = message('board.thickness-missing');
  else if (Number.isNaN(thicknessMm)) problems.thickness = notALength(draft.thickness);
  else if (outside(thicknessMm, 3, 400)) problems.thickness = sizeOutside(3, 400);
  const widthMm = typedLengthMm(draft.width, units);
  if (Number.isNaN(widthMm)) problems.width = notALength(draft.width);
  else if (outside(widthMm, 10, 3000)) problems.width = sizeOutside(10, 3000);
  const ringRadius = ringRadiusProblem(draft.ringRadius, units);
  if (ringRadius !== null) problems.ringRadius = ringRadius;
  if (outside(draft.lengthMm, 50, 20_000)) {
    problems.lengthMm = message('board.length-outside', { leastLengthMm: 50, mostLengthMm: 20_000 });
  }
  if (draft.log.trim().length > 40) problems.log = message('board.log-too-long', { most: 40 });
  if (isNotCount(draft.layer, 500)) problems.layer = message('board.number-outside', { most: 500 });
  if (isNotCount(draft.column, 100)) problems.column = message('board.number-outside', { most: 100 });
  return problems;
}

/** What is wrong with a distance from the pith as it was typed; null where nothing is. */
export function ringRadiusProblem(typed: string, units: DisplayUnits): Message | null {
  const mm = typedLengthMm(typed, units);
  if (Number.isNaN(mm)) return notALength(typed);
  return outside(mm, 5, 3000) ? sizeOutside(5, 3000) : null;
}

const isNotCount = (value: number | null, most: number) =>
  value !== null && (!Number.isInteger(value) || outside(value, 1, most));

const notALength = (text: string) => message('board.not-a-length', { typedText: text.trim(), exampleMm: 27 });

const sizeOutside = (leastMm: number, mostMm: number) => message('board.size-outside', { leastMm, mostMm });

/** The board of a draft without problems. */
export function boardOf(draft: BoardDraft, stackId: number, units: DisplayUnits): NewBoard {
  const widthMm = typedLengthMm(draft.width, units);
  return {
    code: boardCodeSchema.parse(draft.code),
    stackId,
    speciesId: draft.speciesId,
    thicknessMm: typedLengthMm(draft.thickness, units) ?? Number.NaN,
    thicknessQuarters: typedQuarters(draft.thickness),
    widthMm,
    lengthMm: draft.lengthMm,
    sawnOn: draft.sawnOn || null,
    sawing: draft.sawing,
    ringRadiusMm: typedLengthMm(draft.ringRadius, units),
    barkSide: draft.barkSide,
    barkOffOn: draft.barkOffOn || null,
    log: draft.log.trim(),
    layer: draft.layer,
    column: draft.column,
    note: draft.note.trim(),
  };
}

/** An edited board. Sizes whose text is as it was shown keep their exact value, because what is shown is rounded. */
export function changedBoard(board: Board, draft: BoardDraft, units: DisplayUnits): Board {
  const shown = draftOfBoard(board, units);
  const made = boardOf(draft, board.stackId, units);
  return {
    ...made,
    id: board.id,
    thicknessMm: draft.thickness === shown.thickness ? board.thicknessMm : made.thicknessMm,
    widthMm: draft.width === shown.width ? board.widthMm : made.widthMm,
    ringRadiusMm: draft.ringRadius === shown.ringRadius ? board.ringRadiusMm : made.ringRadiusMm,
  };
}
