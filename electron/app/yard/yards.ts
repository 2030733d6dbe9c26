import { join } from 'node:path';
import packageJson from '../../../package.json' with { type: 'json' };
import { Refusal } from '../../../shared-core/contract/answer.ts';
import type { YardInfo } from '../../../shared-core/contract/yard.ts';
import { kindOfProblem } from '../../../shared-core/contract/yard-problem.ts';
import { type Message, message } from '../../../shared-core/words/message.ts';
import { sizeOf } from '../../store/backup.ts';
import { newestActAt } from '../../store/newest-act.ts';
import { makePrivateFolder } from '../../store/private-files.ts';
import { isPart, putBack, type Rescued, rescuedCopyOf } from '../../store/rescued-copy.ts';
import { finishRestore, forgetRestore, takeRestored } from '../../store/restore.ts';
import { FileMoved, openYard, type Yard, type YardReader } from '../../store/yard.ts';
import {
  asProblem,
  type Db,
  damagedFile,
  damageIn,
  isDamage,
  isDiskFault,
  renameDamaged,
  YardFileProblem,
} from '../../store/yard-file.ts';
import { lockYard, type YardLock } from '../../store/yard-lock.ts';
import { createSignal } from '../signal.ts';
import type { YardToBackUp } from './backups.ts';
import { bringBuiltInUpToDate } from './built-in.ts';
import type { CheckThread } from './check-thread.ts';
import { makeDemoYard, removeYardFiles } from './demo-yard.ts';
import { linkedFile } from './linked-file.ts';
import {
  finishSalvage,
  forgetSalvage,
  type SalvageThread,
  salvageReport,
  salvageYard,
  savedOf,
  saveReport,
} from './salvaging.ts';
import { changeSettings, settingsOf } from './settings.ts';
import { takeBackUnfinished } from './taking-back.ts';
import { createYardNotes } from './yard-notes.ts';

/** How often it is looked whether the open file is still at its path, while nobody asks for anything. */
const LOOK_EVERY_MS = 5000;

const TRY_AGAIN = message('refusal.try-again');

/**
 * Which yard file is open. What happens to it that a person may ask about later goes to the fault log, as codes.
 * The demo yard has its own file, so that deleting it can never touch a reading of the person's.
 */
export function createYards(
  dataDir: string,
  now: () => string,
  checkThread: CheckThread,
  reportFault: (error: unknown) => void,
  writeToLog: (what: string) => void,
  beforeMigrating?: (db: Db) => void,
) {
  const files = {
    own: linkedFile(join(dataDir, 'yard.sqlite')),
    demo: linkedFile(join(dataDir, 'demo-yard.sqlite')),
  };
  let kind: YardInfo['kind'] = 'own';
  let yard: Yard | null = null;
  /** Held as long as the yard is open. */
  let lock: YardLock | null = null;
  let problem: YardFileProblem | null = null;
  /** The copy of the open file that was made when another was put in its place. */
  let rescuedFromReplaced: string | null = null;
  let mayWrite = false;
  /** While a large file is being checked. */
  let checking: Promise<void> | null = null;
  const integrityChecked = createSignal();
  const notes = createYardNotes();
  const moved = createSignal();
  const looking = setInterval(noticeMoved, LOOK_EVERY_MS).unref();
  const day = () => now().slice(0, 10);
  const note = (...what: (string | undefined)[]): void => writeToLog(what.join(' '));

  /** @throws YardFileProblem where the file was lost and cannot be rescued: it then stays open */
  function close(): void {
    if (yard && isLost(yard)) rescue(yard);
    release();
  }

  /** False where the lock was lost, and another Pintally has the yard or changed it: its files are as that one left them. */
  function isOurs(opened: Yard): boolean {
    if (lock === null || lock.taken() !== null) return false;
    return !lock.wasLost() || !opened.wasWrittenByOthers();
  }

  /** Whether it has to be rescued: not where its files are as another Pintally left them, or a WAL could be brought in. */
  function isLost(opened: Yard): boolean {
    const loss = opened.loss();
    if (loss === null || loss === 'moved') return loss !== null;
    return isOurs(opened) && !(loss === 'wal-moved' && opened.bringInMovedWal());
  }

  function release(): void {
    const spoiledFile = yard && isOurs(yard) && yard.isSpoiled() ? yard.file : null;
    yard?.close();
    yard = null;
    if (spoiledFile !== null) renameSpoiled(spoiledFile);
    lock?.release();
    lock = null;
    mayWrite = false;
    checking = null;
  }

  /** It and its WAL do not fit together. */
  function renameSpoiled(file: string): void {
    try {
      renameDamaged(file, day());
    } catch (error) {
      reportFault(error);
    }
  }

  /** @returns what a person reads of it */
  function rescue(lost: Yard): YardFileProblem {
    const { file } = lost;
    let rescued: Rescued;
    try {
      rescued = lost.rescue(day());
      if (rescued.partial) saveReport(file, rescued.partial);
    } catch (error) {
      reportFault(error);
      const code = lost.isSpoiled() ? 'refusal.yard-cut-not-rescued' : 'refusal.yard-not-rescued';
      throw new YardFileProblem(message(code, { file }), false);
    }
    const { copy: rescuedFile, partial } = rescued;
    if (partial) {
      const [boards, readings] = [savedOf(partial, 'boards'), savedOf(partial, 'readings')];
      return new YardFileProblem(
        message('refusal.yard-partly-rescued', { file, rescuedFile, boards, readings }),
        false,
      );
    }
    const state = lost.isSpoiled() || rescuedCopyOf(file) !== null ? 'gone' : 'replaced';
    rescuedFromReplaced = state === 'replaced' ? rescuedFile : null;
    return new YardFileProblem(message('refusal.yard-moved', { file, rescuedFile, state }), false);
  }

  /**
   * Where the open yard is another Pintally's by now, it is closed. Where its file is no longer at its path, or spoiled, it
   * is rescued and closed. Why, or null.
   */
  function noticeMoved(): YardFileProblem | null {
    if (yard === null || problem !== null) return null;
    if (yard.loss() !== 'moved') {
      const taken = lock?.taken() ?? null;
      if (taken) {
        setProblem(taken);
        release();
        moved.give();
        return taken;
      }
      if (!isOurs(yard)) return openAgain();
      if (yard.loss() === null) return null;
      // Opened again, it has a WAL of its own again.
      if (!isLost(yard))
        return openAgain(message('yard-note.wal-brought-back', { name: `${yard.file}-wal` }));
    }
    try {
      setProblem(rescue(yard));
      // Only now: the file that is lost holds nothing more that is not in the copy.
      release();
    } catch (error) {
      setProblem(asProblem(error, yard.file));
    }
    mayWrite = false;
    moved.give();
    return problem;
  }

  function openAgain(found?: Message): YardFileProblem | null {
    open(kind);
    if (found) {
      note(found.code);
      notes.add(found);
    }
    moved.give();
    return problem;
  }

  function stopFor(found: YardFileProblem): void {
    close();
    setProblem(found);
  }

  function setProblem(found: YardFileProblem): void {
    problem = found;
    note('yard-not-usable', found.problem.code, files[kind]);
  }

  /** Also for a file that is there: it has another in its place. */
  const rescuedCopy = (): string | null => problem && (rescuedFromReplaced ?? rescuedCopyOf(files[kind]));

  function open(which: YardInfo['kind']): void {
    try {
      close();
    } catch (error) {
      setProblem(asProblem(error, files[kind]));
      return;
    }
    kind = which;
    problem = null;
    rescuedFromReplaced = null;
    notes.forget();
    try {
      makePrivateFolder(dataDir);
      lock = lockYard(files[which], now());
      if (which === 'own') finishRestore(files.own);
      const isSalvageFinished = finishSalvage(files[which], day());
      refuseGone(files[which]);
      if (which === 'demo') makeDemoYard(files.demo, now());
      yard = guarded(openYard(files[which], which === 'own' ? beforeMigrating : undefined));
      notes.begin(yard);
      if (isSalvageFinished) salvaged();
      if (yard.integrityChecked) beginWriting(yard);
      else checking = checkIntegrity(yard);
    } catch (error) {
      stopFor(asProblem(error, files[which]));
    }
  }

  /** What could be read of a damaged file was put in its place. */
  function salvaged(): void {
    const report = salvageReport(files[kind]);
    note('yard-salvaged', JSON.stringify(report?.kinds));
    if (report) notes.addSalvaged(report);
  }

  /** A yard file that is gone, and was rescued, is not replaced by an empty one. */
  function refuseGone(file: string): void {
    const rescuedFile = rescuedCopyOf(file);
    if (rescuedFile === null) return;
    const code = isPart(rescuedFile) ? 'refusal.yard-partly-gone' : 'refusal.yard-gone';
    throw new YardFileProblem(message(code, { file, rescuedFile }), false);
  }

  /** The yard whose transactions, where its file was moved, say so and what was rescued. */
  function guarded(opened: Yard): Yard {
    const transaction: Yard['transaction'] = (work) => {
      try {
        return opened.transaction(() => {
          const made = work();
          if (!isOurs(opened)) throw new FileMoved();
          return made;
        });
      } catch (error) {
        if (opened.inTransaction()) throw error;
        if (error instanceof FileMoved) throw noticeMoved() ?? problem ?? new Refusal(TRY_AGAIN);
        if (isDamage(error) || isDiskFault(error)) throw noticeDamage(opened, error) ?? error;
        throw error;
      }
    };
    return { ...opened, transaction };
  }

  /** What a person reads where a file turns out to be damaged or lost while it is written; null where it is neither. */
  function noticeDamage(opened: Yard, error: unknown): YardFileProblem | null {
    const lost = noticeMoved();
    if (lost !== null || yard !== opened || checking !== null || !isDamage(error)) return lost;
    stopFor(damagedFile(opened.file));
    moved.give();
    return problem;
  }

  function beginWriting(opened: Yard): void {
    const changed = opened.transaction(() => bringBuiltInUpToDate(opened));
    if (changed > 0) notes.add(message('yard-note.built-in-repaired', { entries: changed }));
    if (takeBackUnfinished(opened, now)) notes.add(message('yard-note.taken-back'));
    mayWrite = true;
  }

  async function checkIntegrity(opened: Yard): Promise<void> {
    const { file } = opened;
    try {
      const checked = await checkThread.ask({ file, isThorough: false }).catch((fault) => {
        if (yard !== opened) return null;
        // A file that nobody checked is not written to: better the window waits.
        reportFault(fault);
        return { damage: damageIn(file) };
      });
      if (yard !== opened || checked === null) return;
      checking = null;
      if (checked.damage !== null) throw damagedFile(file);
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
      return problem === null ? (yard?.reader.boards.total() ?? 0) : 0;
    } catch (error) {
      if (!isDamage(error)) throw error;
      stopFor(asProblem(error, files[kind]));
      return 0;
    }
  }

  /** @throws Refusal while no yard is open */
  function current(): Yard {
    if (problem !== null) throw problem;
    if (yard === null) throw new Refusal(message('refusal.no-yard'));
    return yard;
  }

  const openUuid = (): string | null => (problem === null ? (yard?.uuid ?? null) : null);

  function refuseSound(): void {
    if (problem === null || !problem.damaged) throw new Refusal(message('refusal.yard-sound'));
  }

  function refuseToReplace(): void {
    if (kind !== 'own') throw new Refusal(message('refusal.restore-own-not-open'));
    // One that is gone was rescued: there is nothing at its path that a backup could replace.
    if (problem && !problem.damaged && rescuedCopyOf(files.own) === null) throw problem;
  }

  open('own');

  return {
    current,
    /** @throws Refusal while no yard is open */
    reader: (): YardReader => current().reader,
    uuid: openUuid,
    kind: (): YardInfo['kind'] => kind,
    info: (): YardInfo => {
      const counted = boards();
      return {
        uuid: openUuid(),
        kind,
        file: files[kind],
        problem: problem?.problem ?? null,
        canStartAfresh: problem?.damaged ?? false,
        rescuedFile: rescuedCopy(),
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
     * Before a copy is made for `replaceOwn`. Until what it returns is called, a damaged own yard is this process's alone,
     * as one that is open.
     * @throws Refusal where the own yard is neither open, damaged nor gone
     */
    beginReplacing: (): (() => void) => {
      refuseToReplace();
      if (problem === null) return () => undefined;
      if (lock !== null) throw new Refusal(message('refusal.restore-busy'));
      lock = lockYard(files.own, now());
      return () => {
        if (yard !== null) return;
        lock?.release();
        lock = null;
      };
    },
    /**
     * Opens the yard that was prepared in the place of the own one (`store/restore.ts`); a damaged one is
     * renamed and left in the folder.
     * @throws Refusal where the own yard is neither open, damaged nor gone any more, or is not all in its file
     */
    replaceOwn: (): void => {
      const movedNow = noticeMoved();
      if (movedNow) {
        forgetRestore(files.own);
        throw movedNow;
      }
      refuseToReplace();
      try {
        if (problem) renameDamaged(files.own, day());
        yard?.close();
        yard = null;
        if (sizeOf(`${files.own}-wal`) > 0) throw new Refusal(message('refusal.restore-in-use'));
        forgetSalvage(files.own);
        takeRestored(files.own);
        note('yard-restored');
      } finally {
        open('own');
      }
    },
    /** The open file turned out to be damaged: it is closed and has a problem. */
    foundDamage: (): void => {
      stopFor(damagedFile(files[kind]));
      integrityChecked.give();
    },
    noticeMoved,
    /** The file that was open is no longer at its path; it is closed and has a problem. */
    moved,
    openOwn: (): void => open('own'),
    openDemo: (): void => {
      const own = kind === 'own' && yard !== null ? settingsOf(yard.reader) : null;
      open('demo');
      // Whoever only looks around needs no second choice of them.
      if (own && yard && mayWrite) changeSettings(yard, { units: own.units, theme: own.theme });
    },
    /** Opens the own yard in any case. */
    removeDemo: (): { notRemoved: Message | null } => {
      close();
      let notRemoved: Message | null = null;
      try {
        lock = lockYard(files.demo, now());
        removeYardFiles(files.demo);
      } catch (error) {
        reportFault(error);
        notRemoved = message('refusal.demo-not-removed', { file: files.demo });
      }
      open('own');
      return { notRemoved };
    },
    /** Puts the rescued copy of a file that is gone where that was, and opens it. */
    openRescued: (): void => {
      const rescuedFile = rescuedCopy();
      if (rescuedFile === null) throw new Refusal(message('refusal.yard-sound'));
      if (rescuedFromReplaced !== null) {
        lock = lockYard(files[kind], now());
        try {
          renameDamaged(files[kind], day(), 'replaced');
        } finally {
          lock.release();
          lock = null;
        }
      }
      putBack(rescuedFile, files[kind]);
      note('rescued-copy-opened', rescuedFile);
      open(kind);
      const report = isPart(rescuedFile) ? salvageReport(files[kind]) : null;
      if (report) notes.addSalvaged(report);
      else if (problem === null) notes.add(message('yard-note.rescued'));
    },
    /** When the newest change was made that the file was seen with, also where it cannot be read. */
    newestActAt: (): string | null => newestActAt(files[kind]),
    /** What was saved when the open file was salvaged. */
    salvageReport: () => salvageReport(files[kind]),
    salvage: async (salvageThread: SalvageThread): Promise<void> => {
      refuseSound();
      if (problem && kindOfProblem(problem.problem) === 'missing') throw problem;
      if (lock !== null) throw new Refusal(message('refusal.try-again'));
      lock = lockYard(files[kind], now());
      const which = kind;
      try {
        await salvageYard(files[which], day(), salvageThread);
      } finally {
        lock?.release();
        lock = null;
      }
      open(which);
      salvaged();
    },
    startAfresh: (): void => {
      refuseSound();
      forgetSalvage(files[kind]);
      const renamed = renameDamaged(files[kind], day());
      note('new-yard-begun', renamed);
      open(kind);
      if (yard && mayWrite) notes.addStartedNew(yard, renamed);
    },
    close: (): void => {
      clearInterval(looking);
      try {
        close();
      } catch {
        // Reported: there is no other place to save it to.
        release();
      }
    },
  };
}

export type Yards = ReturnType<typeof createYards>;
