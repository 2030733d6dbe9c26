import type { ReactNode } from 'react';
import type { JudgedReading, Suspicion } from '../../../shared-core/probing/readings/reading.ts';
import { howTo, type PlannedSpot, pinsOf, spotName } from '../../../shared-core/probing/readings/spots.ts';
import { message } from '../../../shared-core/words/message.ts';

import { useWords } from '../../words.ts';
import { SavedReading } from './SavedReading.tsx';
import css from './SpotList.module.css';
import type { Probing } from './useProbing.ts';

/** One spot: its name, how to get there and what to do there, and what was read. */
export function SpotItem({
  planned,
  thicknessMm,
  readings,
  saidElsewhere,
  isCurrent,
  isAimed,
  hasPins,
  pinsSaved,
  isByOffMeter,
  isCutMade,
  lastRound,
  onChoose,
}: {
  planned: PlannedSpot;
  /** Of the board. */
  thicknessMm: number;
  readings: readonly JudgedReading[];
  /** What is said once for several readings of the board, and not at this one. */
  saidElsewhere: (reading: JudgedReading) => readonly Suspicion[];
  isCurrent: boolean;
  /** The next reading will belong to it. */
  isAimed: boolean;
  /** The spot that the pins which are in were saved at; null for none. */
  hasPins: 'here' | 'elsewhere' | null;
  pinsSaved: Probing['pinsSaved'];
  isByOffMeter: Probing['isByOffMeter'];
  /** Its fresh crosscut was read at the board's other spot on it. */
  isCutMade: boolean;
  /** What the round before read here. */
  lastRound?: ReactNode;
  onChoose: () => void;
}) {
  const { say } = useWords();
  const pins = pinsOf(planned);
  const how = isCutMade ? message('spot.how-same-cut') : howTo(planned);
  const isOpen = !readings.some(({ counts }) => counts);
  const [here, next] = ['spots.probe-here', 'spots.probe-next'] as const;
  return (
    <li className={isCurrent ? `${css.spot} ${css.aimed}` : css.spot}>
      <button
        type="button"
        className={css.name}
        aria-current={isCurrent ? 'step' : undefined}
        onClick={onChoose}
      >
        <span>{say(spotName(planned))}</span>
        {(isOpen || isCurrent) && (
          <small className={css.pins}>
            {hasPins === 'here'
              ? say('spots.pull-pins', { saved: pinsSaved })
              : isAimed
                ? say(hasPins === null ? here : next, { pins })
                : say(pins)}
          </small>
        )}
        {isAimed && hasPins !== 'here' && how && <small className={css.pins}>{say(how)}</small>}
        {lastRound}
      </button>
      {readings.map((reading) => (
        <SavedReading
          key={reading.id}
          reading={reading}
          thicknessMm={thicknessMm}
          shared={saidElsewhere(reading)}
          isByOffMeter={isByOffMeter(reading)}
          isSpotRead={readings.some((other) => other !== reading && other.counts)}
        />
      ))}
    </li>
  );
}
