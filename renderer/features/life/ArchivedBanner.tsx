import { useState } from 'react';
import type { Archived } from '../../../shared-core/contract/archive.ts';
import type { BoardRow } from '../../../shared-core/contract/yard.ts';
import { Banner } from '../../ui/Banner.tsx';
import { Button } from '../../ui/Button.tsx';
import { useWords } from '../../words.ts';
import { BringBackForm } from './BringBackForm.tsx';

/** Over the page of a board that left the yard: why, when, and the way back. */
export function ArchivedBanner({ board, archived }: { board: BoardRow; archived: Archived }) {
  const { say } = useWords();
  const [isOpen, setOpen] = useState(false);
  const { code, note, at } = archived;
  return (
    <>
      <Banner
        actions={
          <Button kind="main" onClick={() => setOpen(true)}>
            {say('life.bring-back')}
          </Button>
        }
      >
        {say('archived.on', { why: say(`archived.${code}`), leftOn: at })}{' '}
        {note && (
          <>
            <span translate="no">{note}</span>
            {' · '}
          </>
        )}
        {say('archived.effect')}
      </Banner>
      {isOpen && <BringBackForm board={board} onClose={() => setOpen(false)} />}
    </>
  );
}
