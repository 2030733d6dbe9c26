import { useState } from 'react';
import { type ExportKind, exportKindSchema } from '../../../shared-core/contract/exchange.ts';
import { bridge } from '../../data/bridge.ts';
import { useLongWork } from '../../data/useLongWork.ts';
import { Choice } from '../../form/Choice.tsx';
import { region } from '../../region.ts';
import { attempt, tellDone } from '../../stores/notices.ts';
import { Actions, Button } from '../../ui/Button.tsx';
import { Sheet } from '../../ui/Screen.tsx';
import { WorkUnderWay } from '../../ui/WorkUnderWay.tsx';
import { useWords } from '../../words.ts';
import { downloadOffered } from '../backups/transfers.ts';
import { useTransfer } from '../backups/useTransfer.ts';

/** What the yard holds as a file for other programs. */
export function ExportSheet() {
  const { say } = useWords();
  const [kind, setKind] = useState<ExportKind>('everything');
  const isJson = kind === 'everything';
  const making = useLongWork();
  const getting = useTransfer();
  const save = async () => {
    const offered = await making.run(
      (work) => bridge().command('exchange.beginExport', { kind, region: region(), work }),
      say('export.stopped'),
    );
    if (offered === undefined) return;
    const isWhole = await getting.run((onPart) =>
      downloadOffered(offered, isJson ? 'application/json' : 'text/csv', onPart),
    );
    const { missingPictures: pictures } = offered;
    if (isWhole) return tellDone(say(pictures === 0 ? 'export.done' : 'export.done-without', { pictures }));
    await bridge().command('backups.dropDownload', {});
    tellDone(say('export.stopped'));
  };
  const underWay = making.underWay ?? getting.underWay;
  const stop = () => {
    making.cancel();
    getting.stop();
  };
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
          <Button onClick={() => attempt(save())}>
            {say(isJson ? 'export.button.json' : 'export.button.csv')}
          </Button>
        </Actions>
      )}
    </Sheet>
  );
}
