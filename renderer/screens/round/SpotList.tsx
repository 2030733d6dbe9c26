import { useEffect, useRef } from 'react';
import type { RoundBoard } from '../../../shared-core/contract/round.ts';
import type { JudgedReading } from '../../../shared-core/probing/readings/reading.ts';
import { planSpots } from '../../../shared-core/probing/readings/spots.ts';
import { ExcludeReading } from '../../parts/ExcludeReading.tsx';
import { exclusionText } from '../../parts/exclusion-text.ts';
import { McValue } from '../../parts/McValue.tsx';
import { Said } from '../../parts/Said.tsx';
import { exclude, include } from '../../stores/round.ts';
import { useUnits } from '../../stores/settings.ts';
import { useWords } from '../../words.ts';
import { depthWords, spotWords } from './next-step.ts';
import { severityWords } from './suspicion-words.ts';

/** The board's planned spots with what was read at each; the one aimed at stands out. */
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
  const units = useUnits();
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
    <section className="spot-list" aria-label="Spots" aria-busy={readings === null}>
      {remark && (
        <p className="plan-remark">
          <Said>{remark}</Said>
        </p>
      )}
      <ol ref={list}>
        {plan.map((planned, index) => (
          <li key={planned.label} className={index === spotIndex ? 'spot spot-aimed' : 'spot'}>
            <button
              type="button"
              className="spot-name"
              aria-current={index === spotIndex ? 'step' : undefined}
              onClick={() => onAim(index)}
            >
              <span>{spotWords(planned, units)}</span>
              <span className="spot-depth">
                {index === spotIndex ? '▶ read this one: ' : ''}
                {depthWords(planned, units)}
              </span>
            </button>
            {readingsAt(index).map((reading) => (
              <SavedReading key={reading.id} reading={reading} />
            ))}
          </li>
        ))}
        {extra.length > 0 && (
          <li className="spot">
            <p className="spot-name">Elsewhere on the board</p>
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
  const { say } = useWords();
  const isExcluded = reading.excluded !== null;
  return (
    <div className="saved-reading">
      <div className="saved-reading-row">
        <McValue
          mcPct={reading.corrected.mcPct}
          raw={reading.raw}
          unit={reading.unit}
          struck={isExcluded || !reading.counts}
        />
        <ExcludeReading
          reading={reading}
          onExclude={(why) => exclude(reading.id, why)}
          onInclude={() => void include(reading.id)}
        />
      </div>
      {reading.excluded !== null && (
        <p className="saved-excluded">
          {say('exclude.excluded', { reason: exclusionText(reading.excluded, say) })}
        </p>
      )}
      {!isExcluded &&
        reading.suspicions.map((suspicion) => (
          <p key={suspicion.rule} className={`suspicion suspicion-${suspicion.severity}`}>
            <strong>{severityWords[suspicion.severity]}.</strong> {say(suspicion.why)}{' '}
            {say(suspicion.whatToDo)}
          </p>
        ))}
    </div>
  );
}
