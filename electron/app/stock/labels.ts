import { createHash } from 'node:crypto';
import { setImmediate } from 'node:timers/promises';
import { Refusal } from '../../../shared-core/contract/answer.ts';
import { type LabelBoard, MOST_LABELS } from '../../../shared-core/contract/requests/labels.ts';
import type { BoardRow } from '../../../shared-core/contract/yard.ts';
import { type LabelContent, labelContentSchema, labelGist } from '../../../shared-core/labels/label.ts';
import { problemOfUsed } from '../../../shared-core/labels/sheet.ts';
import { unitsOfRegion } from '../../../shared-core/units/length.ts';
import { english } from '../../../shared-core/words/en/index.ts';
import { thicknessOf } from '../../../shared-core/words/message.ts';
import { createWords } from '../../../shared-core/words/words.ts';
import type { YardReader } from '../../store/yard.ts';
import { type AppContext, orRefuse, type QueryContext } from '../context.ts';
import type { Commands, Queries } from '../handlers.ts';
import type { LongWork } from '../long-work.ts';
import { settingsOf } from '../yard/settings.ts';
import type { LabelPdf } from './label-pdf.ts';

function contentOf(yard: YardReader, board: BoardRow): LabelContent {
  const { endUseId } = orRefuse(yard.boards.judgedBy(board.id), 'board');
  const endUseName = orRefuse(yard.endUses.get(endUseId), 'use').name;
  return labelContentSchema.parse({ ...board, thickness: thicknessOf(board), endUseName });
}

const contents = (yard: YardReader, boardIds: readonly number[]): LabelContent[] =>
  boardIds.map((id) => contentOf(yard, orRefuse(yard.boards.get(id), 'board')));

const hashOf = (content: LabelContent): string =>
  createHash('sha256').update(labelGist(content)).digest('base64');

function labelOf(yard: YardReader, board: BoardRow): LabelBoard['label'] {
  const printed = yard.labelPrints.newestHash(board.id);
  if (printed === undefined) return 'none';
  return printed === hashOf(contentOf(yard, board)) ? 'current' : 'outdated';
}

/** So many labels are read from the file at a time, some milliseconds, and then others have their turn. */
const READ_AT_A_TIME = 20;

export const labelQueries = (context: QueryContext, longWork: LongWork, pdfOf: LabelPdf) =>
  ({
    'labels.boards': (which) => {
      const yard = context.yard();
      if (which.stackId !== null) orRefuse(yard.stacks.get(which.stackId), 'stack');
      const { total, rows } = yard.boards.page({ ...which, offset: 0, limit: MOST_LABELS });
      const boards = rows.map((board) => ({
        id: board.id,
        code: board.code,
        speciesName: board.speciesName,
        call: board.latest?.call ?? null,
        label: labelOf(yard, board),
      }));
      return { total, boards };
    },

    'labels.contents': ({ boardIds }) => {
      const yard = context.yard();
      return boardIds.map((id) => {
        const board = yard.boards.get(id);
        return board ? contentOf(yard, board) : null;
      });
    },

    'labels.pdf': ({ boardIds, kind, used, region, work }, window) =>
      longWork.run(window, work, async ({ tell, signal }) => {
        const { units, labelLayouts } = settingsOf(context.yard());
        const layout = labelLayouts[kind];
        const display = { ...region, units: units ?? unitsOfRegion(region.locale), today: null };
        const words = createWords({ catalog: english, ...display });
        const problem = problemOfUsed(used, layout);
        if (problem) throw new Refusal(problem);
        const contents: LabelContent[] = [];
        for (const id of boardIds) {
          contents.push(contentOf(context.yard(), orRefuse(context.yard().boards.get(id), 'board')));
          if (contents.length % READ_AT_A_TIME === 0) await setImmediate();
          signal.throwIfAborted();
        }
        const createdAt = new Date(context.now());
        const pdf = await pdfOf({ contents, layout, used, display, createdAt }, { tell, signal });
        return {
          pdfBase64: Buffer.from(pdf).toString('base64'),
          fileName: `labels-${words.formats.localDay(context.now())}.pdf`,
        };
      }),
  }) satisfies Partial<Queries>;

export const labelCommands = (context: AppContext) =>
  ({
    'labels.recordPrint': ({ boardIds }) => {
      const yard = context.yard();
      const printedAt = context.now();
      contents(yard, boardIds).forEach((content, index) => {
        yard.labelPrints.add({ boardId: boardIds[index] as number, contentHash: hashOf(content), printedAt });
      });
      return {};
    },
  }) satisfies Partial<Commands>;
