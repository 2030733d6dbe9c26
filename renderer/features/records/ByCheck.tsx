import type { JudgedReading } from '../../../shared-core/probing/readings/reading.ts';
import { correctionParts } from '../../../shared-core/wood/moisture/correction-parts.ts';
import { useQuery } from '../../data/useQuery.ts';
import { useWords } from '../../words.ts';

/** That a reading is corrected by a check of its meter, by how much, and of which day the check is. */
export function ByCheck({ reading }: { reading: JudgedReading }) {
  const { say, formats } = useWords();
  const checked = useQuery('meterChecks.list', {}).output ?? [];
  const { meterCheck } = correctionParts(reading);
  if (meterCheck === null) return null;
  const takenMs = Date.parse(reading.takenAt);
  const [last] = checked
    .filter(({ block }) => block.meterId === reading.meterId)
    .flatMap((each) => each.checks)
    .filter(({ excluded, state }) => excluded === null && state === 'off')
    .filter(({ at }) => Date.parse(at) <= takenMs)
    .toSorted((one, other) => Date.parse(other.at) - Date.parse(one.at));
  const effect = formats.signedPoints(meterCheck);
  return last === undefined
    ? say('board.by-check', { effect })
    : say('board.by-check-of', { checkedOn: last.at, effect });
}
