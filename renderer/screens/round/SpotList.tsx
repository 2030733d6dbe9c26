import { useEffect, useRef, useState } from 'react';
import type { RoundBoard } from '../../../shared-core/contract/round.ts';
import type { JudgedReading } from '../../../shared-core/probing/reading.ts';
import { planSpots } from '../../../shared-core/probing/spots.ts';
import { Button } from '../../parts/Button.tsx';
import { McValue } from '../../parts/McValue.tsx';
import { Said } from '../../parts/Said.tsx';
import { putBack } from '../../stores/round.ts';
import { useUnits } from '../../stores/settings.ts';
import { depthWords, spotWords } from './next-step.ts';
import { SetAsideDialog } from './SetAsideDialog.tsx';
import { weightWords } from './suspicion-words.ts';

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
  const [asking, setAsking] = useState<JudgedReading | null>(null);
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
              <KeptReading key={reading.id} reading={reading} onSetAside={() => setAsking(reading)} />
            ))}
          </li>
        ))}
        {extra.length > 0 && (
          <li className="spot">
            <p className="spot-name">Elsewhere on the board</p>
            {extra.map((reading) => (
              <KeptReading key={reading.id} reading={reading} onSetAside={() => setAsking(reading)} />
            ))}
          </li>
        )}
      </ol>
      {asking && <SetAsideDialog reading={asking} onClose={() => setAsking(null)} />}
    </section>
  );
}

function KeptReading({ reading, onSetAside }: { reading: JudgedReading; onSetAside: () => void }) {
  const isAside = reading.setAside !== null;
  return (
    <div className="kept-reading">
      <div className="kept-reading-row">
        <McValue
          mcPct={reading.corrected.mcPct}
          raw={reading.raw}
          unit={reading.unit}
          struck={isAside || !reading.counts}
        />
        {isAside ? (
          <Button kind="quiet" onClick={() => void putBack(reading.id)}>
            Put back
          </Button>
        ) : (
          <Button kind="quiet" onClick={onSetAside}>
            Set aside
          </Button>
        )}
      </div>
      {isAside && <p className="kept-aside">Set aside: {reading.setAside}</p>}
      {!isAside &&
        reading.suspicions.map((suspicion) => (
          <p key={suspicion.rule} className={`suspicion suspicion-${suspicion.weight}`}>
            <strong>{weightWords[suspicion.weight]}.</strong>{' '}
            <Said>{`${suspicion.why} ${suspicion.whatToDo}`}</Said>
          </p>
        ))}
    </div>
  );
}
