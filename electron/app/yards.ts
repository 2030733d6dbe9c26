import { existsSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import packageJson from '../../package.json' with { type: 'json' };
import { Refusal } from '../../shared-core/contract/answer.ts';
import type { YardInfo } from '../../shared-core/contract/yard.ts';
import { builtInUses, builtInWoods } from '../../shared-core/wood/catalogue.ts';
import { openYard, type Yard } from '../store/yard.ts';
import { putBeside, YardFileProblem } from '../store/yard-file.ts';
import { fillDemoYard } from './demo-yard.ts';

/**
 * Which yard file is open. The demo yard is a file of its own, so that throwing it away can never touch a reading of
 * the person's.
 */
export function createYards(dataDir: string, now: () => string) {
  const files = { own: join(dataDir, 'yard.sqlite'), demo: join(dataDir, 'demo-yard.sqlite') };
  let kind: YardInfo['kind'] = 'own';
  let yard: Yard | null = null;
  let problem: YardFileProblem | null = null;

  function close(): void {
    yard?.close();
    yard = null;
  }

  function open(which: YardInfo['kind']): void {
    close();
    kind = which;
    problem = null;
    try {
      yard = openYard(files[which]);
      yard.species.bringUpToDate(builtInWoods);
      yard.uses.bringUpToDate(builtInUses);
    } catch (error) {
      if (!(error instanceof YardFileProblem)) throw error;
      problem = error;
    }
  }

  function removeDemoFiles(): void {
    for (const suffix of ['', '-wal', '-shm']) rmSync(files.demo + suffix, { force: true });
  }

  open('own');

  return {
    /** @throws Refusal with the sentence of what is wrong, while no yard is open */
    current: (): Yard => {
      if (yard === null) throw new Refusal(problem?.message ?? 'No yard is open. Open one first.');
      return yard;
    },
    info: (): YardInfo => ({
      kind,
      file: files[kind],
      problem: problem?.message ?? null,
      canStartAfresh: problem?.damaged ?? false,
      boards: yard?.boards.total() ?? 0,
      version: packageJson.version,
    }),
    openOwn: (): void => open('own'),
    openDemo: (): void => {
      if (!existsSync(files.demo)) {
        const filling = openYard(files.demo);
        filling.species.bringUpToDate(builtInWoods);
        filling.uses.bringUpToDate(builtInUses);
        fillDemoYard(filling, now());
        filling.close();
      }
      open('demo');
    },
    removeDemo: (): void => {
      close();
      removeDemoFiles();
      open('own');
    },
    startAfresh: (): void => {
      if (problem === null || !problem.damaged) {
        throw new Refusal('The yard file is sound, so it stays where it is. Nothing was changed.');
      }
      putBeside(files[kind], now().slice(0, 10));
      open(kind);
    },
    close,
  };
}
export type Yards = ReturnType<typeof createYards>;
