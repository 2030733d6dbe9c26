import { Refusal } from '../../../shared-core/contract/answer.ts';
import { drawLabels } from '../../../shared-core/labels/drawing.ts';
import { type LabelContent, labelContentSchema } from '../../../shared-core/labels/label.ts';
import { problemOfUsed } from '../../../shared-core/labels/sheet.ts';
import { english } from '../../../shared-core/words/en/index.ts';
import { thicknessOf } from '../../../shared-core/words/message.ts';
import { createWords } from '../../../shared-core/words/words.ts';
import { pdfOf } from '../../print/pdf.ts';
import { orRefuse, type QueryContext } from '../context.ts';
import type { Queries } from '../handlers.ts';
import { settingsOf } from '../yard/settings.ts';

export function labelQueries(context: QueryContext) {
  const contents = (boardIds: readonly number[]): LabelContent[] =>
    boardIds.map((id) => {
      const { boards, endUses } = context.yard();
      const board = orRefuse(boards.get(id), 'board');
      const { endUseId } = orRefuse(boards.judgedBy(id), 'board');
      const endUseName = orRefuse(endUses.get(endUseId), 'use').name;
      return labelContentSchema.parse({ ...board, thickness: thicknessOf(board), endUseName });
    });

  return {
    'labels.contents': ({ boardIds }) => contents(boardIds),
    'labels.pdf': async ({ boardIds, kind, used, region }) => {
      const { units, labelLayouts } = settingsOf(context.yard());
      const layout = labelLayouts[kind];
      const words = createWords({ catalog: english, ...region, units, today: null });
      const problem = problemOfUsed(used, layout);
      if (problem) throw new Refusal(problem);
      const pdf = await pdfOf(drawLabels(contents(boardIds), layout, words, used), {
        title: words.say('labels.pdf-title'),
        locale: region.locale,
        createdAt: new Date(context.now()),
      });
      return {
        pdfBase64: Buffer.from(pdf).toString('base64'),
        fileName: `labels-${words.formats.localDay(context.now())}.pdf`,
      };
    },
  } satisfies Partial<Queries>;
}
