import { useEffect, useRef } from 'react';
import type { ProbedBoard, RoundBoard } from '../../../shared-core/contract/round.ts';
import type { JudgedReading } from '../../../shared-core/probing/readings/reading.ts';
import { planSpots } from '../../../shared-core/probing/readings/spots.ts';
import { exclude, include } from '../../stores/round.ts';
import { McValue } from '../../ui/McValue.tsx';
import { useWords } from '../../words.ts';
import { ExcludeReading } from '../records/ExcludeReading.tsx';
import { ReadingRemarks } from '../records/ReadingRemarks.tsx';
import { pinsOf, spotName } from './next-step.ts';
import css from './SpotList.module.css';

/** The board's planned spots, each with what this round and the one before read there; the one to probe stands out. */
export function SpotList({
  board,
  probed,
  spotIndex,
  pinsAt,
  onAim,
}: {
  board: RoundBoard;
  /** Null while its readings are on their way. */
  probed: ProbedBoard | null;
  spotIndex: number | null;
  /** The spot that the pins which are in were saved at: it stands out until they are pulled. */
  pinsAt: number | null;
  onAim: (spotIndex: number) => void;
}) {
  const { say } = useWords();
  const { plan, remark } = planSpots(board);
  const readingsAt = (index: number | null) =>
    (probed?.assessment?.readings ?? []).filter((reading) => reading.spotIndex === index);
  const extra = readingsAt(null);
  const list = useRef<HTMLOListElement>(null);
  const areHere = probed !== null;
  const current = pinsAt ?? spotIndex;
  // biome-ignore lint/correctness/useExhaustiveDependencies: another board's spots are new to the eye as well, and its readings push them down.
  useEffect(() => {
    if (current !== null) list.current?.children[current]?.scrollIntoView?.({ block: 'nearest' });
  }, [current, board.boardId, areHere]);
  return (
    <section className={css.spots} aria-label={say('spots.title')} aria-busy={!areHere}>
      {remark && <p className={css.remark}>{say(remark)}</p>}
      <ol ref={list}>
        {plan.map((planned, index) => {
          const pins = pinsOf(planned);
          const readings = readingsAt(index);
          const before = probed?.lastRound?.readings.find((reading) => reading.spotIndex === index);
          const isOpen = !readings.some(({ counts }) => counts);
          return (
            <li
              key={say(spotName(planned))}
              className={index === current ? `${css.spot} ${css.aimed}` : css.spot}
            >
              <button
                type="button"
                className={css.name}
                aria-current={index === current ? 'step' : undefined}
                onClick={() => onAim(index)}
              >
                <span>{say(spotName(planned))}</span>
                {(isOpen || index === current) && (
                  <span className={`${css.detail} ${css.pins}`}>
                    {index === pinsAt
                      ? say('spots.pull-pins')
                      : index !== spotIndex
                        ? say(pins)
                        : say(pinsAt === null ? 'spots.probe-here' : 'spots.probe-next', { pins })}
                  </span>
                )}
                {before && probed?.lastRound && (
                  <span className={css.detail}>
                    {say('spots.last-round', { takenOn: probed.lastRound.at, mcPct: before.mcPct })}
                  </span>
                )}
              </button>
              {readings.map((reading) => (
                <SavedReading key={reading.id} reading={reading} />
              ))}
            </li>
          );
        })}
        {extra.length > 0 && (
          <li className={css.spot}>
            <p className={css.name}>{say('spots.elsewhere')}</p>
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
    <div
      className={reading.excluded === null ? css.saved : `${css.saved} ${css.excluded}`}
      data-reading={reading.id}
    >
      <McValue
        mcPct={reading.corrected.mcPct}
        raw={reading.raw}
        unit={reading.unit}
        struck={reading.excluded !== null || !reading.counts}
      />
      <ExcludeReading
        reading={reading}
        // Closed at once, so that no digit typed meanwhile is lost in the dialog; a refusal is shown in the round.
        onExclude={async (why) => void exclude(reading.id, why)}
        onInclude={() => void include(reading.id)}
      />
      <ReadingRemarks reading={reading} />
    </div>
  );
}
