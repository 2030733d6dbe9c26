import type { ForecastDetails } from '../../../shared-core/contract/forecast.ts';
import { readyWords } from '../../../shared-core/history-chart/ready-words.ts';
import { useWords } from '../../words.ts';
import css from './board.module.css';

/** When a board is likely ready in a place. A line breaks between the day and its interval, never in either. */
export function ReadyWhen({ place }: { place: ForecastDetails['places'][number] }) {
  const [when, interval] = (readyWords(place, useWords()) ?? '–').split(/ (?=\()/);
  if (interval === undefined) return when;
  return (
    <>
      <span className={css.unbroken}>{when}</span> <span className={css.unbroken}>{interval}</span>
    </>
  );
}
