import { type LabelLayout, labelPositions } from '../../../shared-core/labels/sheet.ts';
import { useWords } from '../../words.ts';
import styles from './labels.module.css';

/** The page and the labels on it, to scale. */
export function LayoutSketch({ layout }: { layout: LabelLayout }) {
  const { say } = useWords();
  const perPage = layout.columns * layout.rows;
  return (
    <svg
      className={styles.sketch}
      viewBox={`0 0 ${layout.pageWidthMm} ${layout.pageHeightMm}`}
      role="img"
      aria-label={say('labels.page-sketch', { columns: layout.columns, rows: layout.rows })}
    >
      <rect fill="var(--sheet-sunk)" width={layout.pageWidthMm} height={layout.pageHeightMm} />
      {labelPositions(perPage, layout, 0).map((position) => (
        <rect
          key={`${position.xMm} ${position.yMm}`}
          x={position.xMm}
          y={position.yMm}
          width={layout.labelWidthMm}
          height={layout.labelHeightMm}
          rx={1.5}
        />
      ))}
    </svg>
  );
}
