import { useState } from 'react';
import type { SalvageReport } from '../../../shared-core/contract/salvage.ts';
import { download } from '../../data/download.ts';
import { useQuery } from '../../data/useQuery.ts';
import { Actions, Button } from '../../ui/Button.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { useWords } from '../../words.ts';

/** Shows what was saved when the yard's file was last salvaged; nothing where it never was. */
export function SalvageReportButton() {
  const { say } = useWords();
  const [isShown, setShown] = useState(false);
  const { output: report } = useQuery('recovery.report', {});
  if (!report) return null;
  return (
    <>
      <Button onClick={() => setShown(true)}>{say('salvage.show-report')}</Button>
      {isShown && <ReportDialog report={report} onClose={() => setShown(false)} />}
    </>
  );
}

function ReportDialog({ report, onClose }: { report: SalvageReport; onClose: () => void }) {
  const { say } = useWords();
  const lines = [
    ...report.kinds
      .filter(({ saved, lost }) => saved + lost > 0)
      .map(({ kind, saved, lost }) => say(`salvage.${kind}`, { saved, lost })),
    say('salvage.not-counted'),
    ...(report.recovered.length > 0 ? [say('salvage.recovered', { names: report.recovered })] : []),
    ...(report.roundsMadeAgain.length > 0
      ? [
          say('salvage.rounds-made-again', {
            rounds: report.roundsMadeAgain.length,
            startedAt: report.roundsMadeAgain,
          }),
        ]
      : []),
    report.damagedFile === null
      ? say('yard-note.salvaged.file-renamed')
      : say('yard-note.salvaged.file', { damagedFile: report.damagedFile }),
    say('salvage.what-to-do'),
  ];
  const text = `${lines.join('\n')}\n`;
  return (
    <Dialog title={say('salvage.title')} onClose={onClose}>
      <ul>
        {lines.map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ul>
      <Actions>
        <Button onClick={onClose}>{say('common.close')}</Button>
        <Button onClick={() => download(new Blob([text], { type: 'text/plain' }), 'pintally-salvaged.txt')}>
          {say('salvage.save-report')}
        </Button>
      </Actions>
    </Dialog>
  );
}
