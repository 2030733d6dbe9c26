import type { DrawnPage } from '../../../shared-core/drawing/page.ts';
import { type LabelLayout, labelPositions } from '../../../shared-core/labels/sheet.ts';
import { PageTurner } from '../../ui/PageTurner.tsx';
import { useWords } from '../../words.ts';
import printing from '../printing/printing.module.css';
import { FirstLabel } from './FirstLabel.tsx';
import { LabelSheet } from './LabelSheet.tsx';
import styles from './labels.module.css';

/** The pages one at a time, as they will come out of the printer. */
export function LabelPreview({
  pages,
  layout,
  used,
  onUsed,
}: {
  pages: readonly DrawnPage[];
  layout: LabelLayout;
  used: number;
  onUsed: (used: number) => void;
}) {
  const { say } = useWords();
  const labels = layout.columns * layout.rows;
  return (
    <PageTurner pages={pages}>
      {(page, index, title) => (
        <>
          <section
            className={`${printing.pages} ${styles.paper} ${layout.kind === 'roll' ? styles.roll : ''}`}
            aria-label={title}
            // biome-ignore lint/a11y/noNoninteractiveTabindex: it scrolls, by keyboard too.
            tabIndex={0}
          >
            <div className={styles.onPaper}>
              <LabelSheet
                page={page}
                title={title}
                underlay={<LabelEdges layout={layout} used={index === 0 ? used : 0} />}
              />
              {index === 0 && labels > 1 && <FirstLabel layout={layout} used={used} onUsed={onUsed} />}
            </div>
          </section>
          <p className="soft">
            {say('labels.edges-not-printed')} {labels > 1 && say('labels.click-first-free')}
          </p>
        </>
      )}
    </PageTurner>
  );
}

/** Where the labels of a sheet are, with used ones crossed out. */
function LabelEdges({ layout, used }: { layout: LabelLayout; used: number }) {
  const { labelWidthMm: width, labelHeightMm: height } = layout;
  return (
    <g fill="none" stroke="#9a9a9a" strokeWidth={0.25}>
      {labelPositions(layout.columns * layout.rows, layout, 0).map(({ xMm, yMm }, index) => (
        <g key={`${xMm} ${yMm}`}>
          <rect x={xMm} y={yMm} width={width} height={height} rx={1.5} strokeDasharray="1.2 1" />
          {index < used && (
            <path d={`M${xMm} ${yMm}l${width} ${height}M${xMm} ${yMm + height}l${width} ${-height}`} />
          )}
        </g>
      ))}
    </g>
  );
}
