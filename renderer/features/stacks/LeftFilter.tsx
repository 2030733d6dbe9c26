import {
  becameSchema,
  type LeftFilter,
  type LeftList,
  type LeftTotal,
} from '../../../shared-core/contract/archive.ts';
import { useQuery } from '../../data/useQuery.ts';
import { Choice } from '../../form/Choice.tsx';
import { Select } from '../../form/Field.tsx';
import { attempt } from '../../stores/notices.ts';
import { Await } from '../../ui/Await.tsx';
import { Actions, Button } from '../../ui/Button.tsx';
import { WorkUnderWay } from '../../ui/WorkUnderWay.tsx';
import { useWords } from '../../words.ts';
import { useExport } from '../files/useExport.ts';
import css from './stack-screen.module.css';

const isOf = ({ became, year, soldTo }: LeftFilter, total: LeftTotal): boolean =>
  (became === null || total.became === became) &&
  (year === null || total.year === year) &&
  (soldTo === null || total.soldTo === soldTo);

/** Of the boards that left: what became of them, in which year, to whom, and how much lumber that was. */
export function LeftFilterFields({
  list,
  onValue,
}: {
  list: LeftList;
  onValue: (value: LeftFilter) => void;
}) {
  const { say, formats } = useWords();
  const totals = useQuery('boards.left', {});
  const { left } = list;
  const { became, year, soldTo } = left;
  return (
    <Await of={[totals]}>
      {(all) => {
        const years = [...new Set(all.map((each) => each.year))];
        const ofAnyone = all.filter((total) => isOf({ became, year, soldTo: null }, total));
        const buyers = [...new Set(ofAnyone.map((each) => each.soldTo ?? ''))].sort((a, b) =>
          a.localeCompare(b),
        );
        const of = all.filter((total) => isOf(left, total));
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
              onValue={(chosen) => onValue({ became, year: chosen, soldTo: null })}
            />
            <Choice
              label={say('left.became')}
              value={became ?? 'all'}
              options={(['all', ...becameSchema.options] as const).map((each) => ({
                value: each,
                label: say(`left.${each}`),
              }))}
              onValue={(chosen) => onValue({ became: chosen === 'all' ? null : chosen, year, soldTo: null })}
            />
            {became === 'sold' && buyers.some((name) => name !== '') && (
              <Select
                label={say('left.sold-to')}
                value={soldTo}
                options={[
                  { value: null, label: say('left.all-buyers') },
                  ...buyers.map((name) =>
                    name === ''
                      ? { value: name, label: say('left.no-buyer') }
                      : { value: name, label: name, isName: true },
                  ),
                ]}
                onValue={(chosen) => onValue({ ...left, soldTo: chosen })}
              />
            )}
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
            <SaveCsv list={list} />
          </div>
        );
      }}
    </Await>
  );
}

/** The list as it is narrowed, for a spreadsheet. */
function SaveCsv({ list }: { list: LeftList }) {
  const { say } = useWords();
  const { underWay, save, stop } = useExport();
  // In one element, so that the focus goes from one button to the other (`useFocusKept`).
  return (
    <div>
      {underWay ? (
        <WorkUnderWay label={say('export.under-way')} {...underWay} onCancel={stop} />
      ) : (
        <Actions>
          <Button onClick={() => attempt(save('boards', list))}>{say('export.button.csv')}</Button>
        </Actions>
      )}
    </div>
  );
}
