import { useState } from 'react';
import type { Archived } from '../../../shared-core/contract/archive.ts';
import type { Origin } from '../../../shared-core/contract/origin.ts';
import type { BoardRow } from '../../../shared-core/contract/yard.ts';
import { whyArchived } from '../../../shared-core/record-words/why-archived.ts';
import { Banner } from '../../ui/Banner.tsx';
import { Button } from '../../ui/Button.tsx';
import { useWords } from '../../words.ts';
import { BringBackForm } from './BringBackForm.tsx';
import { BecameOf } from './Origins.tsx';

/** Over the page of a board that left the yard: why, when, what it became, and the way back where it became nothing. */
export function ArchivedBanner({
  board,
  archived,
  becameOf,
}: {
  board: BoardRow;
  archived: Archived;
  becameOf: readonly Origin[];
}) {
  const { say } = useWords();
  const [isOpen, setOpen] = useState(false);
  const { note, at } = archived;
  return (
    <>
      <Banner
        {...(becameOf.length === 0 && {
          actions: (
            <Button kind="main" onClick={() => setOpen(true)}>
              {say('life.bring-back')}
            </Button>
          ),
        })}
      >
        {say('archived.on', { why: whyArchived(archived, say), leftOn: at })}{' '}
        {note && (
          <>
            <span translate="no">{note}</span>
            {' · '}
          </>
        )}
        {say('archived.effect')} {becameOf.length > 0 && <BecameOf origins={becameOf} />}
      </Banner>
      {isOpen && <BringBackForm board={board} onClose={() => setOpen(false)} />}
    </>
  );
}
