import type { LabelPaper } from '../../../shared-core/labels/paper.ts';
import type { Say } from '../../../shared-core/words/words.ts';

/** As the person calls it, or its sizes. */
export function paperName({ name, layout }: Pick<LabelPaper, 'name' | 'layout'>, say: Say): string {
  if (name !== '') return name;
  const { kind, columns, rows, labelWidthMm: widthMm, labelHeightMm: heightMm } = layout;
  return kind === 'sheet'
    ? say('labels.sheet-of', { columns, rows, widthMm, heightMm })
    : say('labels.roll-of', { widthMm, heightMm });
}
