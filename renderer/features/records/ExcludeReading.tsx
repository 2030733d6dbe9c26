import {
  type GivenExclusion,
  isMovedAway,
  readingReasons,
} from '../../../shared-core/probing/readings/exclusion.ts';
import type { Depth, JudgedReading } from '../../../shared-core/probing/readings/reading.ts';
import { readingName } from '../../../shared-core/record-words/reading-texts.ts';
import { McValue } from '../../ui/McValue.tsx';
import { useWords } from '../../words.ts';
import { ExcludeButton } from './ExcludeButton.tsx';

/** Excludes a reading of the meter, or includes it again; nothing for one that the disk changed or that is another board's, which is never used here. */
export function ExcludeReading({
  reading,
  depth,
  onExclude,
  onInclude,
}: {
  reading: JudgedReading;
  /** What it tells. */
  depth: Depth;
  onExclude: (why: GivenExclusion) => Promise<unknown>;
  onInclude: () => void;
}) {
  const words = useWords();
  const { raw, unit, isAbove, excluded } = reading;
  if (reading.isDamaged || isMovedAway(excluded)) return null;
  return (
    <ExcludeButton
      recordName={readingName(reading, depth, words)}
      excluded={excluded}
      reasons={readingReasons}
      onExclude={onExclude}
      onInclude={onInclude}
    >
      <McValue corrected={reading.corrected} raw={raw} unit={unit} isAbove={isAbove} />
    </ExcludeButton>
  );
}
