import { join } from 'node:path';
import { Refusal } from '../../../shared-core/contract/answer.ts';
import type { YardInfo } from '../../../shared-core/contract/yard.ts';
import { message } from '../../../shared-core/words/message.ts';
import { rescuedCopyOf } from '../../store/rescued-copy.ts';
import type { Yard } from '../../store/yard.ts';
import type { YardFileProblem } from '../../store/yard-file.ts';
import type { YardLock } from '../../store/yard-lock.ts';
import { createSignal, type Signal } from '../signal.ts';
import { linkedFile } from './linked-file.ts';
import { createYardNotes, type YardNotes } from './yard-notes.ts';

/** What this process has of a yard file: the file open, or why it is not. All that open, lose and replace it share this. */
export interface HeldYard {
  /** The demo yard has its own file, so that deleting it can never touch a reading of the person's. */
  readonly files: Readonly<Record<YardInfo['kind'], string>>;
  kind: YardInfo['kind'];
  yard: Yard | null;
  /** Held as long as the yard is open. */
  lock: YardLock | null;
  problem: YardFileProblem | null;
  /** The copy of the open file that was made when another was put in its place. */
  rescuedFromReplaced: string | null;
  /** False while no yard is open, and while a large file is being checked. */
  mayWrite: boolean;
  /** While a large file is being checked. */
  checking: Promise<void> | null;
  /** A large file was checked: it may be written to now, or it is closed and has a problem. */
  readonly integrityChecked: Signal<void>;
  /** The file that was open is no longer at its path: it is closed and has a problem, or it was opened again. */
  readonly moved: Signal<void>;
  readonly notes: YardNotes;
  now(): string;
  reportFault(error: unknown): void;
  /** Writes to the fault log, as codes, what a person may ask about later. */
  log(...what: (string | undefined)[]): void;
}

/** Nothing is open yet. */
export function createHeldYard(
  dataDir: string,
  now: () => string,
  reportFault: (error: unknown) => void,
  writeToLog: (what: string) => void,
): HeldYard {
  return {
    files: {
      own: linkedFile(join(dataDir, 'yard.sqlite')),
      demo: linkedFile(join(dataDir, 'demo-yard.sqlite')),
    },
    kind: 'own',
    yard: null,
    lock: null,
    problem: null,
    rescuedFromReplaced: null,
    mayWrite: false,
    checking: null,
    integrityChecked: createSignal(),
    moved: createSignal(),
    notes: createYardNotes(),
    now,
    reportFault,
    log: (...what) => writeToLog(what.join(' ')),
  };
}

/** The path of the yard that is open, or that has the problem. */
export const fileOf = ({ files, kind }: HeldYard): string => files[kind];

/** Today, as it is in the name of a file that is renamed. */
export const dayOf = ({ now }: HeldYard): string => now().slice(0, 10);

/** @throws Refusal while no yard is open */
export function currentYard({ yard, problem }: HeldYard): Yard {
  if (problem !== null) throw problem;
  if (yard === null) throw new Refusal(message('refusal.no-yard'));
  return yard;
}

export function setProblem(held: HeldYard, found: YardFileProblem): void {
  held.problem = found;
  held.log('yard-not-usable', found.problem.code, fileOf(held));
}

/** Also for a file that is there: it has another in its place. */
export const rescuedCopy = (held: HeldYard): string | null =>
  held.problem && (held.rescuedFromReplaced ?? rescuedCopyOf(fileOf(held)));
