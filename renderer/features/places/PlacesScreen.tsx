import { useState } from 'react';
import type { PlaceRow } from '../../../shared-core/contract/yard.ts';
import { emcOfYear } from '../../../shared-core/wood/climate/climate.ts';
import { useQuery } from '../../data/useQuery.ts';
import { Await } from '../../ui/Await.tsx';
import { Button } from '../../ui/Button.tsx';
import { EmptyState, Screen } from '../../ui/Screen.tsx';
import { SourcesLink } from '../../ui/SourcesLink.tsx';
import { useWords } from '../../words.ts';
import { ClosedPlaces } from './ClosedPlaces.tsx';
import { PlaceCard } from './PlaceCard.tsx';
import { PlaceForm } from './PlaceForm.tsx';
import css from './places.module.css';
import { SensorsElsewhere } from './SensorsElsewhere.tsx';

/** Where stacks are, with the air there and the EMC in it. */
export function PlacesScreen() {
  const asked = useQuery('places.list', {});
  const { say } = useWords();
  const [form, setForm] = useState<'closed' | 'new' | PlaceRow>('closed');
  const [addedId, setAddedId] = useState<number | null>(null);
  const highestPct = (places: readonly PlaceRow[]): number =>
    Math.max(
      ...places.flatMap(({ air, airOffset }) =>
        [0, airOffset?.offsetPct].flatMap((offsetPct) => emcOfYear(air, offsetPct).monthlyEmcPct),
      ),
    );
  return (
    <Screen
      title={say('places.title')}
      lead={say('places.lead')}
      actions={
        <Button kind="main" onClick={() => setForm('new')}>
          {say('places.add')}
        </Button>
      }
    >
      <Await of={[asked]}>
        {(places) => (
          <>
            {places.length === 0 && <EmptyState sentence={say('places.none')} />}
            <div className={css.cards}>
              {places.map((place) => (
                <PlaceCard
                  key={place.id}
                  place={place}
                  isNew={place.id === addedId}
                  highestPct={highestPct(places)}
                  onEdit={() => setForm(place)}
                />
              ))}
            </div>
            <SensorsElsewhere />
          </>
        )}
      </Await>
      <ClosedPlaces />
      <SourcesLink part="air" />
      {form !== 'closed' && (
        <PlaceForm
          place={form === 'new' ? null : form}
          onSaved={({ id }) => form === 'new' && setAddedId(id)}
          onClose={() => setForm('closed')}
        />
      )}
    </Screen>
  );
}
