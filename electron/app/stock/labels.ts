import { createHash } from 'node:crypto';
import { setImmediate } from 'node:timers/promises';
import { Refusal } from '../../../shared-core/contract/answer.ts';
import type { Region } from '../../../shared-core/contract/region.ts';
import {
  type LabelBoard,
  type LabelsAsked,
  MOST_LABELS,
} from '../../../shared-core/contract/requests/labels.ts';
import type { BoardRow } from '../../../shared-core/contract/yard.ts';
import type { Shapes } from '../../../shared-core/drawing/shapes.ts';
import { type LabelContent, labelContentSchema, labelGist } from '../../../shared-core/labels/label.ts';
import { type LabelField, labelFieldSchema, usualFields } from '../../../shared-core/labels/label-field.ts';
import type { LabelPaper } from '../../../shared-core/labels/paper.ts';
import { problemOfUsed } from '../../../shared-core/labels/sheet.ts';
import { parsedCheckCode } from '../../../shared-core/reports/check-code.ts';
import { unitsOfRegion } from '../../../shared-core/units/length.ts';
import { english } from '../../../shared-core/words/en/index.ts';
import type { Display } from '../../../shared-core/words/formats.ts';
import { thicknessOf } from '../../../shared-core/words/message.ts';
import { createWords } from '../../../shared-core/words/words.ts';
import type { YardReader } from '../../store/yard.ts';
import { type AppContext, orRefuse, type QueryContext } from '../context.ts';
import type { Commands, Queries } from '../handlers.ts';
import type { LongWork, UnderWay } from '../long-work.ts';
import type { OwnThread } from '../own-thread.ts';
import { type MakePdf, type PdfFile, toWindow } from '../pdf-thread.ts';
import { settingsOf } from '../yard/settings.ts';
import type { LabelsToPrint } from './labels-worker.ts';

/** Reads what is on the labels of boards. All boards of a stack are for one use, which is read once. */
function contentReader(yard: YardReader): (board: BoardRow) => LabelContent {
  const ofStacks = new Map<number, Pick<LabelContent, 'endUseName' | 'targetRange'>>();
  function forUse({ id, stackId }: BoardRow) {
    const known = ofStacks.get(stackId);
    if (known !== undefined) return known;
    const { endUseId } = orRefuse(yard.boards.judgedBy(id), 'board');
    const { name: endUseName, minPct, maxPct } = orRefuse(yard.endUses.get(endUseId), 'use');
    const use = { endUseName, targetRange: { minPct, maxPct } };
    ofStacks.set(stackId, use);
    return use;
  }
  return (board) => labelContentSchema.parse({ ...board, thickness: thicknessOf(board), ...forUse(board) });
}

function contentsOf(yard: YardReader, boardIds: readonly number[]): LabelContent[] {
  const contentOf = contentReader(yard);
  return boardIds.map((id) => contentOf(orRefuse(yard.boards.get(id), 'board')));
}

const hashOf = (content: LabelContent, fields: readonly LabelField[]): string =>
  createHash('sha256').update(labelGist(content, fields)).digest('base64');

/** Between the fields of a printed label and the hash of what they said; a label with the usual fields has the hash alone. */
const FIELDS_END = ':';
const printedHash = (content: LabelContent, fields: readonly LabelField[]): string =>
  fields.join() === usualFields.join()
    ? hashOf(content, fields)
    : `${fields.join()}${FIELDS_END}${hashOf(content, fields)}`;

function labelOf(
  yard: YardReader,
  board: BoardRow,
  contentOf: (board: BoardRow) => LabelContent,
): LabelBoard['label'] {
  const printed = yard.labelPrints.newestHash(board.id);
  if (printed === undefined) return 'none';
  const [hash = '', fields] = printed.split(FIELDS_END).reverse();
  const now = hashOf(contentOf(board), fields === undefined ? usualFields : fieldsIn(fields));
  return hash === now ? 'current' : 'outdated';
}

/** Those that this Pintally knows. */
const fieldsIn = (text: string): LabelField[] =>
  text.split(',').flatMap((name) => labelFieldSchema.safeParse(name).data ?? []);

function paperOf(yard: YardReader, paperId: string): LabelPaper {
  return orRefuse(
    settingsOf(yard).labelPapers.find(({ id }) => id === paperId),
    'paper',
  );
}

/** So many labels are read from the file at a time, some milliseconds, and then others have their turn. */
const READ_AT_A_TIME = 20;

/** Shapes texts of scripts that the fonts do not have. */
export type ShapesThread = OwnThread<readonly string[], Shapes>;

/** Labels, and the page that their paper is calibrated by, as PDFs. */
export function createLabelPdfs(context: QueryContext, pdfOf: MakePdf<LabelsToPrint>) {
  const displayIn = (region: Region): Display => ({
    ...region,
    units: settingsOf(context.yard()).units ?? unitsOfRegion(region.locale),
    today: null,
  });
  const made = (
    questions: Pick<LabelsToPrint, 'contents' | 'paper' | 'used'>,
    region: Region,
    underWay: UnderWay,
  ): Promise<Uint8Array> =>
    pdfOf({ ...questions, display: displayIn(region), createdAt: new Date(context.now()) }, underWay);
  const sizeOf = ({ layout }: LabelPaper) => ({ widthMm: layout.pageWidthMm, heightMm: layout.pageHeightMm });
  return {
    async labels(
      { boardIds, paperId, used, region }: LabelsAsked & { region: Region },
      underWay: UnderWay,
    ): Promise<PdfFile> {
      const paper = paperOf(context.yard(), paperId);
      const problem = problemOfUsed(used, paper.layout);
      if (problem) throw new Refusal(problem);
      const contents: LabelContent[] = [];
      while (contents.length < boardIds.length) {
        contents.push(
          ...contentsOf(context.yard(), boardIds.slice(contents.length, contents.length + READ_AT_A_TIME)),
        );
        await setImmediate();
        underWay.signal.throwIfAborted();
      }
      const { formats } = createWords({ catalog: english, ...displayIn(region) });
      return {
        pdf: await made({ contents, paper, used }, region, underWay),
        fileName: `labels-${formats.localDay(context.now())}.pdf`,
        ...sizeOf(paper),
      };
    },

    async calibration(
      { paperId, region }: { paperId: string; region: Region },
      underWay: UnderWay,
    ): Promise<PdfFile> {
      const paper = paperOf(context.yard(), paperId);
      return {
        pdf: await made({ contents: null, paper, used: 0 }, region, underWay),
        fileName: 'label-calibration.pdf',
        ...sizeOf(paper),
      };
    },
  };
}
export type LabelPdfs = ReturnType<typeof createLabelPdfs>;

export const labelQueries = (
  context: QueryContext,
  longWork: LongWork,
  pdfs: LabelPdfs,
  shapes: ShapesThread,
) =>
  ({
    'labels.boards': (which) => {
      const yard = context.yard();
      if (which.stackId !== null) orRefuse(yard.stacks.get(which.stackId), 'stack');
      const contentOf = contentReader(yard);
      const { total, rows } = yard.boards.page({ ...which, offset: 0, limit: MOST_LABELS });
      const boards = rows.map((board) => ({
        id: board.id,
        code: board.code,
        speciesName: board.speciesName,
        call: board.latest?.call ?? null,
        label: labelOf(yard, board, contentOf),
      }));
      return { total, boards };
    },

    'labels.boardOf': ({ code }) => {
      // A printed sheet about a board has its check code instead.
      const sheet = parsedCheckCode(code);
      const boardCode = sheet.ok ? sheet.code.boardCode : code.trim().toUpperCase();
      const { boards, origins } = context.yard();
      const mergedId = boards.mergedByCode(boardCode);
      const keptId = mergedId === undefined ? null : origins.kept(mergedId);
      return { boardId: boards.idByCode(boardCode) ?? keptId };
    },

    'labels.contents': ({ boardIds }) => {
      const yard = context.yard();
      const contentOf = contentReader(yard);
      return boardIds.map((id) => {
        const board = yard.boards.get(id);
        return board && board.archived === null ? contentOf(board) : null;
      });
    },

    'labels.pdf': ({ work, ...labels }, window) =>
      longWork.run(window, work, async (underWay) => toWindow(await pdfs.labels(labels, underWay))),

    'labels.shapes': ({ texts }) => shapes.ask(texts),

    'labels.calibrationPdf': (page, window) =>
      longWork.run(window, null, async (underWay) => toWindow(await pdfs.calibration(page, underWay))),
  }) satisfies Partial<Queries>;

export const labelCommands = (context: AppContext) =>
  ({
    'labels.recordPrint': ({ boardIds, paperId }) => {
      const yard = context.yard();
      const { fields } = paperOf(yard, paperId);
      const printedAt = context.now();
      contentsOf(yard, boardIds).forEach((content, index) => {
        yard.labelPrints.add({
          boardId: boardIds[index] as number,
          contentHash: printedHash(content, fields),
          printedAt,
        });
      });
      return {};
    },
  }) satisfies Partial<Commands>;
