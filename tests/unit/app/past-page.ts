import type { RequestInput } from '../../../shared-core/contract/requests.ts';
import { yard } from './yard-of-two.ts';

type Page = RequestInput<'pastRounds.save'>;

/** A page of a notebook of the yard’s stack: of a day, read at 20 °C with a meter that nobody knows. */
export const pastPage = (page: Pick<Page, 'startedAt' | 'depths' | 'lines'> & Partial<Page>): Page => ({
  stackId: yard.stack.id,
  isDayOnly: true,
  meterId: null,
  unit: 'pct',
  woodTempC: 20,
  airTempC: null,
  ...page,
});
