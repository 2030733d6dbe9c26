import { bridge } from '../../data/bridge.ts';
import { useQuery } from '../../data/useQuery.ts';
import { Select } from '../../form/Field.tsx';
import { attempt } from '../../stores/notices.ts';
import { useWords } from '../../words.ts';

/**
 * Which printer prints on a paper without a dialog, if any; remembered for that paper on this computer.
 * @param paper  the id of a paper of labels, or the size of a report
 */
export function PrinterChoice({ paper }: { paper: string }) {
  const { say } = useWords();
  const { output, error } = useQuery('printers.list', {});
  if (error) return <p className="soft">{error}</p>;
  if (output === null) return null;
  const { printers, chosen } = output;
  if (printers === null) return <p className="soft">{say('print.dialog-only')}</p>;
  const now = chosen[paper] ?? null;
  const isGone = now !== null && printers.every(({ name }) => name !== now);
  return (
    <Select
      label={say('print.printer')}
      hint={say('print.printer-hint')}
      value={now}
      options={[
        { value: null, label: say('print.by-dialog') },
        ...printers.map(({ name, title, isStopped }) => ({
          value: name,
          label: isStopped ? say('print.stopped-printer', { printerName: title }) : title,
          isName: true,
        })),
        ...(isGone
          ? [{ value: now, label: say('print.printer-not-here', { printerName: now }), isName: true }]
          : []),
      ]}
      onValue={(printer) => void attempt(bridge().command('printers.choose', { paper, printer }))}
    />
  );
}
