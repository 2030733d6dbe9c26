import { useEffect, useRef } from 'react';
import type { RoundBoard } from '../../../shared-core/contract/round.ts';
import type { JudgedReading } from '../../../shared-core/probing/readings/reading.ts';
import { planSpots } from '../../../shared-core/probing/readings/spots.ts';
import { exclude, include } from '../../stores/round.ts';
import { McValue } from '../../ui/McValue.tsx';
import { useWords } from '../../words.ts';
import { ExcludeReading } from '../records/ExcludeReading.tsx';
import { ReadingRemarks } from '../records/ReadingRemarks.tsx';
import { pinsOf, spotName } from './next-step.ts';

/** The board's planned spots with the readings of each; the one aimed at is highlighted. */
export function SpotList({
  board,
  readings,
  spotIndex,
  onAim,
}: {
  board: RoundBoard;
  /** Null while they are on their way. */
  readings: readonly JudgedReading[] | null;
  spotIndex: number | null;
  onAim: (spotIndex: number) => void;
}) {
  const { say } = useWords();
  const { plan, remark } = planSpots(board);
  const readingsAt = (index: number | null) =>
    (readings ?? []).filter((reading) => reading.spotIndex === index);
  const extra = readingsAt(null);
  const list = useRef<HTMLOListElement>(null);
  const areHere = readings !== null;
  // biome-ignore lint/correctness/useExhaustiveDependencies: another board's spots are new to the eye as well, and its readings push them down.
  useEffect(() => {
    if (spotIndex !== null) list.current?.children[spotIndex]?.scrollIntoView?.({ block: 'nearest' });
  }, [spotIndex, board.boardId, areHere]);
  return (
    <section className="spot-list" aria-label={say('spots.title')} aria-busy={readings === null}>
      {remark && <p className="plan-remark">{say(remark)}</p>}
      <ol ref={list}>
        {plan.map((planned, index) => (
          <li key={say(spotName(planned))} className={index === spotIndex ? 'spot spot-aimed' : 'spot'}>
            <button
              type="button"
              className="spot-name"
              aria-current={index === spotIndex ? 'step' : undefined}
              onClick={() => onAim(index)}
            >
              <span>{say(spotName(planned))}</span>
              <span className="spot-depth">
                {index === spotIndex
                  ? say('spots.probe-here', { pins: pinsOf(planned) })
                  : say(pinsOf(planned))}
              </span>
            </button>
            {readingsAt(index).map((reading) => (
              <SavedReading key={reading.id} reading={reading} />
            ))}
          </li>
        ))}
        {extra.length > 0 && (
          <li className="spot">
            <p className="spot-name">{say('spots.elsewhere')}</p>
            {extra.map((reading) => (
              <SavedReading key={reading.id} reading={reading} />
            ))}
          </li>
        )}
      </ol>
    </section>
  );
}

function SavedReading({ reading }: { reading: JudgedReading }) {
  return (
    <div className="saved-reading">
      <div className="saved-reading-row">
        <McValue
          mcPct={reading.corrected.mcPct}
          raw={reading.raw}
          unit={reading.unit}
          struck={reading.excluded !== null || !reading.counts}
        />
        <ExcludeReading
          reading={reading}
          onExclude={(why) => exclude(reading.id, why)}
          onInclude={() => void include(reading.id)}
        />
      </div>
      <ReadingRemarks reading={reading} />
    </div>
  );
}
