import type { DayOrder } from '../../../shared-core/contract/import.ts';
import { writtenIn } from '../../../shared-core/words/written-in.ts';
import { region } from '../../region.ts';

/** The order in which dates are written where the person is. */
export function ownOrder(): DayOrder {
  const parts = new Intl.DateTimeFormat(writtenIn(region().locale), {
    year: 'numeric',
    month: '2-digit',
    day: '2-digit',
  })
    .formatToParts(new Date())
    .map(({ type }) => type[0])
    .filter((letter) => letter === 'y' || letter === 'm' || letter === 'd');
  const order = parts.join('');
  return order === 'dmy' || order === 'ymd' ? order : 'mdy';
}
