import { isBelowScale } from '../probing/readings/beyond-scale.ts';
import { isOnAMeter, MOST_TYPED } from '../probing/readings/reading.ts';
import { type Message, message } from '../words/message.ts';
import { isDateLike } from './cells.ts';

/** No pin meter shows more, or less, %. Common practice, no source. */
const MOST_SHOWN_PCT = 200;
const LEAST_SHOWN_PCT = 1;

/** Why the text of a cell is no reading, whatever numbers it has; null where it may be one. */
export function whyTextIsNoReading(text: string, today: string): Message | null {
  if (isDateLike(text, today)) return message('import.reading-is-date', { cellTypedText: text });
  return isBelowScale(text) ? message('import.reading-below-scale', { cellTypedText: text }) : null;
}

/** Why a number of a cell is no reading; null where a meter can show it. */
export function whyNoReading(text: string, raw: number, unit: 'pct' | 'ohm'): Message | null {
  const facts = { cellTypedText: text };
  if (!(raw > 0 && isOnAMeter(raw) && raw <= MOST_TYPED[unit])) return message('import.no-reading', facts);
  if (unit === 'ohm') return null;
  if (raw > MOST_SHOWN_PCT)
    return message('import.reading-above', { ...facts, mostLimitPct: MOST_SHOWN_PCT });
  return raw < LEAST_SHOWN_PCT
    ? message('import.reading-below', { ...facts, leastLimitPct: LEAST_SHOWN_PCT })
    : null;
}
