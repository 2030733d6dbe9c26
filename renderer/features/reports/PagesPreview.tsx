import { useState } from 'react';
import type { DrawnPage } from '../../../shared-core/drawing/page.ts';
import { Actions, Button } from '../../ui/Button.tsx';
import { useWords } from '../../words.ts';
import { LabelSheet } from '../labels/LabelSheet.tsx';
import css from './reports.module.css';

/** Pages one at a time, as they will come out of the printer. */
export function PagesPreview({ pages }: { pages: readonly DrawnPage[] }) {
  const [asked, setAsked] = useState(0);
  const { say } = useWords();
  const index = Math.min(asked, pages.length - 1);
  const page = pages[index];
  if (!page) return null;
  const position = { page: index + 1, pages: pages.length };
  const title = say('labels.preview-of-page', position);
  return (
    <div className="column">
      {pages.length > 1 && (
        <Actions>
          <Button disabled={index === 0} onClick={() => setAsked(index - 1)}>
            {say('labels.previous-page')}
          </Button>
          <span role="status">{say('labels.page', position)}</span>
          <Button disabled={index === pages.length - 1} onClick={() => setAsked(index + 1)}>
            {say('labels.next-page')}
          </Button>
        </Actions>
      )}
      <section
        className={css.paper}
        aria-label={title}
        // biome-ignore lint/a11y/noNoninteractiveTabindex: it scrolls, by keyboard too.
        tabIndex={0}
      >
        <LabelSheet page={page} title={title} />
      </section>
    </div>
  );
}
