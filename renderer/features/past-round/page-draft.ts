import { z } from 'zod';
import { givenDepthSchema } from '../../../shared-core/contract/requests/rounds.ts';
import { readCell } from '../../../shared-core/labels/typed-value.ts';
import type { ColumnDepth } from '../../../shared-core/probing/readings/page-spots.ts';
import { instantSchema } from '../../../shared-core/time.ts';
import type { ReadingUnit } from '../../../shared-core/wood/moisture/corrected.ts';

/** NaN, for what cannot be read, is null in JSON. */
const numberSchema = z.number().nullable();
export const pageDraftSchema = z.object({
  day: z.string().nullable(),
  /** "14:05"; blank where only the day is known. */
  time: z.string(),
  /** Left out: the one that is typed from. */
  meterId: z.number().nullable().optional(),
  temperatureOf: z.enum(['wood', 'air', 'unknown']),
  tempC: numberSchema,
  depth: z.enum(['pins', 'typed', 'unknown']),
  /** Of each column, where they are typed. */
  depthsMm: z.array(numberSchema),
  columns: z.number().int().min(1),
  enterMoves: z.enum(['down', 'across']),
  /** Whether boards were at their first place that day, though it is known only later; null where it was not answered. */
  there: z.enum(['sawn', 'day', 'no']).nullable().default(null),
  /** Since when, for "day". */
  thereDay: z.string().nullable().default(null),
  /** Boards that were added to the page by their ID. */
  more: z.array(z.number()).default([]),
  /** What was typed, by the board's id and by column. */
  texts: z.record(z.string(), z.array(z.string())),
});
/** A page of a notebook while it is typed. */
export type PageDraft = z.infer<typeof pageDraftSchema>;

/** A board has two pairs of spots, or fewer. */
const USUAL_COLUMNS = 4;

export const blankPage: PageDraft = {
  day: null,
  time: '',
  temperatureOf: 'wood',
  tempC: null,
  depth: 'pins',
  depthsMm: [],
  columns: USUAL_COLUMNS,
  enterMoves: 'down',
  there: null,
  thereDay: null,
  more: [],
  texts: {},
};

export const textAt = ({ texts }: PageDraft, boardId: number, column: number): string =>
  texts[boardId]?.[column] ?? '';

type ReadCell = ReturnType<typeof readCell>;
/** A cell as it is read; null for a blank one. */
export const cellIn = (text: string, unit: ReadingUnit): ReadCell | null =>
  text.trim() === '' ? null : readCell(text, unit);

/** The columns of a line of which the meter showed only that they are more. */
export const aboveOf = (cells: readonly (ReadCell | null)[]): number[] =>
  cells.flatMap((cell, column) => (cell !== null && 'raw' in cell && cell.isAbove ? [column] : []));

/** How many cells have something in them. */
export const typedCells = ({ texts }: PageDraft): number =>
  Object.values(texts)
    .flat()
    .filter((text) => text?.trim()).length;

/** The boards with something in their line. */
export const typedBoards = ({ texts }: Pick<PageDraft, 'texts'>): number[] =>
  Object.entries(texts).flatMap(([id, each]) => (each.some((text) => text?.trim()) ? [Number(id)] : []));

/** How the depth can be given: pins of unknown length tell none. */
export const depthChoices = (pinsMm: number | null): PageDraft['depth'][] =>
  pinsMm === null ? ['typed', 'unknown'] : ['pins', 'typed', 'unknown'];

/** The page as it holds for a meter: without a pin length, the depth of its pins is unknown. */
export const withPins = (page: PageDraft, pinsMm: number | null): PageDraft =>
  depthChoices(pinsMm).includes(page.depth) ? page : { ...page, depth: 'unknown' };

/** The depths of the columns, as they are saved; a blank is unknown, and so is one that cannot be. */
export const depthsOf = ({ depth, depthsMm, columns }: PageDraft): ColumnDepth[] =>
  Array.from({ length: columns }, (_, column) => {
    if (depth !== 'typed') return depth;
    return givenDepthSchema.safeParse(depthsMm[column]).data ?? 'unknown';
  });

/** When it was written; null without a day that can be. Of today without a time: now. */
export function startOf({ day, time }: Pick<PageDraft, 'day' | 'time'>, now: Date): string | null {
  if (day === null) return null;
  const noon = new Date(`${day}T${time || '12:00'}`);
  if (Number.isNaN(noon.getTime())) return null;
  // Half of a year is typed.
  if (!instantSchema.safeParse(noon.toISOString()).success) return null;
  const isToday = noon.toDateString() === now.toDateString();
  return (time === '' && isToday ? now : noon).toISOString();
}

/**
 * Fills cells with a block, its first at a board and a column. The page gets the columns that the block needs.
 * @param boardIds   those of the page that can be typed into, from top to bottom
 * @returns the page, and how many values found no cell
 */
export function filled(
  page: PageDraft,
  boardIds: readonly number[],
  at: { boardId: number; column: number },
  block: readonly (readonly string[])[],
  mostColumns: number,
): { page: PageDraft; beyond: number } {
  const top = boardIds.indexOf(at.boardId);
  const texts = { ...page.texts };
  let { columns } = page;
  let beyond = 0;
  for (const [down, row] of block.entries()) {
    const boardId = boardIds[top + down];
    for (const [across, text] of row.entries()) {
      const column = at.column + across;
      if (text.trim() === '') continue;
      if (boardId === undefined || column >= mostColumns) {
        beyond += 1;
        continue;
      }
      texts[boardId] = withCell(texts[boardId], column, text.trim());
      columns = Math.max(columns, column + 1);
    }
  }
  return { page: { ...page, texts, columns }, beyond };
}

/** The texts of a board with another in one column. */
export const withCell = (texts: readonly string[] | undefined, column: number, text: string): string[] =>
  Array.from({ length: Math.max(texts?.length ?? 0, column + 1) }, (_, each) =>
    each === column ? text : (texts?.[each] ?? ''),
  );
