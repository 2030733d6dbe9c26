import { useState } from 'react';
import type { ClosedPlace } from '../../../shared-core/contract/yard.ts';
import { bridge } from '../../data/bridge.ts';
import { useQuery } from '../../data/useQuery.ts';
import { Actions, Button } from '../../ui/Button.tsx';
import { Unfold } from '../../ui/Unfold.tsx';
import { useWords } from '../../words.ts';
import { ReopenForm } from '../closing/ReopenForm.tsx';
import { PlaceEnding } from './PlaceEnding.tsx';

/** Places that left the lists, with the way back; nothing where there are none. */
export function ClosedPlaces() {
  const { say } = useWords();
  const closed = useQuery('places.closed', {}).output ?? [];
  const [open, setOpen] = useState<{ what: 'reopen' | 'delete'; place: ClosedPlace } | null>(null);
  const close = () => setOpen(null);
  const place = open?.place;
  return (
    <>
      {closed.length > 0 && (
        <Unfold words={say('closing.closed-places', { places: closed.length })}>
          <ul className="list">
            {closed.map((each) => (
              <li key={each.id}>
                <span translate="no">{each.name}</span>{' '}
                {say('closing.closed-on', { closedOn: each.closedAt })}
                <Actions>
                  <Button
                    aria-label={say('closing.reopen-named', { name: each.name })}
                    onClick={() => setOpen({ what: 'reopen', place: each })}
                  >
                    {say('closing.reopen')}
                  </Button>
                  <Button
                    kind="quiet"
                    aria-label={say('closing.delete-of', { name: each.name })}
                    onClick={() => setOpen({ what: 'delete', place: each })}
                  >
                    {say('life.delete')}
                  </Button>
                </Actions>
              </li>
            ))}
          </ul>
        </Unfold>
      )}
      {open?.what === 'reopen' && place && (
        <ReopenForm
          name={place.name}
          onReopen={(name) =>
            bridge().command('places.reopen', { id: place.id, basedOn: place.version, name })
          }
          onClose={close}
        />
      )}
      {open?.what === 'delete' && place && <PlaceEnding place={place} ending="delete" onClose={close} />}
    </>
  );
}
