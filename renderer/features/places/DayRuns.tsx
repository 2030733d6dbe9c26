import { DAY_MS, isoOf } from '../../../shared-core/time.ts';
import { useWords } from '../../words.ts';

/** Says when a day of what sensors measured begins and ends here: it is a day of UTC, so that two computers mean the same. */
export function DayRuns({ dayMs }: { dayMs: number }) {
  const { say } = useWords();
  const from = new Date(dayMs);
  if (from.getHours() === 0 && from.getMinutes() === 0) return null;
  const facts = { measuredOn: isoOf(dayMs).slice(0, 10), fromAt: isoOf(dayMs), toAt: isoOf(dayMs + DAY_MS) };
  return <p className="soft">{say('places.day-runs', facts)}</p>;
}
