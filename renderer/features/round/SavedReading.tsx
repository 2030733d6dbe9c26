import { depthRead } from '../../../shared-core/probing/readings/depth-read.ts';
import type { JudgedReading, Suspicion } from '../../../shared-core/probing/readings/reading.ts';
import { meantBy } from '../../../shared-core/probing/readings/typing-slip.ts';
import { depthWords } from '../../../shared-core/record-words/depth-words.ts';
import { useRound } from '../../stores/round.ts';
import { exclude, include } from '../../stores/round-corrections.ts';
import { replaceByTyped } from '../../stores/round-saving.ts';
import { Button } from '../../ui/Button.tsx';
import { McValue, rawText, shownText } from '../../ui/McValue.tsx';
import { useWords } from '../../words.ts';
import { EditReading } from '../records/EditReading.tsx';
import { ExcludeReading } from '../records/ExcludeReading.tsx';
import { ReadingMore } from '../records/ReadingMore.tsx';
import { ReadingRemarks } from '../records/ReadingRemarks.tsx';
import css from './SpotList.module.css';

/** A reading of the round, named by its spot, with its depth and what can be done about it. */
export function SavedReading({
  reading,
  thicknessMm,
  shared,
  isByOffMeter,
  isSpotRead = false,
}: {
  reading: JudgedReading;
  /** Of its board. */
  thicknessMm: number;
  /** What is said elsewhere: above all readings, or at another one. */
  shared: readonly Suspicion[];
  /** Its meter was off when checked, and it is not corrected for that. */
  isByOffMeter: boolean;
  /** Another reading of its spot is used: what was meant by a slip was typed since. */
  isSpotRead?: boolean;
}) {
  const words = useWords();
  // Its depth may have been changed since: it no longer tells what its spot is for.
  const told = depthRead(reading, thicknessMm);
  const meant = isSpotRead ? null : meantBy(reading);
  // What was saved last has that button beside the value field.
  const isSavedLast = useRound(({ saved }) => saved?.reading.id === reading.id);
  return (
    <div
      className={reading.excluded === null ? css.saved : `${css.saved} ${css.excluded}`}
      data-reading={reading.id}
    >
      <McValue
        corrected={reading.corrected}
        raw={reading.raw}
        unit={reading.unit}
        isAbove={reading.isAbove}
        struck={reading.excluded !== null || !reading.counts}
      />
      <div className={css.below}>
        {!reading.isDamaged && (
          <small>
            <span className={css.lowRaw}>
              {words.say('reading.raw')} {shownText(reading, words)} ·{' '}
            </span>
            {depthWords(reading, thicknessMm, words)}
          </small>
        )}
        <span className={css.corrections}>
          <ExcludeReading
            reading={reading}
            depth={told}
            // Closed at once, so that no digit typed meanwhile is lost in the dialog; a refusal is shown in the round.
            onExclude={async (why) => void exclude(reading, why)}
            onInclude={() => void include(reading.id)}
          />
          <EditReading reading={reading} depth={told} />
          <ReadingMore reading={reading} depth={told} actions={['depth', 'board']} />
        </span>
      </div>
      {isByOffMeter && <small className={css.off}>{words.say('spots.meter-off')}</small>}
      <ReadingRemarks reading={reading} but={shared} />
      {meant !== null && !isSavedLast && (
        <Button onClick={() => void replaceByTyped({ raw: meant }, reading)}>
          {words.say('saved.use-meant', { shownValue: rawText(meant, reading.unit, words.formats) })}
        </Button>
      )}
    </div>
  );
}
