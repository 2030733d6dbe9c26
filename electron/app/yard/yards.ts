import { existsSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import packageJson from '../../../package.json' with { type: 'json' };
import { Refusal } from '../../../shared-core/contract/answer.ts';
import type { YardInfo } from '../../../shared-core/contract/yard.ts';
import { builtInEndUses, builtInSpecies } from '../../../shared-core/wood/species/catalogue.ts';
import { message } from '../../../shared-core/words/message.ts';
import { openYard, type Yard } from '../../store/yard.ts';
import {
  asProblem,
  damagedFile,
  damageIn,
  isDamage,
  putBeside,
  type YardFileProblem,
} from '../../store/yard-file.ts';
import type { OwnThread } from '../own-thread.ts';
import { fillDemoYard } from './demo-yard.ts';

/** The thread that looks through a large file (`check-worker.ts`): what is damaged in it, or null. */
export type CheckThread = OwnThread<string, string | null>;

/**
 * Which yard file is open. The demo yard is a file of its own, so that throwing it away can never touch a reading of
 * the person's.
 */
export function createYards(
  dataDir: string,
  now: () => string,
  checkThread: CheckThread,
  reportFault: (error: unknown) => void,
) {
  const files = { own: join(dataDir, 'yard.sqlite'), demo: join(dataDir, 'demo-yard.sqlite') };
  let kind: YardInfo['kind'] = 'own';
  let yard: Yard | null = null;
  let problem: YardFileProblem | null = null;
  let mayWrite = false;
  /** While a large file is being looked through. */
  let looking: Promise<void> | null = null;
  let heard: () => void = () => undefined;

  function close(): void {
    yard?.close();
    yard = null;
    mayWrite = false;
    looking = null;
  }

  function stopFor(found: YardFileProblem): void {
    close();
    problem = found;
  }

  function open(which: YardInfo['kind']): void {
    close();
    kind = which;
    problem = null;
    try {
      yard = openYard(files[which]);
      if (yard.integrityChecked) beginWriting(yard);
      else looking = lookThrough(yard);
    } catch (error) {
      stopFor(asProblem(error, files[which]));
    }
  }

  function beginWriting(opened: Yard): void {
    opened.species.bringUpToDate(builtInSpecies);
    opened.endUses.bringUpToDate(builtInEndUses);
    mayWrite = true;
  }

  async function lookThrough(opened: Yard): Promise<void> {
    const { file } = opened;
    try {
      const damage = await checkThread.ask(file).catch((fault) => {
        if (yard !== opened) return null;
        // A file that nobody looked through is not written to: better the window waits.
        reportFault(fault);
        return damageIn(file);
      });
      if (yard !== opened) return;
      looking = null;
      if (damage !== null) throw damagedFile(file);
      opened.allowWriting();
      beginWriting(opened);
    } catch (error) {
      stopFor(asProblem(error, file));
    }
    heard();
  }

  /** A large file may turn out to be damaged at the first look. */
  function boards(): number {
    try {
      return yard?.boards.total() ?? 0;
    } catch (error) {
      if (!isDamage(error)) throw error;
      stopFor(asProblem(error, files[kind]));
      return 0;
    }
  }

  function removeDemoFiles(): void {
    for (const suffix of ['', '-wal', '-shm']) rmSync(files.demo + suffix, { force: true });
  }

  open('own');

  return {
    /** @throws Refusal while no yard is open */
    current: (): Yard => {
      if (yard === null) throw problem ?? new Refusal(message('refusal.no-yard'));
      return yard;
    },
    info: (): YardInfo => {
      const counted = boards();
      return {
        kind,
        file: files[kind],
        problem: problem?.problem ?? null,
        canStartAfresh: problem?.damaged ?? false,
        boards: counted,
        version: packageJson.version,
      };
    },
    /** False while no yard is open, and while a large file is being looked through. */
    mayWrite: (): boolean => mayWrite,
    /** Done when the large file that is open was looked through; null where that is not going on. */
    looking: (): Promise<void> | null => looking,
    /** Called when a large file was looked through: it may be written to now, or it is closed and has a problem. */
    whenIntegrityChecked: (listener: () => void): void => {
      heard = listener;
    },
    openOwn: (): void => open('own'),
    openDemo: (): void => {
      if (!existsSync(files.demo)) {
        const filling = openYard(files.demo);
        filling.species.bringUpToDate(builtInSpecies);
        filling.endUses.bringUpToDate(builtInEndUses);
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
        throw new Refusal(message('refusal.yard-sound'));
      }
      putBeside(files[kind], now().slice(0, 10));
      open(kind);
    },
    close,
  };
}
export type Yards = ReturnType<typeof createYards>;
