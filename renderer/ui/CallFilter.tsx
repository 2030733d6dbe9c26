import type { BoardFilter } from '../../shared-core/contract/yard.ts';
import { Choice } from '../form/Choice.tsx';
import { useWords } from '../words.ts';
import { CallShape } from './CallBadge.tsx';

/** Which boards a list shows, or all of them. */
export type Filter = BoardFilter | 'all';

/** Those of one call only. Calls that no board has are not offered. */
export function CallFilter({
  value,
  counts,
  onValue,
}: {
  value: Filter;
  /** In the order shown; null where it is not known how many there are. */
  counts: Partial<Record<Filter, number | null>>;
  onValue: (value: Filter) => void;
}) {
  const { say, formats } = useWords();
  const offered = (Object.entries(counts) as [Filter, number | null][]).filter(
    ([filter, count]) => filter === 'all' || filter === value || count !== 0,
  );
  if (offered.length < 3 && value === 'all') return null;
  return (
    <Choice
      label={<span className="spoken-only">{say('filter.label')}</span>}
      value={value}
      options={offered.map(([filter, count]) => {
        const isCall =
          filter !== 'all' && filter !== 'not-probed' && filter !== 'elsewhere' && filter !== 'archived';
        const words = isCall ? say(`call.${filter}`) : say(`filter.${filter}`);
        return {
          value: filter,
          label: (
            <span className="marked" title={words}>
              {isCall && <CallShape call={filter} />}{' '}
              <span className={isCall && count !== null ? 'spoken-only' : undefined}>{words}</span>{' '}
              {count !== null && formats.number(count)}
            </span>
          ),
        };
      })}
      onValue={onValue}
    />
  );
}
