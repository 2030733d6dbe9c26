import { useState } from 'react';
import type { PlaceRow } from '../../../shared-core/contract/yard.ts';
import { monthNames } from '../../../shared-core/units/month-names.ts';
import { emcOfYear } from '../../../shared-core/wood/climate/climate.ts';
import { Button } from '../../parts/Button.tsx';
import { pctWords } from '../../parts/McValue.tsx';
import { EmptyState, Failed, Loading, Screen, Sheet } from '../../parts/Screen.tsx';
import { useUnits } from '../../stores/settings.ts';
import { useAnswer } from '../../useAnswer.ts';
import { placeKindWords } from './kinds.ts';
import { PlaceForm } from './PlaceForm.tsx';
import { YearChart } from './YearChart.tsx';
import './places.css';

/** Where wood stands, with the air there and what wood comes to in it. */
export function PlacesScreen() {
  const places = useAnswer('places.list', {});
  const units = useUnits();
  const [form, setForm] = useState<'closed' | 'new' | PlaceRow>('closed');
  const thisMonth = new Date().getMonth() + 1;
  return (
    <Screen
      title="Places"
      lead="Where stacks stand. The air of a place decides how dry wood can get there."
      actions={
        <Button kind="main" onClick={() => setForm('new')}>
          Add a place
        </Button>
      }
    >
      {places.error && <Failed sentence={places.error} again={places.again} />}
      {places.loading && <Loading what="the places" />}
      {places.output?.length === 0 && (
        <EmptyState sentence="No place yet. A stack needs one: the shed, the yard, the shop.">
          <Button kind="main" onClick={() => setForm('new')}>
            Add the first place
          </Button>
        </EmptyState>
      )}
      <div className="place-cards">
        {places.output?.map((place) => (
          <PlaceCard key={place.id} place={place} thisMonth={thisMonth} onChange={() => setForm(place)} />
        ))}
      </div>
      {form !== 'closed' && (
        <PlaceForm
          place={form === 'new' ? null : form}
          units={units}
          thisMonth={thisMonth}
          onClose={() => setForm('closed')}
        />
      )}
    </Screen>
  );
}

function PlaceCard({
  place,
  thisMonth,
  onChange,
}: {
  place: PlaceRow;
  thisMonth: number;
  onChange: () => void;
}) {
  return (
    <Sheet
      title={place.name}
      actions={
        <Button onClick={onChange} aria-label={`Change ${place.name}`}>
          Change
        </Button>
      }
    >
      <p className="place-kind">{placeKindWords[place.kind]}</p>
      <dl className="place-figures">
        <div>
          <dt>Wood comes to, in {monthNames[thisMonth - 1]}</dt>
          <dd>{pctWords(place.emcNowPct)} %</dd>
        </div>
        <div>
          <dt>Driest of the year</dt>
          <dd>
            {pctWords(place.driestEmcPct)} %{' '}
            <span className="place-month">in {monthNames[place.driestMonth - 1]}</span>
          </dd>
        </div>
      </dl>
      <YearChart
        placeName={place.name}
        emcPct={emcOfYear(place.air).monthlyEmcPct}
        driestMonth={place.driestMonth}
        thisMonth={thisMonth}
      />
    </Sheet>
  );
}
