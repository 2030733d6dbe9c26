import { useState } from 'react';
import { tallyCsv } from '../../../shared-core/exchange/tally-csv.ts';
import {
  missingInTally,
  type Tally,
  type TallyAmounts,
  type TallyBy,
  type TallyRow,
  tallyBySchema,
} from '../../../shared-core/tally/tally.ts';
import { download } from '../../data/download.ts';
import { useQuery } from '../../data/useQuery.ts';
import { Checkbox, Select } from '../../form/Field.tsx';
import { tellDone } from '../../stores/notices.ts';
import { useUnits } from '../../stores/settings.ts';
import { Await } from '../../ui/Await.tsx';
import { Actions, Button } from '../../ui/Button.tsx';
import { CallBadge } from '../../ui/CallBadge.tsx';
import { type Column, DataTable } from '../../ui/DataTable.tsx';
import { EmptyState, Screen, Sheet } from '../../ui/Screen.tsx';
import { useWords } from '../../words.ts';

/** What boards amount to, split as a person chooses: board feet, volume, and weight now and at the target. */
export function TallyScreen({ stackId: first }: { stackId: number | null }) {
  const [stackId, setStackId] = useState(first);
  const [by, setBy] = useState<readonly TallyBy[]>(['species', 'thickness']);
  const stacks = useQuery('stacks.list', {});
  const tally = useQuery('tallies.get', { stackId, by: [...by] });
  const { say } = useWords();
  const choose = (each: TallyBy, isChosen: boolean) =>
    setBy(tallyBySchema.options.filter((one) => (one === each ? isChosen : by.includes(one))));
  return (
    <Screen title={say('tally.title')} lead={say('tally.lead')}>
      <Sheet>
        <Select
          label={say('tally.of')}
          value={stackId}
          options={[
            { value: null, label: say('tally.all-stacks') },
            ...(stacks.output ?? []).map(({ id, name }) => ({ value: id, label: name, isName: true })),
          ]}
          onValue={setStackId}
        />
        <fieldset className="actions">
          <legend>{say('tally.split-by')}</legend>
          {tallyBySchema.options.map((each) => (
            <Checkbox
              key={each}
              label={say(`tally.by.${each}`)}
              checked={by.includes(each)}
              onChecked={(isChosen) => choose(each, isChosen)}
            />
          ))}
        </fieldset>
      </Sheet>
      <Await of={[tally]}>
        {(output) =>
          output.total.boards === 0 ? (
            <EmptyState sentence={say('tally.none')} />
          ) : (
            <Sheet title={say('tally.total', { boards: output.total.boards })}>
              <Amounts tally={output} by={by} />
              <SaveCsv tally={output} by={by} />
            </Sheet>
          )
        }
      </Await>
    </Screen>
  );
}

/** What is on screen, split as it is there, for a spreadsheet. */
function SaveCsv({ tally, by }: { tally: Tally; by: readonly TallyBy[] }) {
  const { say, formats } = useWords();
  const units = useUnits();
  const save = () => {
    const fileName = `${say('tally.file')}-${formats.localDay(new Date().toISOString())}.csv`;
    download(new Blob([tallyCsv(tally, by, units, say)], { type: 'text/csv' }), fileName);
    tellDone(say('tally.saved', { fileName }));
  };
  return (
    <Actions>
      <Button onClick={save}>{say('tally.save-csv')}</Button>
    </Actions>
  );
}

/** The total first, then a row for each group. */
function Amounts({ tally: { rows, total }, by }: { tally: Tally; by: readonly TallyBy[] }) {
  const { say, formats } = useWords();
  const isMetric = useUnits() === 'metric';
  const totals =
    total.measured === 0
      ? []
      : [...(isMetric ? [formats.volume(total.cubicMeters)] : []), formats.boardFeet(total.boardFeet)];
  const inUnit = (headText: string, unitText: string) => say('unit.head-in', { headText, unitText });
  const ifMeasured = ({ measured }: TallyAmounts, number: string) => (measured === 0 ? '–' : number);
  const ifWeighed = ({ weighed }: TallyAmounts, number: string) => (weighed === 0 ? '–' : number);
  const of: Record<TallyBy, Pick<Column<TallyRow>, 'cell' | 'sortBy'>> = {
    species: {
      cell: ({ speciesName }) => <span translate="no">{formats.named(speciesName ?? '')}</span>,
      sortBy: ({ speciesName }) => formats.named(speciesName ?? ''),
    },
    thickness: {
      cell: ({ thickness }) => thickness && formats.thickness(thickness),
      sortBy: ({ thickness }) => thickness?.thicknessMm ?? null,
    },
    call: { cell: ({ call }) => (call ? <CallBadge call={call} /> : say('stacks.no-call')) },
    stack: {
      cell: ({ stackName }) => <span translate="no">{stackName}</span>,
      sortBy: ({ stackName }) => stackName ?? null,
    },
  };
  return (
    <>
      {totals.length > 0 && (
        <p>
          <strong>{totals.join(' · ')}</strong>
        </p>
      )}
      <p>
        {total.weighed > 0 &&
          say('tally.weights', {
            which: total.weighed === total.boards ? 'all' : 'some',
            boards: total.weighed,
            nowKg: total.nowKg,
            thenKg: total.targetKg,
          })}
      </p>
      {by.length > 0 && (
        <DataTable
          name={say('tally.title')}
          rows={rows}
          keyOf={({ speciesName, thickness, call, stackName }) =>
            JSON.stringify([speciesName, thickness, call, stackName])
          }
          columns={[
            ...by.map((each) => ({ id: each, head: say(`tally.by.${each}`), widthRem: 11, ...of[each] })),
            {
              id: 'boards',
              head: say('tally.boards'),
              widthRem: 7,
              cell: ({ boards }) => formats.number(boards),
              below: ({ boards, measured }) =>
                measured > 0 && measured < boards && say('tally.measured', { boards: measured }),
              sortBy: ({ boards }) => boards,
              align: 'end',
            },
            {
              id: 'volume',
              head: say('unit.board-feet-name'),
              widthRem: 7,
              cell: (row) => ifMeasured(row, formats.number(row.boardFeet)),
              sortBy: ({ boardFeet }) => boardFeet,
              align: 'end',
            },
            ...(isMetric
              ? [
                  {
                    id: 'cubic',
                    head: inUnit(say('tally.volume'), 'm³'),
                    widthRem: 7,
                    cell: (row) => ifMeasured(row, formats.cubicMeters(row.cubicMeters)),
                    sortBy: ({ cubicMeters }) => cubicMeters,
                    align: 'end',
                  } satisfies Column<TallyRow>,
                ]
              : []),
            {
              id: 'now',
              head: inUnit(say('tally.weight-now'), formats.weightUnit),
              widthRem: 8,
              cell: (row) => ifWeighed(row, formats.weightNumber(row.nowKg)),
              below: ({ weighed, boards }) =>
                weighed > 0 && weighed < boards && say('tally.measured', { boards: weighed }),
              sortBy: ({ nowKg }) => nowKg,
              align: 'end',
            },
            {
              id: 'target',
              head: inUnit(say('tally.weight-then'), formats.weightUnit),
              widthRem: 8,
              cell: (row) => ifWeighed(row, formats.weightNumber(row.targetKg)),
              sortBy: ({ targetKg }) => targetKg,
              align: 'end',
            },
          ]}
        />
      )}
      {missingInTally(total).map((why) => (
        <small key={say(why)}>{say(why)}</small>
      ))}
      <p className="soft">
        {say('tally.board-feet-how')} {say('tally.weight-how')} {isMetric && say('tally.how-metric')}
      </p>
    </>
  );
}
