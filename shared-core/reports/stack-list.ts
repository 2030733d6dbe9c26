import type { StackList } from '../contract/report.ts';
import type { Message } from '../words/message.ts';
import type { Words } from '../words/words.ts';
import { sizeText } from './board-parts.ts';
import { type Cell, type Flow, rule, textLine } from './flow.ts';

/** High enough for a carpenter's pencil and cold fingers: common practice, no source. */
const ROW_MM = 15;
/** Blank cells where no plan says how many. */
const USUAL_SPOTS = 4;
/** More than this are too narrow to write in. */
const MOST_SPOTS = 6;

/** The boards of a stack with blank cells: what the pins read is written on it at the stack, and typed in later. */
export function stackList({ stack, boards }: StackList, flow: Flow, words: Words): void {
  const { say, formats } = words;
  flow.text(say('report.title.list'));
  flow.title(stack.name);
  flow.gap(4);
  blanks(flow, words);
  flow.gap(3);
  flow.text(say('report.list.how'));
  flow.text(say('report.list.pins'), 'bold');
  flow.gap(3);
  if (boards.length < stack.boards)
    flow.text(say('report.first-boards', { first: boards.length, boards: stack.boards }));
  if (boards.length === 0) return;
  const planned = Math.max(0, ...boards.map(({ spots }) => spots.length));
  const cells = Math.min(MOST_SPOTS, planned === 0 ? USUAL_SPOTS : planned);
  const alike = Array.from({ length: cells }, (_, index) => alikeAlong(boards, index));
  flow.table({
    sizePt: 11,
    writtenRowMm: ROW_MM,
    columns: [
      { head: say('report.column.board'), share: 34 },
      ...alike.map((along, index) => ({
        head:
          along === null
            ? say('report.list.spot', { number: index + 1 })
            : say('report.list.spot-along', { number: index + 1, along }),
        share: 20,
      })),
      { head: say('report.column.note'), share: 24 },
    ],
    rows: boards.map((board) => [
      {
        lines: [board.code],
        face: 'bold',
        below: [sizeText(board, words), formats.named(board.speciesName), whereText(board, words)].filter(
          (text) => text !== '',
        ),
      },
      ...Array.from({ length: cells }, (_, index): Cell => {
        const spot = board.spots[index];
        if (spot === undefined) return { lines: [say('report.list.extra')], sizePt: 8 };
        const depth = say(`board.${spot.depth}`);
        return {
          lines: [
            spot.depthMm === null ? depth : `${depth} ${formats.shortLength(spot.depthMm)}`,
            ...(alike[index] === null ? [say(spot.along)] : []),
          ],
          sizePt: 8,
        };
      }),
      { lines: [] },
    ]),
  });
}

/** Where along the board that spot is, if it is at the same place of all: it is then said once. */
function alikeAlong(boards: StackList['boards'], index: number): Message | null {
  const [first, ...others] = boards.flatMap(({ spots }) => spots[index]?.along ?? []);
  const key = JSON.stringify(first);
  return first !== undefined && others.every((along) => JSON.stringify(along) === key) ? first : null;
}

function whereText({ layer, column }: StackList['boards'][number], { say }: Words): string {
  if (layer === null) return '';
  return column === null ? say('stacks.layer', { layer }) : say('report.layer-and-column', { layer, column });
}

/** What holds for the whole round: a name with a line behind it, four of them. */
function blanks(flow: Flow, { say }: Words): void {
  const rows = [
    [say('report.list.round-date'), say('report.list.meter')],
    [say('report.list.wood-temp'), say('report.list.air')],
  ];
  for (const row of rows) {
    flow.drawing(10, ({ xMm, yMm, widthMm }) =>
      row.flatMap((name, index) => {
        const left = xMm + (index * widthMm) / 2;
        return [
          textLine(name, { xMm: left, topMm: yMm + 4, face: 'bold', sizePt: 9.5 }),
          rule(left + 34, yMm + 8, left + widthMm / 2 - 4, yMm + 8),
        ];
      }),
    );
  }
}
