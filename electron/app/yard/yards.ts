import { rmSync } from 'node:fs';
import packageJson from '../../../package.json' with { type: 'json' };
import type { YardInfo } from '../../../shared-core/contract/yard.ts';
import type { Language } from '../../../shared-core/words/languages.ts';
import { type Message, message } from '../../../shared-core/words/message.ts';
import { picturesBeside } from '../../store/picture-files.ts';
import type { Yard, YardReader } from '../../store/yard.ts';
import { asProblem, damagedFile, isDamage } from '../../store/yard-file.ts';
import { isOwned, lockYard } from '../../store/yard-lock.ts';
import type { YardToBackUp } from './backups.ts';
import type { CheckThread } from './check-thread.ts';
import { close, release, stopFor } from './closing.ts';
import { removeYardFiles } from './demo-yard.ts';
import { createHeldYard, currentYard, fileOf, type HeldYard, rescuedCopy } from './held-yard.ts';
import { createNoticingLoss } from './noticing-loss.ts';
import { createOpening, type Open, type YardBackups } from './opening.ts';
import { createRecovering } from './recovering.ts';
import { createReplacing } from './replacing.ts';
import { changeSettings, settingsOf } from './settings.ts';

/** How often it is looked whether the open file is still at its path, while nobody asks for anything. */
const LOOK_EVERY_MS = 5000;

/**
 * Which yard file is open: the person's own, or the demo yard. Each thing done with it has its own file: `opening.ts`,
 * `closing.ts`, `noticing-loss.ts`, `rescuing.ts`, `recovering.ts` and `replacing.ts`, which share a `HeldYard`.
 */
export function createYards(
  dataDir: string,
  now: () => string,
  checkThread: CheckThread,
  reportFault: (error: unknown) => void,
  writeToLog: (what: string) => void,
  backups?: YardBackups,
) {
  const held = createHeldYard(dataDir, now, reportFault, writeToLog);
  const guarded = (opened: Yard): Yard => noticingLoss.guarded(opened);
  const open: Open = createOpening(held, dataDir, checkThread, guarded, backups);
  const noticingLoss = createNoticingLoss(held, open);
  const { noticeMoved, noticeDamage } = noticingLoss;
  const looking = setInterval(noticeMoved, LOOK_EVERY_MS).unref();
  const current = (): Yard => currentYard(held);
  const openUuid = (): string | null => (held.problem === null ? (held.yard?.uuid ?? null) : null);

  open('own');

  return {
    /** @throws Refusal while no yard is open */
    current,
    /** @throws Refusal while no yard is open */
    reader: (): YardReader => current().reader,
    uuid: openUuid,
    kind: (): YardInfo['kind'] => held.kind,
    isTaken: (): boolean => held.problem !== null && isOwned(held.problem),
    info: (): YardInfo => {
      const boards = countBoards(held);
      return {
        uuid: openUuid(),
        kind: held.kind,
        file: fileOf(held),
        problem: held.problem?.problem ?? null,
        canStartAfresh: held.problem?.damaged ?? false,
        rescuedFile: rescuedCopy(held),
        boards,
        version: packageJson.version,
      };
    },
    /** Null while the own yard is not open, and while a large file is being checked. */
    toBackUp: (): YardToBackUp | null =>
      held.kind === 'own' && held.yard !== null && held.mayWrite
        ? {
            file: held.yard.file,
            uuid: held.yard.uuid,
            backupId: held.yard.backupId,
            holdsAnything: held.yard.holdsAnything(),
          }
        : null,
    /** False while no yard is open, and while a large file is being checked. */
    mayWrite: (): boolean => held.mayWrite,
    /** Done when the large file that is open was checked; null where that is not going on. */
    checking: (): Promise<void> | null => held.checking,
    integrityChecked: held.integrityChecked,
    notes: held.notes,
    ownFile: held.files.own,
    ...createReplacing(held, noticeMoved, open),
    ...createRecovering(held, open),
    /** The open file turned out to be damaged: it is closed and has a problem. */
    foundDamage: (): void => {
      stopFor(held, damagedFile(fileOf(held)));
      held.integrityChecked.give();
    },
    noticeMoved,
    noticeDamage,
    moved: held.moved,
    openOwn: (): void => open('own'),
    /** @param language  of the names in it, where it is made now */
    openDemo: (language?: Language): void => {
      const own = held.kind === 'own' && held.yard !== null ? settingsOf(held.yard.reader) : null;
      open('demo', false, language);
      // Whoever only looks around needs no second choice of them.
      if (own && held.yard && held.mayWrite)
        changeSettings(held.yard, { language: own.language, units: own.units, theme: own.theme });
    },
    /** Opens the own yard in any case. */
    removeDemo: (): { notRemoved: Message | null } => {
      close(held);
      let notRemoved: Message | null = null;
      const file = held.files.demo;
      try {
        held.lock = lockYard(file, now());
        removeYardFiles(file);
        rmSync(picturesBeside(file), { recursive: true, force: true });
      } catch (error) {
        reportFault(error);
        notRemoved = message('refusal.demo-not-removed', { file });
      }
      open('own');
      return { notRemoved };
    },
    close: (): void => {
      clearInterval(looking);
      try {
        close(held);
      } catch {
        // Reported: there is no other place to save it to.
        release(held);
      }
    },
  };
}

export type Yards = ReturnType<typeof createYards>;

/** A large file may turn out to be damaged when it is first read. */
function countBoards(held: HeldYard): number {
  try {
    return held.problem === null ? (held.yard?.reader.boards.total() ?? 0) : 0;
  } catch (error) {
    if (!isDamage(error)) throw error;
    stopFor(held, asProblem(error, fileOf(held)));
    return 0;
  }
}
