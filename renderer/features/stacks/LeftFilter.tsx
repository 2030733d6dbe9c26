import { becameSchema, type LeftFilter } from '../../../shared-core/contract/archive.ts';
import { useQuery } from '../../data/useQuery.ts';
import { Choice } from '../../form/Choice.tsx';
import { Select } from '../../form/Field.tsx';
import { Await } from '../../ui/Await.tsx';
import { useWords } from '../../words.ts';
import css from './stack-screen.module.css';

/** Of the boards that left: what became of them, in which year, and how much lumber that was. */
export function LeftFilterFields({
  value: { became, year },
  onValue,
}: {
  value: LeftFilter;
  onValue: (value: LeftFilter) => void;
}) {
  const { say, formats } = useWords();
  const totals = useQuery('boards.left', {});
  return (
    <Await of={[totals]}>
      {(all) => {
        const years = [...new Set(all.map((each) => each.year))];
        const of = all.filter(
          (each) => (became === null || each.became === became) && (year === null || each.year === year),
        );
        const sum = (amount: 'boards' | 'measured' | 'boardFeet') =>
          of.reduce((total, each) => total + each[amount], 0);
        const measured = sum('measured');
        return (
          <div className={css.tools}>
            <Select
              label={say('left.year')}
              value={year}
              options={[
                { value: null, label: say('left.all-years') },
                ...years.map((each) => ({ value: each, label: String(each) })),
              ]}
              onValue={(chosen) => onValue({ became, year: chosen })}
            />
            <Choice
              label={say('left.became')}
              value={became ?? 'all'}
              options={(['all', ...becameSchema.options] as const).map((each) => ({
                value: each,
                label: say(`left.${each}`),
              }))}
              onValue={(chosen) => onValue({ became: chosen === 'all' ? null : chosen, year })}
            />
            {/* A board that was cut is in its pieces once more, so not of all. */}
            {became !== null && (
              <p>
                <strong>
                  {say('stacks.boards', { boards: sum('boards') })}
                  {measured > 0 && ` · ${formats.boardFeet(sum('boardFeet'))}`}
                </strong>{' '}
                {sum('boards') > measured &&
                  say('report.buyer.unmeasured', { boards: sum('boards') - measured })}
              </p>
            )}
          </div>
        );
      }}
    </Await>
  );
}
