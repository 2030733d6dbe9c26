import { useState } from 'react';
import type { SampleBoardState, SampleSection } from '../../../shared-core/contract/sample-board.ts';
import { sampleRows } from '../../../shared-core/record-words/sample-rows.ts';
import { bridge } from '../../data/bridge.ts';
import { attempt } from '../../stores/notices.ts';
import { Button } from '../../ui/Button.tsx';
import { useWords } from '../../words.ts';
import { ExcludeButton } from '../records/ExcludeButton.tsx';
import { RecordList, RecordValue } from '../records/RecordList.tsx';
import { DrySectionForm } from './DrySectionForm.tsx';

/** What was weighed: the cuts with their sections, and the board's weights since. */
export function SampleRecords({ state }: { state: SampleBoardState }) {
  const words = useWords();
  const { say, formats } = words;
  const [open, setOpen] = useState<{ section: SampleSection; sectionName: string } | null>(null);
  return (
    <>
      <RecordList
        name={say('weights.title')}
        records={sampleRows(state, words)}
        keyOf={({ key }) => key}
        columns={[
          { id: 'what', head: say('weights.what'), cell: ({ what }) => what },
          { id: 'at', head: say('weights.when'), cell: ({ at }) => formats.dateTime(at) },
          {
            id: 'weight',
            head: say('weights.weight'),
            cell: ({ weight, excluded }) => (excluded ? <s>{weight}</s> : weight),
          },
          {
            id: 'mc',
            head: say('reading.mc'),
            cell: ({ mc, excluded }) => mc && <RecordValue isUsed={excluded === null}>{mc}</RecordValue>,
          },
        ]}
        actionsOf={({ name, excluded, record, section, what }) => (
          <>
            {section && excluded === null && (
              <Button
                kind={section.dryGrams === null ? 'main' : 'quiet'}
                aria-label={say(
                  section.dryGrams === null ? 'weights.weigh-dry-name' : 'weights.weigh-again-name',
                  { sectionName: name },
                )}
                onClick={() => setOpen({ section, sectionName: what })}
              >
                {say(section.dryGrams === null ? 'weights.weigh-dry' : 'weights.weigh-again')}
              </Button>
            )}
            {record && (
              <ExcludeButton
                recordName={name}
                excluded={excluded}
                reasons={['typing-slip', 'wrong-board', 'wet-with-rain']}
                onExclude={(why) => bridge().command('samples.exclude', { ...record, why })}
                onInclude={() => void attempt(bridge().command('samples.include', record))}
              />
            )}
          </>
        )}
      />
      {open && <DrySectionForm {...open} onClose={() => setOpen(null)} />}
    </>
  );
}
