import { useEffect, useRef } from 'react';
import type { JudgedReading } from '../../../shared-core/probing/readings/reading.ts';
import { pinsOf, planSpots, spotName } from '../../../shared-core/probing/readings/spots.ts';
import { exclude, include } from '../../stores/round-corrections.ts';
import { McValue } from '../../ui/McValue.tsx';
import { useWords } from '../../words.ts';
import { ExcludeReading } from '../records/ExcludeReading.tsx';
import { ReadingRemarks } from '../records/ReadingRemarks.tsx';
import css from './SpotList.module.css';
import type { Probing } from './useProbing.ts';

/** The board's planned spots, each with what this round and the one before read there; the one to probe stands out. */
export function SpotList({ board, probed, spotIndex, pinsAt, goTo }: Probing) {
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
    const frame = list.current?.parentElement;
    // In a narrow window the page scrolls instead, and must not: the value field would go out of sight.
    if (current === null || !frame || frame.scrollHeight <= frame.clientHeight) return;
    list.current?.children[current]?.scrollIntoView({ block: 'nearest' });
  }, [current, board.boardId, areHere]);
  return (
    <section className={css.spots} aria-label={say('spots.title')} aria-busy={!areHere}>
      {remark && <small>{say(remark)}</small>}
      <ol ref={list}>
        {plan.map((planned, index) => {
          const pins = pinsOf(planned);
          const readings = readingsAt(index);
          const { at: takenOn, spotPcts } = probed?.lastRound ?? { spotPcts: [] };
          const mcPct = spotPcts[index] ?? null;
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
                onClick={() => goTo(board, index)}
              >
                <span>{say(spotName(planned))}</span>
                {(isOpen || index === current) && (
                  <small className={css.pins}>
                    {index === pinsAt
                      ? say('spots.pull-pins')
                      : index !== spotIndex
                        ? say(pins)
                        : say(pinsAt === null ? 'spots.probe-here' : 'spots.probe-next', { pins })}
                  </small>
                )}
                {takenOn !== undefined && mcPct !== null && (
                  <small>{say('spots.last-round', { takenOn, mcPct })}</small>
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
        corrected={reading.corrected}
        raw={reading.raw}
        unit={reading.unit}
        struck={reading.excluded !== null || !reading.counts}
      />
      <ExcludeReading
        reading={reading}
        // Closed at once, so that no digit typed meanwhile is lost in the dialog; a refusal is shown in the round.
        onExclude={async (why) => void exclude(reading, why)}
        onInclude={() => void include(reading.id)}
      />
      <ReadingRemarks reading={reading} />
    </div>
  );
}
