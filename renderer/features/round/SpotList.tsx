import { useEffect, useRef } from 'react';
import { depthRead } from '../../../shared-core/probing/readings/depth-read.ts';
import { isOfSpot } from '../../../shared-core/probing/readings/open-spot.ts';
import type { JudgedReading, Suspicion } from '../../../shared-core/probing/readings/reading.ts';
import {
  extraSpots,
  firstSpot,
  isReadAt,
  type PlannedSpot,
  planSpots,
  spotAt,
  spotName,
} from '../../../shared-core/probing/readings/spots.ts';
import { isReadFrozen } from '../../../shared-core/probing/suspicions/suspicion.ts';
import { useWords } from '../../words.ts';
import { Remarks, suspicionsOfAll } from '../records/ReadingRemarks.tsx';
import { DrynessQuestion, isTooDry } from './DrynessQuestion.tsx';
import { MoreSpots } from './MoreSpots.tsx';
import { SavedReading } from './SavedReading.tsx';
import { SpotItem } from './SpotItem.tsx';
import css from './SpotList.module.css';
import { TemperatureDoubt, temperatureDoubt } from './TemperatureDoubt.tsx';
import type { Probing } from './useProbing.ts';

/** The board's spots, each with what this round and the one before read there; the one to probe stands out. */
export function SpotList(probing: Probing) {
  const { board, probed, spotIndex, pinsAt, pinsSaved, isByOffMeter, goTo } = probing;
  const { say } = useWords();
  const { plan, remarks } = planSpots(board);
  const all = probed?.assessment?.readings ?? [];
  const doubt = temperatureDoubt(all);
  const shared = suspicionsOfAll(all).filter(({ rule }) => rule !== doubt?.rule);
  const said = doubt === null ? shared : [...shared, doubt];
  const readingsAt = (index: number, planned: PlannedSpot): JudgedReading[] =>
    all.filter((reading) => isOfSpot(reading, index, planned, board.thicknessMm));
  const newestWith = new Map<string, number>();
  for (const { id, suspicions } of all.toSorted((a, b) => a.id - b.id)) {
    for (const { rule } of suspicions) newestWith.set(rule, id);
  }
  /** A note is shown only at the newest reading that has it. */
  const saidElsewhere = (reading: JudgedReading): Suspicion[] => [
    ...said,
    ...reading.suspicions.filter(
      // How exact it is matters only of what is used.
      ({ rule, severity }) =>
        severity === 'note' && (isReadFrozen(reading) || newestWith.get(rule) !== reading.id),
    ),
  ];
  const current = pinsAt ?? spotIndex;
  const extras = extraSpots(board).filter(
    ([index, planned]) => index === current || readingsAt(index, planned).length > 0,
  );
  const numbered = [...plan.entries()];
  const first = firstSpot(plan);
  // In the order in which they are gone through.
  const spots = [...numbered.slice(first), ...numbered.slice(0, first), ...extras];
  const shown = new Set(spots.flatMap(([index, planned]) => readingsAt(index, planned)));
  // Taken by another plan, as where the thickness was corrected since; or at a depth that was changed since.
  const others = all.filter((reading) => !shown.has(reading));
  const nameOf = (reading: JudgedReading): string => {
    const planned = reading.spotIndex === null ? undefined : spotAt(board, reading.spotIndex);
    const depth = depthRead(reading, board.thicknessMm);
    return planned && isReadAt(planned, reading.spot)
      ? say(spotName({ along: planned.along, spot: { ...planned.spot, depth } }))
      : say('spots.elsewhere');
  };
  const otherNames = [...new Set(others.map(nameOf))];
  const isCut = all.some(({ spot, excluded }) => spot.face === 'fresh-cut' && excluded === null);
  const list = useRef<HTMLOListElement>(null);
  const areHere = probed !== null;
  // biome-ignore lint/correctness/useExhaustiveDependencies: another board's spots are new to the eye as well, and its readings push them down.
  useEffect(() => {
    const frame = list.current?.parentElement;
    // In a narrow window the page scrolls instead, and must not: the value field would go out of sight.
    if (!frame || frame.scrollHeight <= frame.clientHeight) return;
    list.current?.querySelector('[aria-current]')?.parentElement?.scrollIntoView({ block: 'nearest' });
  }, [current, board.boardId, areHere]);
  const lastRoundAt = (index: number) => {
    const { at: takenOn, spotPcts } = probed?.lastRound ?? { spotPcts: [] };
    const mcPct = spotPcts[index] ?? null;
    return (
      takenOn !== undefined && mcPct !== null && <small>{say('spots.last-round', { takenOn, mcPct })}</small>
    );
  };
  return (
    <section className={css.spots} aria-label={say('spots.title')} aria-busy={!areHere}>
      {remarks.length > 0 && <p className={css.remark}>{remarks.map((remark) => say(remark)).join(' ')}</p>}
      {doubt && <TemperatureDoubt {...{ doubt, probing }} />}
      <Remarks of={shared} />
      {isTooDry(all) && <DrynessQuestion boardId={board.boardId} readings={all} />}
      <ol ref={list}>
        {spots.map(([index, planned]) => (
          <SpotItem
            key={index}
            planned={planned}
            thicknessMm={board.thicknessMm}
            readings={readingsAt(index, planned)}
            saidElsewhere={saidElsewhere}
            isCurrent={index === current}
            isAimed={index === spotIndex}
            hasPins={pinsAt === null ? null : index === pinsAt ? 'here' : 'elsewhere'}
            pinsSaved={pinsSaved}
            isByOffMeter={isByOffMeter}
            isCutMade={planned.by === 'fresh-cut' && isCut}
            lastRound={lastRoundAt(index)}
            onChoose={() => goTo(board, index)}
          />
        ))}
        {otherNames.map((name) => (
          <li key={name} className={css.spot}>
            <p className={css.name}>{name}</p>
            {others
              .filter((reading) => nameOf(reading) === name)
              .map((reading) => (
                <SavedReading
                  key={reading.id}
                  reading={reading}
                  thicknessMm={board.thicknessMm}
                  shared={saidElsewhere(reading)}
                  isByOffMeter={isByOffMeter(reading)}
                />
              ))}
          </li>
        ))}
      </ol>
      <MoreSpots {...probing} />
    </section>
  );
}
