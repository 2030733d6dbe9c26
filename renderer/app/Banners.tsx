import { type ReactNode, useId, useState } from 'react';
import { Button } from '../ui/Button.tsx';
import { useWords } from '../words.ts';
import css from './banners.module.css';

/**
 * What a person must know on every screen. In a round, whose buttons have to stay in sight, it is one line with a button
 * that shows the rest.
 */
export function Banners({ isRound, children }: { isRound: boolean; children: ReactNode }) {
  const { say } = useWords();
  const [isOpen, setOpen] = useState(false);
  const id = useId();
  return (
    <div className={isRound ? css.inRound : css.frame} data-folded={(isRound && !isOpen) || undefined}>
      <div id={id} className={css.list}>
        {children}
      </div>
      {isRound && (
        <Button kind="quiet" aria-expanded={isOpen} aria-controls={id} onClick={() => setOpen(!isOpen)}>
          {say(isOpen ? 'frame.show-less' : 'frame.show-all')}
        </Button>
      )}
    </div>
  );
}
