import { useState } from 'react';
import { isMovedAway } from '../../../shared-core/probing/readings/exclusion.ts';
import type { Depth, JudgedReading } from '../../../shared-core/probing/readings/reading.ts';
import { Button } from '../../ui/Button.tsx';
import { rawText } from '../../ui/McValue.tsx';
import { useWords } from '../../words.ts';
import { DepthForm } from './DepthForm.tsx';

/** Corrects how deep a reading was. */
export function ChangeDepth({ reading, depth }: { reading: JudgedReading; depth: Depth }) {
  const { say, formats } = useWords();
  const [isOpen, setOpen] = useState(false);
  const { raw, unit } = reading;
  if (reading.isDamaged || isMovedAway(reading.excluded)) return null;
  return (
    <>
      <Button kind="quiet" onClick={() => setOpen(true)}>
        {say('depth.change')}
        <span className="spoken-only">
          {' '}
          {say('reading.name', { depth, shownValue: rawText(raw, unit, formats) })}
        </span>
      </Button>
      {isOpen && <DepthForm reading={reading} onClose={() => setOpen(false)} />}
    </>
  );
}
