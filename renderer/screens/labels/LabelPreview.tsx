import { useState } from 'react';
import { drawLabels, type LabelPage } from '../../../shared-core/labels/drawing.ts';
import type { LabelContent } from '../../../shared-core/labels/label.ts';
import { type LabelLayout, labelPositions } from '../../../shared-core/labels/sheet.ts';
import { Button } from '../../parts/Button.tsx';
import { LabelSheet } from './LabelSheet.tsx';

/** The pages that these labels fill, or why they cannot be drawn. */
export function pagesOf(
  contents: readonly LabelContent[],
  layout: LabelLayout,
  skip: number,
): { pages: LabelPage[]; problem: string | null } {
  try {
    return { pages: drawLabels(contents, layout, skip), problem: null };
  } catch (error) {
    if (error instanceof RangeError) return { pages: [], problem: error.message };
    throw error;
  }
}

/** The pages one at a time, as they will come out of the printer. */
export function LabelPreview({
  pages,
  layout,
  skip,
}: {
  pages: readonly LabelPage[];
  layout: LabelLayout;
  skip: number;
}) {
  const [wanted, setWanted] = useState(0);
  const index = Math.min(wanted, pages.length - 1);
  const page = pages[index];
  if (!page) return null;
  const title = `Page ${index + 1} of ${pages.length}`;
  return (
    <div className="label-preview">
      {pages.length > 1 && (
        <div className="label-pager">
          <Button disabled={index === 0} onClick={() => setWanted(index - 1)}>
            Page before
          </Button>
          <span role="status">{title}</span>
          <Button disabled={index === pages.length - 1} onClick={() => setWanted(index + 1)}>
            Next page
          </Button>
        </div>
      )}
      <div className="label-paper">
        <LabelSheet
          page={page}
          title={`Preview, ${title.toLowerCase()}`}
          underlay={<LabelEdges layout={layout} used={index === 0 ? skip : 0} />}
        />
      </div>
      <p className="label-preview-note">The dashed edges show where the labels lie; they are not printed.</p>
    </div>
  );
}

/** Where the labels of a sheet lie, with those crossed out that are used up. */
function LabelEdges({ layout, used }: { layout: LabelLayout; used: number }) {
  const { labelWidthMm: width, labelHeightMm: height } = layout;
  return (
    <g className="label-edges">
      {labelPositions(layout.columns * layout.rows, layout, 0).map(({ xMm, yMm }, index) => (
        <g key={`${xMm} ${yMm}`}>
          <rect x={xMm} y={yMm} width={width} height={height} rx={1.5} />
          {index < used && (
            <path d={`M${xMm} ${yMm}l${width} ${height}M${xMm} ${yMm + height}l${width} ${-height}`} />
          )}
        </g>
      ))}
    </g>
  );
}
