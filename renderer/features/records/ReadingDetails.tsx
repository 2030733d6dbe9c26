import { useState } from 'react';
import type { JudgedReading } from '../../../shared-core/probing/readings/reading.ts';
import { useQuery } from '../../data/useQuery.ts';
import { Dialog } from '../../ui/Dialog.tsx';
import { rawText } from '../../ui/McValue.tsx';
import { useWords } from '../../words.ts';
import { Pictures } from '../pictures/Pictures.tsx';
import { CorrectionSteps } from './CorrectionSteps.tsx';
import type { OfReading } from './of-reading.ts';
import { ReadingMeter } from './ReadingMeter.tsx';

/** How a value was corrected, its pictures, and which meter it was read with. */
export function ReadingDetails({ reading, recordName, onClose }: OfReading) {
  const { say } = useWords();
  return (
    <Dialog title={say('reading-details.of', { recordName })} onClose={onClose}>
      <Details {...{ reading, recordName, onClose }} />
    </Dialog>
  );
}

function Details({ reading, recordName, onClose }: OfReading) {
  const { say, formats } = useWords();
  const current = useQuery('meters.list', {}).output;
  const closed = useQuery('meters.closed', {}).output;
  // One that is no longer owned is offered only where it was this reading's.
  const output = current && [...current, ...(closed ?? []).filter(({ id }) => id === reading.meterId)];
  const meter = output?.find(({ id }) => id === reading.meterId) ?? null;
  const [chosenId, setChosenId] = useState(meter?.id ?? null);
  const isOther = chosenId !== null && chosenId !== reading.meterId;
  return (
    <>
      {reading.savedRaw !== undefined && (
        <p>{say('reading-edit.by-hand', { shownValue: rawText(reading.savedRaw, reading.unit, formats) })}</p>
      )}
      {isOther ? <StepsWith {...{ reading, meterId: chosenId }} /> : <CorrectionSteps reading={reading} />}
      <h3>{say('pictures.title')}</h3>
      <Pictures subject={{ kind: 'reading', id: reading.id }} recordName={recordName} />
      {output && (
        <ReadingMeter
          reading={reading}
          meter={meter}
          meters={output}
          chosenId={chosenId ?? meter?.id ?? null}
          onChosen={setChosenId}
          onClose={onClose}
        />
      )}
    </>
  );
}

/** How the value would be corrected if it had been read with another meter. */
function StepsWith({ reading, meterId }: { reading: JudgedReading; meterId: number }) {
  const { output } = useQuery('readings.asReadWith', { readingId: reading.id, meterId });
  return output && <CorrectionSteps reading={{ ...reading, ...output }} />;
}
