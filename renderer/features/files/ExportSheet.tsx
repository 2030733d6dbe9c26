import { useState } from 'react';
import { type ExportKind, exportKindSchema } from '../../../shared-core/contract/exchange.ts';
import { Choice } from '../../form/Choice.tsx';
import { attempt } from '../../stores/notices.ts';
import { Actions, Button } from '../../ui/Button.tsx';
import { Sheet } from '../../ui/Screen.tsx';
import { WorkUnderWay } from '../../ui/WorkUnderWay.tsx';
import { useWords } from '../../words.ts';
import { useExport } from './useExport.ts';

/** What the yard holds as a file for other programs. */
export function ExportSheet() {
  const { say } = useWords();
  const [kind, setKind] = useState<ExportKind>('everything');
  const isJson = kind === 'everything';
  const { underWay, save, stop } = useExport();
  return (
    <Sheet title={say('export.title')}>
      <Choice
        label={say('export.what')}
        value={kind}
        options={exportKindSchema.options.map((value) => ({ value, label: say(`export.what.${value}`) }))}
        onValue={setKind}
      />
      <p>{say(`export.hint.${kind}`)}</p>
      {!isJson && <p className="soft">{say('export.csv-note')}</p>}
      {underWay ? (
        <WorkUnderWay
          label={say('export.under-way')}
          done={underWay.done}
          total={underWay.total}
          onCancel={stop}
        />
      ) : (
        <Actions>
          <Button onClick={() => attempt(save(kind))}>
            {say(isJson ? 'export.button.json' : 'export.button.csv')}
          </Button>
        </Actions>
      )}
    </Sheet>
  );
}
