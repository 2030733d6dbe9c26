import { Refusal } from '../../../shared-core/contract/answer.ts';
import type { RequestInput, RequestOutput } from '../../../shared-core/contract/requests.ts';
import type { Settings } from '../../../shared-core/contract/settings.ts';
import { drawLabels } from '../../../shared-core/labels/drawing.ts';
import { type LabelContent, labelContentSchema } from '../../../shared-core/labels/label.ts';
import { problemOfUsed } from '../../../shared-core/labels/sheet.ts';
import { english } from '../../../shared-core/words/en/index.ts';
import { createWords } from '../../../shared-core/words/words.ts';
import { labelPdf } from '../../print/label-pdf.ts';
import { type AppContext, orRefuse } from '../context.ts';

export function labelUseCases(context: AppContext, settings: () => Settings) {
  const contents = ({ boardIds }: RequestInput<'labels.contents'>): LabelContent[] =>
    boardIds.map((id) => {
      const board = orRefuse(context.yard().boards.get(id), 'board');
      return labelContentSchema.parse({
        ...board,
        thickness: { thicknessMm: board.thicknessMm, quarters: null },
      });
    });

  return {
    'labels.contents': contents,
    'labels.pdf': async ({
      boardIds,
      kind,
      used,
      region,
    }: RequestInput<'labels.pdf'>): Promise<RequestOutput<'labels.pdf'>> => {
      const { units, labelLayouts } = settings();
      const layout = labelLayouts[kind];
      const words = createWords({ catalog: english, ...region, units, today: null });
      const problem = problemOfUsed(used, layout);
      if (problem) throw new Refusal(problem);
      const pdf = await labelPdf(drawLabels(contents({ boardIds }), layout, words, used), {
        title: words.say('labels.pdf-title'),
        locale: region.locale,
        createdAt: new Date(context.now()),
      });
      return {
        pdfBase64: Buffer.from(pdf).toString('base64'),
        fileName: `labels-${words.formats.localDay(context.now())}.pdf`,
      };
    },
  };
}
