import { useState } from 'react';
import type { PlaceAirLog, TypedAir } from '../../../shared-core/contract/air.ts';
import type { PlaceRow } from '../../../shared-core/contract/yard.ts';
import { DAY_MS, isoOf } from '../../../shared-core/time.ts';
import { bridge } from '../../data/bridge.ts';
import { Actions, Button } from '../../ui/Button.tsx';
import { dayOf } from '../../ui/days.ts';
import { Menu } from '../../ui/Menu.tsx';
import { Unfold } from '../../ui/Unfold.tsx';
import { useWords } from '../../words.ts';
import { ConfirmDialog } from '../closing/ConfirmDialog.tsx';
import { DayRuns } from './DayRuns.tsx';
import { ExcludeDaysForm } from './ExcludeDaysForm.tsx';
import css from './places.module.css';
import { TypeAirForm } from './TypeAirForm.tsx';

/** So many days are added to the list at a time. */
const DAYS_AT_A_TIME = 14;

type Place = Pick<PlaceRow, 'id' | 'name'>;
type Day = PlaceAirLog['days'][number];
type Doing = { what: 'edit' | 'delete'; typed: TypedAir } | { what: 'exclude' | 'include'; day: string };

/** Whether a value was given for a day. */
export const isOf =
  ({ dayMs }: Pick<Day, 'dayMs'>) =>
  ({ at }: TypedAir): boolean =>
    Math.floor(Date.parse(at) / DAY_MS) * DAY_MS === dayMs;

/** Each measured day, the newest first: why it is not used, and what a person can do about it. */
export function MeasuredDays({
  place,
  log: { days, typed },
}: {
  place: Place;
  log: Pick<PlaceAirLog, 'days' | 'typed'>;
}) {
  const { say } = useWords();
  const [most, setMost] = useState(DAYS_AT_A_TIME);
  const [doing, setDoing] = useState<Doing | null>(null);
  const onClose = () => setDoing(null);
  const newest = days.at(-1);
  return (
    <>
      <Unfold words={say('places.days', { days: days.length })}>
        {newest && <DayRuns dayMs={newest.dayMs} />}
        <ul className="list" aria-label={say('places.days-at', { placeName: place.name })}>
          {days
            .toReversed()
            .slice(0, most)
            .map((day) => (
              <OneDay key={day.dayMs} day={day} typed={typed.filter(isOf(day))} onDo={setDoing} />
            ))}
        </ul>
        {days.length > most && (
          <Actions>
            <Button kind="quiet" onClick={() => setMost(most + DAYS_AT_A_TIME)}>
              {say('places.earlier-days')}
            </Button>
          </Actions>
        )}
      </Unfold>
      {doing?.what === 'edit' && <TypeAirForm place={place} typed={doing.typed} onClose={onClose} />}
      {doing?.what === 'delete' && <DeleteAir typed={doing.typed} onClose={onClose} />}
      {(doing?.what === 'exclude' || doing?.what === 'include') && (
        <ExcludeDaysForm place={place} what={doing.what} day={doing.day} onClose={onClose} />
      )}
    </>
  );
}

function OneDay({
  day,
  typed,
  onDo,
}: {
  day: Day;
  /** What a person gave for it; several where two yards came together, or one was redone. */
  typed: readonly TypedAir[];
  onDo: (doing: Doing) => void;
}) {
  const { say } = useWords();
  const { dayMs, tempC, rh, emcPct, values, doubt } = day;
  const utcDay = isoOf(dayMs).slice(0, 10);
  const [what] =
    typed.length > 0 || doubt === 'later'
      ? []
      : doubt === 'excluded'
        ? (['include'] as const)
        : (['exclude'] as const);
  const typedNote = values > typed.length ? 'places.day-typed-instead' : 'places.day-typed';
  const notes = [
    ...(doubt === null ? [] : [say(`places.day-unused.${doubt}`)]),
    ...(typed.length === 0 ? [] : [say(typedNote)]),
    ...typed
      .filter(({ isOutdated }) => isOutdated)
      .map((each) => say('places.day-outdated', { airTempC: each.tempC, humidityRhPct: 100 * each.rh })),
  ];
  return (
    <li className={typed.length > 1 ? css.sensor : css.day}>
      <span>
        {say('places.day', { measuredOn: utcDay, airTempC: tempC, humidityRhPct: 100 * rh, emcPct })}{' '}
        <span className="soft">{notes.join(' ')}</span>
      </span>
      {typed.map((each) => {
        const value = say('places.typed-value', {
          measuredOn: dayOf(new Date(each.at)),
          humidityRhPct: 100 * each.rh,
        });
        return (
          <Menu
            key={each.id}
            title={typed.length > 1 ? value : say('life.more')}
            label={say('closing.more-of', { name: value })}
            items={(['edit', 'delete'] as const).map((id) => ({
              id,
              title: say(id === 'edit' ? 'common.edit' : 'life.delete'),
              onPress: () => onDo({ what: id, typed: each }),
            }))}
          />
        );
      })}
      {what && (
        <Button
          kind="quiet"
          aria-label={say(`places.${what}-day`, { measuredOn: utcDay })}
          onClick={() => onDo({ what, day: utcDay })}
        >
          {say(`places.${what}`)}
        </Button>
      )}
    </li>
  );
}

function DeleteAir({ typed: { id, at }, onClose }: { typed: TypedAir; onClose: () => void }) {
  const { say } = useWords();
  const measuredOn = dayOf(new Date(at));
  return (
    <ConfirmDialog
      title={say('places.delete-air', { measuredOn })}
      effect={say('places.delete-air-effect')}
      doWords={say('life.delete')}
      doneWords={say('places.air-deleted', { measuredOn })}
      onDo={() => bridge().command('air.delete', { id })}
      onClose={onClose}
    />
  );
}
