import { useEffect, useRef, useState } from 'react';
import { movementIn, type PlaceRow } from '../../../shared-core/contract/yard.ts';
import { emcOfYear, SAME_EMC_PCT } from '../../../shared-core/wood/climate/climate.ts';
import { shownPoints } from '../../../shared-core/wood/moisture/shown-points.ts';
import { message } from '../../../shared-core/words/message.ts';
import { hrefOf } from '../../stores/navigation.ts';
import { Banner } from '../../ui/Banner.tsx';
import { Button } from '../../ui/Button.tsx';
import { Facts } from '../../ui/Facts.tsx';
import { Menu } from '../../ui/Menu.tsx';
import { Sheet } from '../../ui/Screen.tsx';
import { useWords } from '../../words.ts';
import { MeasuredAir } from './MeasuredAir.tsx';
import { type Ending, PlaceEnding } from './PlaceEnding.tsx';
import { airSourceText, movementCaution } from './place-words.ts';
import css from './places.module.css';
import { YearChart } from './YearChart.tsx';

/** A place: its EMC by typical air and by the readings there, its year, and the stacks there. */
export function PlaceCard({
  place,
  isNew,
  highestPct,
  onEdit,
}: {
  place: PlaceRow;
  /** It was just added, so the focus goes to it. */
  isNew: boolean;
  /** Of any month at any place, so that all are drawn to one scale, % MC. */
  highestPct: number;
  onEdit: () => void;
}) {
  const { say, formats } = useWords();
  const [ending, setEnding] = useState<Ending | null>(null);
  const edit = useRef<HTMLButtonElement>(null);
  useEffect(() => {
    if (isNew) edit.current?.focus();
  }, [isNew]);
  const movement = movementIn(place);
  const caution = movementCaution(movement);
  const thisMonth = new Date().getMonth();
  const { name: placeName, kind, air, airSource, airOffset, stacks } = place;
  const offsetPct = airOffset?.offsetPct ?? 0;
  const { boards = 0, measuredPct } = airOffset ?? {};
  // What is stated follows what was measured only once that moved by more.
  const isAllMeasured = Math.abs(offsetPct - (measuredPct ?? 0)) < 2 * SAME_EMC_PCT;
  const from = boards > 0 ? 'boards' : isAllMeasured ? 'measured' : 'others';
  const { monthlyEmcPct, driestEmcPct, driestMonth } = emcOfYear(air, offsetPct);
  const off = {
    typicalPct: driestEmcPct - offsetPct,
    offPoints: Math.abs(shownPoints(driestEmcPct, driestEmcPct - offsetPct)),
    direction: offsetPct > 0 ? ('damper' as const) : ('drier' as const),
  };
  return (
    <Sheet
      title={placeName}
      isName
      actions={
        <>
          <Button ref={edit} onClick={onEdit} aria-label={say('places.edit', { placeName })}>
            {say('common.edit')}
          </Button>
          <Menu
            title={say('life.more')}
            label={say('closing.more-of', { name: placeName })}
            items={(['merge', 'close', 'delete'] as const).map((id) => ({
              id,
              title: say(`closing.${id}-place`),
              onPress: () => setEnding(id),
            }))}
          />
        </>
      }
    >
      {place.isDamaged && <Banner kind="caution">{say('damaged.place')}</Banner>}
      <p className="soft">
        {place.isDamaged
          ? say(`places.kind.${kind}`)
          : say('places.kind-and-air', {
              kind: message(`places.kind.${kind}`),
              airSource: airSourceText(airSource),
            })}
      </p>
      <p className="soft">
        {say('places.movement-here', { movement: message(`places.movement.${movement}`) })}
      </p>
      {caution && <p>{say(caution)}</p>}
      <div className={css.figures}>
        <Facts
          of={
            driestMonth === null
              ? [[say('places.emc-all-year'), formats.mc(driestEmcPct)]]
              : [
                  [
                    say('places.emc-in-month', { monthName: formats.month(thisMonth + 1) }),
                    formats.mc(monthlyEmcPct[thisMonth]!),
                  ],
                  [
                    say('places.lowest'),
                    <>
                      {formats.mc(driestEmcPct)}{' '}
                      <span>{say('places.in-month', { monthName: formats.month(driestMonth) })}</span>
                    </>,
                  ],
                ]
          }
        />
      </div>
      {airOffset && (
        <p>
          {measuredPct === undefined
            ? say('places.other-air', { ...off, boards })
            : say('places.other-air-measured', { ...off, boards, from })}
        </p>
      )}
      <YearChart
        {...{ placeName, air, offsetPct }}
        offsetFrom={
          measuredPct === undefined ? 'by-readings' : from === 'measured' ? 'by-measured' : 'by-both'
        }
        reachesPct={highestPct}
      />
      <MeasuredAir place={place} />
      {stacks.length === 0 ? (
        <p className="soft">{say('places.no-boards')}</p>
      ) : (
        <ul aria-label={say('places.stacks-at', { placeName })} className={css.stacks}>
          {stacks.map(({ id, name, boards }) => (
            <li key={id}>
              <a href={hrefOf({ name: 'stack', id })} translate="no">
                {name}
              </a>{' '}
              {say('places.boards', { boards })}
            </li>
          ))}
        </ul>
      )}
      {ending && (
        <PlaceEnding
          place={place}
          ending={ending}
          onOther={setEnding}
          // A dialog that opened another one must not close that.
          onClose={() => setEnding((now) => (now === ending ? null : now))}
        />
      )}
    </Sheet>
  );
}
