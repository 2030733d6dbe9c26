import { useState } from 'react';
import { decodePacket } from '../../../shared-core/gatt/packet.ts';
import { proposeSpecies } from '../../../shared-core/gatt/propose-fields.ts';
import { Banner } from '../../ui/Banner.tsx';
import { Actions, Button } from '../../ui/Button.tsx';
import { useWords } from '../../words.ts';
import { type BesideProps, takenBy } from './BesideValue.tsx';
import { descriptionOf, newestOf } from './found.ts';

/** Finds where the packets say what the meter is set to for the species: what changes when a person changes it. */
export function FindSpecies({ found, fields, onFields }: BesideProps) {
  const { say } = useWords();
  const [sinceMs, setSinceMs] = useState<number | null>(null);
  const [isMissing, setMissing] = useState(false);
  const { packets, proposal } = found;
  const newest = newestOf(found);

  function look(): void {
    setMissing(false);
    setSinceMs(performance.now());
  }
  function compare(fromMs: number): void {
    const [at] = proposeSpecies(packets, takenBy(found, { ...fields, species: null }), fromMs);
    setSinceMs(null);
    setMissing(at === undefined);
    if (at !== undefined) onFields({ species: { at, expected: null } });
  }

  if (sinceMs !== null) {
    const choices = (
      <>
        <Button kind="main" onClick={() => compare(sinceMs)}>
          {say('watch.species.changed')}
        </Button>
        <Button onClick={() => setSinceMs(null)}>{say('common.cancel')}</Button>
      </>
    );
    return <Banner actions={choices}>{say('watch.species.change')}</Banner>;
  }
  if (fields.species === null) {
    return (
      <>
        {isMissing && <Banner kind="caution">{say('watch.species.none')}</Banner>}
        <Actions>
          <Button onClick={look}>{say('watch.species.find')}</Button>
        </Actions>
      </>
    );
  }
  const setting = newest && decodePacket(newest, descriptionOf(proposal, fields)).species;
  return (
    <Banner
      kind="done"
      actions={
        <>
          <Button onClick={look}>{say('watch.find-again')}</Button>
          <Button onClick={() => onFields({ species: null })}>{say('watch.species.drop')}</Button>
        </>
      }
    >
      {say('watch.species.found', { setting: setting ?? '–' })}
    </Banner>
  );
}
