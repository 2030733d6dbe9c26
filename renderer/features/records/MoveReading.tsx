import { useState } from 'react';
import { isSlip } from '../../../shared-core/probing/readings/exclusion.ts';
import type { Depth, JudgedReading } from '../../../shared-core/probing/readings/reading.ts';
import { Button } from '../../ui/Button.tsx';
import { rawText } from '../../ui/McValue.tsx';
import { useWords } from '../../words.ts';
import { MoveReadingForm } from './MoveReadingForm.tsx';

/** Moves a reading that was saved for the wrong board; nothing where there is none to move. */
export function MoveReading({ reading, depth }: { reading: JudgedReading; depth: Depth }) {
  const { say, formats } = useWords();
  const [isOpen, setOpen] = useState(false);
  if (reading.isDamaged || isSlip(reading.excluded)) return null;
  const recordName = say('reading.name', {
    depth,
    shownValue: rawText(reading.raw, reading.unit, formats),
  });
  return (
    <>
      <Button kind="quiet" aria-label={say('reading-move.of', { recordName })} onClick={() => setOpen(true)}>
        {say('reading-move.button')}
      </Button>
      {isOpen && <MoveReadingForm {...{ reading, recordName }} onClose={() => setOpen(false)} />}
    </>
  );
}
