import type { JudgedReading } from '../../../shared-core/probing/readings/reading.ts';
import { exclude, include } from '../../stores/round-corrections.ts';
import { McValue } from '../../ui/McValue.tsx';
import { DepthOfReading } from '../records/DepthOfReading.tsx';
import { ExcludeReading } from '../records/ExcludeReading.tsx';
import { ReadingRemarks } from '../records/ReadingRemarks.tsx';
import css from './SpotList.module.css';

/** A reading of the round, named by its spot, with its depth and what can be done about it. */
export function SavedReading({ reading }: { reading: JudgedReading }) {
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
      <div className={css.corrections}>
        <ExcludeReading
          reading={reading}
          depth={reading.spot.depth}
          // Closed at once, so that no digit typed meanwhile is lost in the dialog; a refusal is shown in the round.
          onExclude={async (why) => void exclude(reading, why)}
          onInclude={() => void include(reading.id)}
        />
        <DepthOfReading reading={reading} depth={reading.spot.depth} />
      </div>
      <ReadingRemarks reading={reading} />
    </div>
  );
}
