import type { ReactNode } from 'react';
import { Banner } from '../../ui/Banner.tsx';
import { Button } from '../../ui/Button.tsx';
import { useWords } from '../../words.ts';

/** That a spot has its reading, and what can be done with the value that came after it. */
export function ReplaceBanner({
  children,
  onReplace,
  onSaveAtNext = null,
}: {
  children: ReactNode;
  onReplace: () => void;
  /** Null where no spot is left, or the value belongs to no other. */
  onSaveAtNext?: (() => void) | null;
}) {
  const { say } = useWords();
  return (
    <Banner
      kind="caution"
      actions={
        <>
          <Button shortcut="R" onClick={onReplace}>
            {say('round.replace')}
          </Button>
          {onSaveAtNext && (
            <Button shortcut="N" onClick={onSaveAtNext}>
              {say('round.save-at-next')}
            </Button>
          )}
        </>
      }
    >
      {children}
    </Banner>
  );
}
