import { Refusal } from '../../../shared-core/contract/answer.ts';
import { type Message, message } from '../../../shared-core/words/message.ts';
import { FileMoved, type Yard } from '../../store/yard.ts';
import {
  asProblem,
  damagedFile,
  isDamage,
  isDiskFault,
  type YardFileProblem,
} from '../../store/yard-file.ts';
import { release, stopFor } from './closing.ts';
import { type HeldYard, setProblem } from './held-yard.ts';
import type { Open } from './opening.ts';
import { isLost, isOurs, rescue, withUnsaved } from './rescuing.ts';

/** Notices that the open file was moved, spoiled or taken by another Pintally, or that it is damaged. */
export function createNoticingLoss(held: HeldYard, open: Open) {
  /**
   * Where the open yard is another Pintally's by now, it is closed. Where its file is no longer at its path, or spoiled, it
   * is rescued and closed. Why, or null.
   */
  function noticeMoved(): YardFileProblem | null {
    const { yard, lock } = held;
    if (yard === null || held.problem !== null) return null;
    if (yard.loss() !== 'moved') {
      const taken = lock?.taken() ?? null;
      if (taken) {
        setProblem(held, taken);
        release(held);
        held.moved.give();
        return taken;
      }
      if (!isOurs(held, yard)) return openAgain();
      if (yard.loss() === null) return null;
      const { how } = yard.happened();
      // The reopened yard gets a new WAL.
      if (!isLost(held, yard))
        return openAgain(message('yard-note.wal-brought-back', { file: yard.file, how }));
    }
    try {
      setProblem(held, rescue(held, yard));
      // Only now: the file that is lost holds nothing more that is not in the copy.
      release(held);
    } catch (error) {
      setProblem(held, asProblem(error, yard.file));
    }
    held.mayWrite = false;
    held.moved.give();
    return held.problem;
  }

  function openAgain(found?: Message): YardFileProblem | null {
    open(held.kind);
    if (found) {
      held.log(found.code);
      held.notes.add(found);
    }
    held.moved.give();
    return held.problem;
  }

  /** The yard whose transactions, where its file was moved, say so and what was rescued. */
  function guarded(opened: Yard): Yard {
    const transaction: Yard['transaction'] = (work) => {
      try {
        return opened.transaction(() => {
          const made = work();
          if (!isOurs(held, opened)) throw new FileMoved();
          return made;
        });
      } catch (error) {
        if (opened.inTransaction()) throw error;
        if (error instanceof FileMoved) {
          const found = noticeMoved() ?? held.problem;
          throw found ? withUnsaved(found) : new Refusal(message('refusal.try-again'));
        }
        throw noticeDamage(error) ?? error;
      }
    };
    return { ...opened, transaction };
  }

  /**
   * Closes the yard where SQLite came upon damage or a disk error in its file. What a person reads then; null where
   * it is neither, or while the file is being checked for that.
   */
  function noticeDamage(error: unknown): YardFileProblem | null {
    const { yard } = held;
    if (!(isDamage(error) || isDiskFault(error))) return null;
    const lost = noticeMoved();
    if (lost !== null || yard === null || held.checking !== null || !isDamage(error)) return lost;
    stopFor(held, damagedFile(yard.file));
    held.moved.give();
    return held.problem;
  }

  return { noticeMoved, noticeDamage, guarded };
}
