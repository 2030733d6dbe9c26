import type { KeyboardEvent } from 'react';
import { type LabelLayout, labelPositions } from '../../../shared-core/labels/sheet.ts';
import { useWords } from '../../words.ts';
import styles from './labels.module.css';

/**
 * The labels of a sheet as a radio group over its preview: the chosen one is the first that is free. Arrow keys go from
 * label to label.
 */
export function FirstLabel({
  layout,
  used,
  onUsed,
}: {
  layout: LabelLayout;
  used: number;
  onUsed: (used: number) => void;
}) {
  const { say } = useWords();
  const { columns, rows, labelWidthMm: width, labelHeightMm: height } = layout;
  const labels = columns * rows;
  const steps: Record<string, number> = {
    ArrowLeft: -1,
    ArrowRight: 1,
    ArrowUp: -columns,
    ArrowDown: columns,
    Home: -labels,
    End: labels,
  };

  function onKeyDown(event: KeyboardEvent<HTMLElement>): void {
    const step = steps[event.key];
    if (step === undefined || event.ctrlKey || event.altKey || event.metaKey) return;
    event.preventDefault();
    const to = Math.abs(step) === labels ? Math.min(labels - 1, Math.max(0, used + step)) : used + step;
    if (to < 0 || to >= labels) return;
    onUsed(to);
    event.currentTarget.querySelectorAll<SVGElement>('[role=radio]')[to]?.focus();
  }

  return (
    <div
      className={styles.first}
      role="radiogroup"
      aria-label={say('labels.first-free')}
      onKeyDown={onKeyDown}
    >
      <svg viewBox={`0 0 ${layout.pageWidthMm} ${layout.pageHeightMm}`} role="presentation">
        {labelPositions(labels, layout, 0).map(({ xMm, yMm }, index) => {
          const place = { row: Math.floor(index / columns) + 1, column: (index % columns) + 1 };
          return (
            // biome-ignore lint/a11y/useSemanticElements: a native radio button cannot be drawn over a label.
            <rect
              key={`${xMm} ${yMm}`}
              x={xMm}
              y={yMm}
              width={width}
              height={height}
              rx={1.5}
              role="radio"
              aria-checked={index === used}
              aria-label={say('labels.label-at', place)}
              tabIndex={index === used ? 0 : -1}
              onClick={() => onUsed(index)}
            />
          );
        })}
      </svg>
    </div>
  );
}
