import type { ExportKind } from '../../../shared-core/contract/exchange.ts';
import type { RequestInput } from '../../../shared-core/contract/requests.ts';
import { bridge } from '../../data/bridge.ts';
import { useLongWork } from '../../data/useLongWork.ts';
import { region } from '../../region.ts';
import { tellDone } from '../../stores/notices.ts';
import { useWords } from '../../words.ts';
import { downloadOffered } from '../backups/transfers.ts';
import { useTransfer } from '../backups/useTransfer.ts';

/** Makes a file of what the yard holds and downloads it; a person can stop either. */
export function useExport() {
  const { say } = useWords();
  const making = useLongWork();
  const getting = useTransfer();

  /** @param left  of the boards, those that left the yard as their list shows them */
  async function save(
    kind: ExportKind,
    left: RequestInput<'exchange.beginExport'>['left'] = null,
  ): Promise<void> {
    const offered = await making.run(
      (work) => bridge().command('exchange.beginExport', { kind, left, region: region(), work }),
      say('export.stopped'),
    );
    if (offered === undefined) return;
    const isWhole = await getting.run((onPart) =>
      downloadOffered(offered, kind === 'everything' ? 'application/json' : 'text/csv', onPart),
    );
    const { missingPictures: pictures } = offered;
    if (isWhole) return tellDone(say(pictures === 0 ? 'export.done' : 'export.done-without', { pictures }));
    await bridge().command('backups.dropDownload', {});
    tellDone(say('export.stopped'));
  }

  const stop = () => {
    making.cancel();
    getting.stop();
  };
  return { underWay: making.underWay ?? getting.underWay, save, stop };
}
