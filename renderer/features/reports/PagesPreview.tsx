import type { DrawnPage } from '../../../shared-core/drawing/page.ts';
import { PageTurner } from '../../ui/PageTurner.tsx';
import { LabelSheet } from '../labels/LabelSheet.tsx';
import printing from '../printing/printing.module.css';
import css from './reports.module.css';

/** The pages of a report, one at a time. */
export function PagesPreview({ pages }: { pages: readonly DrawnPage[] }) {
  return (
    <PageTurner pages={pages}>
      {(page, _, title) => (
        <section
          className={`${printing.pages} ${css.paper}`}
          aria-label={title}
          // biome-ignore lint/a11y/noNoninteractiveTabindex: it scrolls, by keyboard too.
          tabIndex={0}
        >
          <LabelSheet page={page} title={title} />
        </section>
      )}
    </PageTurner>
  );
}
