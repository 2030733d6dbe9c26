import { renameDamaged, type YardFileProblem } from '../../store/yard-file.ts';
import { dayOf, type HeldYard, setProblem } from './held-yard.ts';
import { isLost, isOurs, rescue } from './rescuing.ts';

/**
 * Closes what is open. A file that was lost is rescued first.
 * @throws YardFileProblem where it cannot be rescued: it then stays open
 */
export function close(held: HeldYard, isDamaged = false): void {
  if (held.yard && isLost(held, held.yard)) rescue(held, held.yard);
  release(held, isDamaged);
}

/** Closes what is open, and rescues nothing. */
export function release(held: HeldYard, isDamaged = false): void {
  const spoiledFile = held.yard && isOurs(held, held.yard) && held.yard.isSpoiled() ? held.yard.file : null;
  held.yard?.close(isDamaged);
  held.yard = null;
  if (spoiledFile !== null) renameSpoiled(held, spoiledFile);
  releaseLock(held);
  held.mayWrite = false;
  held.checking = null;
}

/** Another Pintally may have the file from here on. */
export function releaseLock(held: HeldYard): void {
  held.lock?.release();
  held.lock = null;
}

/** Closes what is open, because it cannot be used. */
export function stopFor(held: HeldYard, found: YardFileProblem): void {
  close(held, found.damaged);
  setProblem(held, found);
}

/** Renames a file that does not fit its WAL. */
function renameSpoiled(held: HeldYard, file: string): void {
  try {
    renameDamaged(file, dayOf(held));
  } catch (error) {
    held.reportFault(error);
  }
}
