import type { CheckedMeter, MeterCheck } from '../../../shared-core/contract/meter-checks.ts';
import type { GivenExclusion } from '../../../shared-core/probing/readings/exclusion.ts';
import { bridge } from '../../data/bridge.ts';
import { useLongWork } from '../../data/useLongWork.ts';
import { attempt, tellUndoable } from '../../stores/notices.ts';
import { rawText } from '../../ui/McValue.tsx';
import { WorkUnderWay } from '../../ui/WorkUnderWay.tsx';
import { useWords } from '../../words.ts';
import { ExcludeButton } from '../records/ExcludeButton.tsx';
import { RecordList, RecordValue } from '../records/RecordList.tsx';
import { offOf } from './check-sentence.ts';
import { useOffText } from './off-text.ts';

/** Every check of a meter by a block, the newest first: an excluded one is struck out, and can be included again. */
export function CheckTable({ meterName, of: { unit, checks } }: { meterName: string; of: CheckedMeter }) {
  const { say, formats } = useWords();
  const { underWay, run, cancel } = useLongWork();
  const offText = useOffText(unit);
  const isUsed = ({ excluded, isAhead }: MeterCheck) => excluded === null && !isAhead;
  function resultOf({ state, correctedBy, isAhead }: MeterCheck): string {
    if (isAhead) return say('meter-check.ahead');
    const isByCorrection = state === 'right' && correctedBy !== 0;
    return say(isByCorrection ? 'meter-check.result.corrected' : `meter-check.result.${state}`);
  }
  async function exclude(checkId: number, why: GivenExclusion): Promise<void> {
    const moved = await run(
      (work) => bridge().command('meterChecks.exclude', { checkId, why, work }),
      say('meter-check.exclude-stopped'),
    );
    if (moved) tellDoneBy(moved.act, say('meter-check.excluded', { readings: moved.readings }));
  }
  async function include(checkId: number): Promise<void> {
    const done = await attempt(bridge().command('meterChecks.include', { checkId }));
    if (done) tellDoneBy(done.act, say('meter-check.included'));
  }
  const tellDoneBy = (act: string, sentence: string) =>
    tellUndoable(sentence, (work) => bridge().command('acts.undo', { act, work }));
  if (underWay !== null && underWay.total > 0)
    return <WorkUnderWay label={say('meter-check.excluding')} {...underWay} onCancel={cancel} />;
  return (
    <RecordList
      name={say('meter-check.list', { meterName })}
      records={checks}
      keyOf={({ id }) => id}
      columns={[
        { id: 'when', head: say('meter-check.column.when'), cell: ({ at }) => formats.dateTime(at) },
        {
          id: 'shown',
          head: say('meter-check.column.shown'),
          align: 'end',
          cell: (check) => (
            <RecordValue isUsed={isUsed(check)}>{rawText(check.shown, unit, formats)}</RecordValue>
          ),
        },
        {
          id: 'off',
          head: say('meter-check.column.off'),
          align: 'end',
          cell: (check) => {
            const off = offText(offOf(check, unit));
            return isUsed(check) ? off : <s>{off}</s>;
          },
        },
        {
          id: 'temp',
          head: say('meter-check.column.temp'),
          align: 'end',
          cell: ({ tempC }) => (tempC === null ? '–' : formats.temperature(tempC)),
        },
      ]}
      stateOf={resultOf}
      actionsOf={({ id, at, excluded }) => (
        <ExcludeButton
          recordName={say('meter-check.named', { checkedAt: at })}
          excluded={excluded}
          reasons={['typing-slip', 'not-on-block']}
          onExclude={(why) => exclude(id, why)}
          onInclude={() => void include(id)}
        />
      )}
    />
  );
}
