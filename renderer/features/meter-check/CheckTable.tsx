import type { CheckedMeter, MeterCheck } from '../../../shared-core/contract/meter-checks.ts';
import { DataTable } from '../../ui/DataTable.tsx';
import { rawText } from '../../ui/McValue.tsx';
import { useWords } from '../../words.ts';
import { offOf } from './check-sentence.ts';
import { useOffText } from './off-text.ts';

/** Every check of a meter by a block, the newest first. */
export function CheckTable({ meterName, of: { unit, checks } }: { meterName: string; of: CheckedMeter }) {
  const { say, formats } = useWords();
  const offText = useOffText(unit);
  const resultOf = ({ state, correctedBy }: MeterCheck) =>
    say(
      state === 'right' && correctedBy !== 0 ? 'meter-check.result.corrected' : `meter-check.result.${state}`,
    );
  return (
    <DataTable
      name="meter-checks"
      caption={say('meter-check.list', { meterName })}
      rows={checks}
      keyOf={({ id }) => String(id)}
      columns={[
        { id: 'when', head: say('meter-check.column.when'), cell: ({ at }) => formats.dateTime(at) },
        {
          id: 'shown',
          head: say('meter-check.column.shown'),
          align: 'end',
          cell: ({ shown }) => rawText(shown, unit, formats),
        },
        {
          id: 'off',
          head: say('meter-check.column.off'),
          align: 'end',
          cell: (check) => offText(offOf(check, unit)),
        },
        { id: 'result', head: say('meter-check.column.result'), cell: resultOf },
        {
          id: 'temp',
          head: say('meter-check.column.temp'),
          align: 'end',
          cell: ({ tempC }) => (tempC === null ? '–' : formats.temperature(tempC)),
        },
      ]}
    />
  );
}
