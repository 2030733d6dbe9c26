import { useState } from 'react';
import { drawLabels, type LabelPage } from '../../../shared-core/labels/drawing.ts';
import type { LabelContent } from '../../../shared-core/labels/label.ts';
import type { LabelLayout } from '../../../shared-core/labels/sheet.ts';
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
export function LabelPreview({ pages }: { pages: readonly LabelPage[] }) {
  const [wanted, setWanted] = useState(0);
  const index = Math.min(wanted, pages.length - 1);
  const page = pages[index];
  if (!page) return null;
  const title = `Page ${index + 1} of ${pages.length}`;
  return (
    <div className="label-preview">
      <div className="label-pager">
        <Button disabled={index === 0} onClick={() => setWanted(index - 1)}>
          Page before
        </Button>
        <span role="status">{title}</span>
        <Button disabled={index === pages.length - 1} onClick={() => setWanted(index + 1)}>
          Next page
        </Button>
      </div>
      <div className="label-paper">
        <LabelSheet page={page} title={`Preview, ${title.toLowerCase()}`} />
      </div>
    </div>
  );
}
