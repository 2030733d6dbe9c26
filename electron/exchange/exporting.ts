import type { ExportKind } from '../../shared-core/contract/exchange.ts';
import { unitsOfRegion } from '../../shared-core/units/length.ts';
import type { AppContext } from '../app/context.ts';
import type { Commands } from '../app/handlers.ts';
import type { LongWork } from '../app/long-work.ts';
import { settingsOf } from '../app/yard/settings.ts';
import type { Transfers } from '../app/yard/transfers.ts';
import { picturesBeside } from '../store/picture-files.ts';
import type { AskExchange } from './exchange-tasks.ts';

/** How the name of such a file ends. */
export const extensionOf = (kind: ExportKind): 'csv' | 'json' => (kind === 'everything' ? 'json' : 'csv');

/** Makes files of the open yard for a window to download. */
export const exportCommands = (
  context: Pick<AppContext, 'yard' | 'now'>,
  longWork: LongWork,
  ask: AskExchange,
  { offer }: Pick<Transfers, 'offer'>,
) =>
  ({
    'exchange.beginExport': ({ kind, left, region, work }, window) =>
      longWork.run(window, work, async (underWay) => {
        const { file: from } = context.yard();
        const { units } = settingsOf(context.yard());
        const display = { ...region, units: units ?? unitsOfRegion(region.locale), today: null };
        const nowAt = context.now();
        let missingPictures = 0;
        const offered = await offer(window, async (target) => {
          const what = { from, pictures: picturesBeside(from), target, kind, left, display, nowAt };
          ({ missingPictures } = await ask('export', what, underWay));
        });
        return {
          ...offered,
          missingPictures,
          fileName: `pintally-${left === null ? kind : 'left-yard'}-${nowAt.slice(0, 10)}.${extensionOf(kind)}`,
        };
      }),
  }) satisfies Partial<Commands>;
