import { useState } from 'react';
import type { Depth, JudgedReading } from '../../../shared-core/probing/readings/reading.ts';
import { Button } from '../../ui/Button.tsx';
import { rawText } from '../../ui/McValue.tsx';
import { useWords } from '../../words.ts';
import { DepthForm } from './DepthForm.tsx';

/** How deep a reading was, and who says so; pressed, it can be corrected. */
export function DepthOfReading({ reading, depth }: { reading: JudgedReading; depth: Depth }) {
  const { say, formats } = useWords();
  const [isOpen, setOpen] = useState(false);
  const { spot, depthFrom, raw, unit } = reading;
  const { depthMm } = spot;
  if (reading.isDamaged) return null;
  return (
    <>
      <Button kind="quiet" onClick={() => setOpen(true)}>
        {depthMm === null
          ? say('depth.unknown')
          : say(depthFrom === 'plan' ? 'depth.planned' : 'depth.known', { depthMm })}
        <span className="spoken-only">
          {' '}
          {say('reading.name', { depth, shownValue: rawText(raw, unit, formats) })}
        </span>
      </Button>
      {isOpen && <DepthForm reading={reading} onClose={() => setOpen(false)} />}
    </>
  );
}
