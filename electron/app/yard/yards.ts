import { join } from 'node:path';
import packageJson from '../../../package.json' with { type: 'json' };
import { Refusal } from '../../../shared-core/contract/answer.ts';
import type { YardInfo } from '../../../shared-core/contract/yard.ts';
import { builtInEndUses, builtInSpecies } from '../../../shared-core/wood/species/built-in.ts';
import { message } from '../../../shared-core/words/message.ts';
import { sizeOf } from '../../store/backup.ts';
import { makePrivateFolder } from '../../store/private-files.ts';
import { finishRestore, takeRestored } from '../../store/restore.ts';
import { openYard, type Yard, type YardReader } from '../../store/yard.ts';
import {
  asProblem,
  type Db,
  damagedFile,
  damageIn,
  isDamage,
  putBeside,
  type YardFileProblem,
} from '../../store/yard-file.ts';
import { lockYard, type YardLock } from '../../store/yard-lock.ts';
import type { OwnThread } from '../own-thread.ts';
import { createSignal } from '../signal.ts';
import type { YardToBackUp } from './backups.ts';
import { makeDemoYard, removeYardFiles } from './demo-yard.ts';
import { changeSettings, settingsOf } from './settings.ts';
import { createYardNotes } from './yard-notes.ts';

/** The thread that checks a large file (`check-worker.ts`): what is damaged in it, or null. */
export type CheckThread = OwnThread<string, string | null>;

/**
 * Which yard file is open. The demo yard has its own file, so that deleting it can never touch a reading of
 * the person's.
 */
export function createYards(
  dataDir: string,
  now: () => string,
  checkThread: CheckThread,
  reportFault: (error: unknown) => void,
  beforeMigrating?: (db: Db) => void,
) {
  const files = { own: join(dataDir, 'yard.sqlite'), demo: join(dataDir, 'demo-yard.sqlite') };
  let kind: YardInfo['kind'] = 'own';
  let yard: Yard | null = null;
  /** Held as long as the yard is open. */
  let lock: YardLock | null = null;
  let problem: YardFileProblem | null = null;
  let mayWrite = false;
  /** While a large file is being checked. */
  let checking: Promise<void> | null = null;
  const integrityChecked = createSignal();
  const notes = createYardNotes();

  function close(): void {
    yard?.close();
    yard = null;
    lock?.release();
    lock = null;
    mayWrite = false;
    checking = null;
  }

  function stopFor(found: YardFileProblem): void {
    close();
    problem = found;
  }

  function open(which: YardInfo['kind']): void {
    close();
    kind = which;
    problem = null;
    notes.forget();
    try {
      makePrivateFolder(dataDir);
      lock = lockYard(files[which], now());
      if (which === 'own') finishRestore(files.own);
      if (which === 'demo') makeDemoYard(files.demo, now());
      yard = openYard(files[which], which === 'own' ? beforeMigrating : undefined);
      notes.begin(yard);
      if (yard.integrityChecked) beginWriting(yard);
      else checking = checkIntegrity(yard);
    } catch (error) {
      stopFor(asProblem(error, files[which]));
    }
  }

  function beginWriting(opened: Yard): void {
    opened.species.bringUpToDate(builtInSpecies);
    opened.endUses.bringUpToDate(builtInEndUses);
    mayWrite = true;
  }

  async function checkIntegrity(opened: Yard): Promise<void> {
    const { file } = opened;
    try {
      const damage = await checkThread.ask(file).catch((fault) => {
        if (yard !== opened) return null;
        // A file that nobody checked is not written to: better the window waits.
        reportFault(fault);
        return damageIn(file);
      });
      if (yard !== opened) return;
      checking = null;
      if (damage !== null) throw damagedFile(file);
      opened.allowWriting();
      beginWriting(opened);
    } catch (error) {
      stopFor(asProblem(error, file));
    }
    integrityChecked.give();
  }

  /** A large file may turn out to be damaged when it is first read. */
  function boards(): number {
    try {
      return yard?.reader.boards.total() ?? 0;
    } catch (error) {
      if (!isDamage(error)) throw error;
      stopFor(asProblem(error, files[kind]));
      return 0;
    }
  }

  /** @throws Refusal while no yard is open */
  function current(): Yard {
    if (yard === null) throw problem ?? new Refusal(message('refusal.no-yard'));
    return yard;
  }

  open('own');

  return {
    current,
    /** @throws Refusal while no yard is open */
    reader: (): YardReader => current().reader,
    uuid: (): string | null => yard?.uuid ?? null,
    kind: (): YardInfo['kind'] => kind,
    info: (): YardInfo => {
      const counted = boards();
      return {
        uuid: yard?.uuid ?? null,
        kind,
        file: files[kind],
        problem: problem?.problem ?? null,
        canStartAfresh: problem?.damaged ?? false,
        boards: counted,
        version: packageJson.version,
      };
    },
    /** Null while the own yard is not open, and while a large file is being checked. */
    toBackUp: (): YardToBackUp | null =>
      kind === 'own' && yard !== null && mayWrite
        ? { file: yard.file, backupId: yard.backupId, holdsAnything: yard.holdsAnything() }
        : null,
    /** False while no yard is open, and while a large file is being checked. */
    mayWrite: (): boolean => mayWrite,
    /** Done when the large file that is open was checked; null where that is not going on. */
    checking: (): Promise<void> | null => checking,
    /** A large file was checked: it may be written to now, or it is closed and has a problem. */
    integrityChecked,
    notes,
    ownFile: files.own,
    /**
     * Until what it returns is called, the open yard can be read and not written to, and commands wait.
     * @throws Refusal while no yard is open
     */
    holdWriting: (): (() => void) => {
      const held = current();
      const released = createSignal();
      held.forbidWriting();
      mayWrite = false;
      checking = new Promise((resolve) => released.follow(resolve));
      return () => {
        if (yard === held) {
          held.allowWriting();
          mayWrite = true;
          checking = null;
        }
        released.give();
      };
    },
    /**
     * Opens the yard that was prepared in the place of the own one (`store/restore.ts`); a damaged one is put beside.
     * @throws Refusal where the own yard is not open any more, or is not all in its file
     */
    replaceOwn: (): void => {
      const isDamaged = problem?.damaged ?? false;
      if (kind !== 'own' || (yard === null && !isDamaged)) throw new Refusal(message('restore.own-not-open'));
      lock ??= lockYard(files.own, now());
      if (isDamaged) putBeside(files.own, now().slice(0, 10));
      yard?.close();
      yard = null;
      if (sizeOf(`${files.own}-wal`) > 0) {
        open('own');
        throw new Refusal(message('restore.in-use'));
      }
      takeRestored(files.own);
      open('own');
    },
    openOwn: (): void => open('own'),
    openDemo: (): void => {
      const own = kind === 'own' && yard !== null ? settingsOf(yard.reader) : null;
      open('demo');
      // Whoever only looks around needs no second choice of them.
      if (own && yard && mayWrite) changeSettings(yard, { units: own.units, theme: own.theme });
    },
    removeDemo: (): void => {
      close();
      removeYardFiles(files.demo);
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
