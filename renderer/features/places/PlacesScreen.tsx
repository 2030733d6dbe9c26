import { useEffect, useRef, useState } from 'react';
import type { PlaceRow } from '../../../shared-core/contract/yard.ts';
import { emcOfYear } from '../../../shared-core/wood/climate/climate.ts';
import { message } from '../../../shared-core/words/message.ts';
import { useQuery } from '../../data/useQuery.ts';
import { Button } from '../../ui/Button.tsx';
import { EmptyState, Failed, Loading, Screen, Sheet } from '../../ui/Screen.tsx';
import { useWords } from '../../words.ts';
import { airSourceText } from './air-source-text.ts';
import { placeKinds } from './kinds.ts';
import { PlaceForm } from './PlaceForm.tsx';
import { YearChart } from './YearChart.tsx';
import './places.css';

/** Where stacks are, with the air there and the EMC in it. */
export function PlacesScreen() {
  const places = useQuery('places.list', {});
  const { say } = useWords();
  const [form, setForm] = useState<'closed' | 'new' | PlaceRow>('closed');
  const [addedId, setAddedId] = useState<number | null>(null);
  const thisMonth = new Date().getMonth() + 1;
  const highestPct = Math.max(...(places.output ?? []).flatMap(({ air }) => emcOfYear(air).monthlyEmcPct));
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
      {places.error && <Failed sentence={places.error} again={places.again} />}
      {places.loading && <Loading />}
      {places.output?.length === 0 && (
        <EmptyState sentence={say('places.none')}>
          <Button kind="main" onClick={() => setForm('new')}>
            {say('places.add-first')}
          </Button>
        </EmptyState>
      )}
      <div className="place-cards">
        {places.output?.map((place) => (
          <PlaceCard
            key={place.id}
            place={place}
            isNew={place.id === addedId}
            thisMonth={thisMonth}
            highestPct={highestPct}
            onEdit={() => setForm(place)}
          />
        ))}
      </div>
      {form !== 'closed' && (
        <PlaceForm
          place={form === 'new' ? null : form}
          thisMonth={thisMonth}
          onSaved={({ id }) => form === 'new' && setAddedId(id)}
          onClose={() => setForm('closed')}
        />
      )}
    </Screen>
  );
}

function PlaceCard({
  place,
  isNew,
  thisMonth,
  highestPct,
  onEdit,
}: {
  place: PlaceRow;
  /** It was just added, so the focus goes to it. */
  isNew: boolean;
  thisMonth: number;
  /** Of any month at any place, so that all are drawn to one scale, % MC. */
  highestPct: number;
  onEdit: () => void;
}) {
  const { say, formats } = useWords();
  const edit = useRef<HTMLButtonElement>(null);
  useEffect(() => {
    if (isNew) edit.current?.focus();
  }, [isNew]);
  return (
    <Sheet
      title={place.name}
      isName
      actions={
        <Button ref={edit} onClick={onEdit} aria-label={say('places.edit', { placeName: place.name })}>
          {say('common.edit')}
        </Button>
      }
    >
      <p className="place-kind">
        {say('places.kind-and-air', {
          kind: message(placeKinds[place.kind]),
          airSource: airSourceText(place.airSource),
        })}
      </p>
      <dl className="place-figures">
        <div>
          <dt>{say('places.emc-in-month', { monthName: formats.month(thisMonth) })}</dt>
          <dd>{formats.mc(place.emcNowPct)}</dd>
        </div>
        <div>
          <dt>{say('places.lowest')}</dt>
          <dd>
            {formats.mc(place.driestEmcPct)}{' '}
            <span className="place-month">
              {say('places.in-month', { monthName: formats.month(place.driestMonth) })}
            </span>
          </dd>
        </div>
      </dl>
      <YearChart
        placeName={place.name}
        emcPct={emcOfYear(place.air).monthlyEmcPct}
        driestMonth={place.driestMonth}
        thisMonth={thisMonth}
        reachesPct={highestPct}
      />
    </Sheet>
  );
}
