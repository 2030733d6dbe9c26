import { randomUUID } from 'node:crypto';
import { rmSync } from 'node:fs';
import { basename, join } from 'node:path';
import { Refusal } from '../../shared-core/contract/answer.ts';
import { message } from '../../shared-core/words/message.ts';
import type { Commands, Queries } from '../app/handlers.ts';
import type { LongWork, UnderWay } from '../app/long-work.ts';
import type { Restoring } from '../app/yard/restoring.ts';
import type { Yards } from '../app/yard/yards.ts';
import { picturesBeside } from '../store/picture-files.ts';
import { makePrivateFolder } from '../store/private-files.ts';
import type { BringingIn } from './bringing-in.ts';
import type { AskExchange } from './exchange-tasks.ts';

/**
 * Brings another yard into the person's own. It is done in a copy, on a thread, which then takes the place of the yard as a
 * restored backup does: all or nothing, however large, and undone as a restore is.
 */
export function createBringingIn(
  yards: Pick<Yards, 'toBackUp'>,
  { restorable, takeMerged }: Pick<Restoring, 'restorable' | 'takeMerged'>,
  longWork: LongWork,
  ask: AskExchange,
  { dataDir, now }: { dataDir: string; now: () => string },
) {
  async function bring(
    what: Pick<BringingIn, 'file' | 'fileName' | 'target' | 'choices'>,
    who: string,
    underWay: UnderWay,
  ) {
    const own = yards.toBackUp()?.file;
    if (own === undefined) throw new Refusal(message('refusal.restore-own-not-open'));
    const { file } = await restorable(what.file);
    const act = { id: randomUUID(), request: 'exchange.merge', inputHash: '', at: now(), who };
    return ask('bringIn', { ...what, own, file, act }, underWay);
  }

  return {
    queries: {
      'exchange.look': ({ file, work }, window) =>
        longWork.run(window, work, async (underWay) => {
          const choices = { rest: 'mine', others: [] } as const;
          const { merged } = await bring({ file, fileName: '', target: null, choices }, window, underWay);
          return merged;
        }),
    } satisfies Partial<Queries>,
    commands: {
      'exchange.merge': ({ file, fileName, rest, others, work }, window) =>
        longWork.run(window, work, async (underWay) => {
          const folder = join(dataDir, 'transfers');
          makePrivateFolder(folder);
          const target = join(folder, `${randomUUID()}.sqlite`);
          try {
            const { newestAct } = await bring(
              { file, fileName: basename(fileName), target, choices: { rest, others } },
              window,
              underWay,
            );
            underWay.signal.throwIfAborted();
            return await takeMerged(target, newestAct);
          } finally {
            for (const suffix of ['', '.part', '-wal', '-shm', '-journal'])
              rmSync(target + suffix, { force: true });
            rmSync(picturesBeside(target), { recursive: true, force: true });
          }
        }),
    } satisfies Partial<Commands>,
  };
}
