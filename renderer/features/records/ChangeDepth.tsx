import { useState } from 'react';
import { isMovedAway } from '../../../shared-core/probing/readings/exclusion.ts';
import type { Depth, JudgedReading } from '../../../shared-core/probing/readings/reading.ts';
import { readingName } from '../../../shared-core/record-words/reading-texts.ts';
import { Button } from '../../ui/Button.tsx';
import { useWords } from '../../words.ts';
import { DepthForm } from './DepthForm.tsx';

/** Corrects how deep a reading was. */
export function ChangeDepth({ reading, depth }: { reading: JudgedReading; depth: Depth }) {
  const words = useWords();
  const { say } = words;
  const [isOpen, setOpen] = useState(false);
  if (reading.isDamaged || isMovedAway(reading.excluded)) return null;
  return (
    <>
      <Button kind="quiet" onClick={() => setOpen(true)}>
        {say('depth.change')}
        <span className="spoken-only"> {readingName(reading, depth, words)}</span>
      </Button>
      {isOpen && <DepthForm reading={reading} onClose={() => setOpen(false)} />}
    </>
  );
}
