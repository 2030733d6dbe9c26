import { type ReactNode, useState } from 'react';
import type { JudgedReading } from '../../../shared-core/probing/readings/reading.ts';
import { Button } from '../../ui/Button.tsx';

/** The props of a dialog about one reading. */
export interface OfReading {
  reading: JudgedReading;
  recordName: string;
  onClose: () => void;
}

/** A quiet button beside a reading, and the dialog that it opens. */
export function ReadingAction({
  words,
  title,
  children: dialog,
}: {
  words: string;
  /** Says which reading it is for, too. */
  title: string;
  children: (onClose: () => void) => ReactNode;
}) {
  const [isOpen, setOpen] = useState(false);
  return (
    <>
      <Button kind="quiet" aria-label={title} onClick={() => setOpen(true)}>
        {words}
      </Button>
      {isOpen && dialog(() => setOpen(false))}
    </>
  );
}
