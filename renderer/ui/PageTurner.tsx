import { type ReactNode, useState } from 'react';
import type { DrawnPage } from '../../shared-core/drawing/page.ts';
import { useWords } from '../words.ts';
import { Actions, Button } from './Button.tsx';
import css from './page-turner.module.css';

/** Pages one at a time, as they will come out of the printer. */
export function PageTurner({
  pages,
  children,
}: {
  pages: readonly DrawnPage[];
  /** Shows one of them; its title says which. */
  children: (page: DrawnPage, index: number, title: string) => ReactNode;
}) {
  const [asked, setAsked] = useState(0);
  const { say } = useWords();
  const index = Math.min(asked, pages.length - 1);
  const page = pages[index];
  if (!page) return null;
  const position = { page: index + 1, pages: pages.length };
  return (
    <div className="column">
      {children(page, index, say('labels.preview-of-page', position))}
      {/* Of one page there is nothing to turn, but its room stays: what is below moves under no hand. */}
      <div className={pages.length > 1 ? undefined : css.onePage}>
        <Actions>
          <Button disabled={index === 0} onClick={() => setAsked(index - 1)}>
            {say('labels.previous-page')}
          </Button>
          <span role="status">{say('labels.page', position)}</span>
          <Button disabled={index === pages.length - 1} onClick={() => setAsked(index + 1)}>
            {say('labels.next-page')}
          </Button>
        </Actions>
      </div>
    </div>
  );
}
