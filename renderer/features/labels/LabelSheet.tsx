import { memo, type ReactNode } from 'react';
import {
  BOLD_LINE,
  type DrawnPage,
  type Operation,
  shadeColors,
  UNITS_PER_EM,
} from '../../../shared-core/drawing/page.ts';
import { MM_PER_POINT } from '../../../shared-core/measures.ts';
import styles from './labels.module.css';

/** One page of labels as it will be printed, from the same drawing as the PDF. */
export const LabelSheet = memo(function LabelSheet({
  page,
  title,
  underlay,
}: {
  page: DrawnPage;
  title: string;
  /** Drawn under the labels on screen; what is printed has none. */
  underlay?: ReactNode;
}) {
  return (
    <svg
      className={styles.labels}
      viewBox={`0 0 ${page.widthMm} ${page.heightMm}`}
      width={`${page.widthMm}mm`}
      height={`${page.heightMm}mm`}
      role="img"
      aria-label={title}
    >
      {underlay}
      {/* A browser that translated it would break the drawing. SVG has no `translate`; browsers go by this class. */}
      <g className="notranslate">
        {page.operations.map((operation, index) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: a page is always drawn as a whole; its marks have no other name.
          <Mark key={index} operation={operation} />
        ))}
      </g>
    </svg>
  );
});

function Mark({ operation }: { operation: Operation }) {
  if (operation.kind === 'path') {
    return (
      <path
        d={operation.d}
        fill={operation.isFilled ? shadeColors[operation.fill ?? 'black'] : 'none'}
        stroke={operation.strokeMm === null ? 'none' : shadeColors[operation.stroke ?? 'black']}
        strokeWidth={operation.strokeMm ?? undefined}
        strokeDasharray={operation.dashMm?.join(' ')}
        strokeLinejoin="round"
      />
    );
  }
  if (operation.kind === 'modules') {
    const { xMm, yMm, moduleMm, rectangles } = operation;
    return (
      <path
        d={rectangles.map(([x, y, width, height]) => `M${x} ${y}h${width}v${height}H${x}Z`).join('')}
        transform={`translate(${xMm} ${yMm}) scale(${moduleMm})`}
      />
    );
  }
  if (operation.kind === 'outlines') {
    const { xMm, baselineMm, sizePt, face, glyphs, text } = operation;
    const emMm = sizePt * MM_PER_POINT;
    return (
      <g
        aria-label={text}
        transform={`translate(${xMm} ${baselineMm}) scale(${emMm / UNITS_PER_EM})`}
        stroke={face === 'bold' ? 'black' : 'none'}
        strokeWidth={BOLD_LINE}
        strokeLinejoin="round"
      >
        {glyphs.map(({ d, xEm, yEm }, index) => (
          <path
            // biome-ignore lint/suspicious/noArrayIndexKey: a line is always drawn as a whole.
            key={index}
            d={d}
            transform={`translate(${xEm * UNITS_PER_EM} ${-yEm * UNITS_PER_EM})`}
          />
        ))}
      </g>
    );
  }
  return (
    <text
      x={operation.xMm}
      y={operation.baselineMm}
      fontSize={operation.sizePt * MM_PER_POINT}
      fontWeight={operation.face === 'bold' ? 700 : 400}
      textLength={operation.widthMm}
      lengthAdjust="spacingAndGlyphs"
    >
      {operation.text}
    </text>
  );
}
