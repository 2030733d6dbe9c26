import type { RequestOutput } from '../../../shared-core/contract/requests.ts';
import type { Settings } from '../../../shared-core/contract/settings.ts';
import { drawLabels } from '../../../shared-core/labels/drawing.ts';
import { type LabelContent, labelContent } from '../../../shared-core/labels/label.ts';
import { labelPdf } from '../../print/label-pdf.ts';
import { type AppContext, orRefuse } from '../context.ts';
import { dayText } from '../forecast/day-text.ts';

export function labelUseCases(context: AppContext, settings: () => Settings) {
  function contents(boardIds: number[]): LabelContent[] {
    const { units } = settings();
    return boardIds.map((id) => {
      const board = orRefuse(context.yard().boards.get(id), 'board');
      return labelContent({
        code: board.code,
        speciesName: board.speciesName,
        thicknessMm: board.thicknessMm,
        units,
        latest: board.latest && { ...board.latest, dateText: dayText(board.latest.at) },
        call: board.latest?.call ?? null,
      });
    });
  }

  return {
    'labels.contents': ({ boardIds }: { boardIds: number[] }): LabelContent[] => contents(boardIds),
    'labels.pdf': async ({
      boardIds,
      kind,
      skip,
    }: {
      boardIds: number[];
      kind: 'sheet' | 'single';
      skip: number;
    }): Promise<RequestOutput<'labels.pdf'>> => {
      const pages = drawLabels(contents(boardIds), settings().labelLayouts[kind], skip);
      const pdf = await labelPdf(pages, { title: 'Pintally labels', createdAt: new Date(context.now()) });
      return {
        pdfBase64: Buffer.from(pdf).toString('base64'),
        fileName: `labels-${context.now().slice(0, 10)}.pdf`,
      };
    },
  };
}
