import { z } from 'zod';
import type { Backup } from '../../../shared-core/contract/backups.ts';
import type { SalvageReport } from '../../../shared-core/contract/salvage.ts';
import { builtInSpecies } from '../../../shared-core/wood/species/built-in.ts';
import { type Message, message } from '../../../shared-core/words/message.ts';
import { forgetUndismissedCopies, undismissedCopies } from '../../store/rescued-copy.ts';
import type { Yard, YardReader } from '../../store/yard.ts';
import type { Queries } from '../handlers.ts';
import { lostOf, savedOf } from './salvaging.ts';
import { areSettingsDamaged, changeSettings } from './settings.ts';

export const DAMAGED_READINGS_NOTE = 'yard-note.readings-damaged';
/** More boards than this are not named. */
const MOST_NAMED = 10;

/**
 * @param boardCodes  of the boards that they are on, as far as the yard has them
 * @param backupAt    when the newest backup that has them all as they were saved was made, UTC; null where none has
 */
export function damagedReadingsNote(
  readings: number,
  boardCodes: readonly string[],
  backupAt: string | null,
): Message {
  const boards =
    boardCodes.length === 0
      ? message('yard-note.readings-damaged.no-board')
      : message('yard-note.readings-damaged.boards', {
          boardCodes: boardCodes.slice(0, MOST_NAMED),
          more: Math.max(0, boardCodes.length - MOST_NAMED),
        });
  const backup =
    backupAt === null
      ? message('yard-note.readings-damaged.no-backup', { readings })
      : message('yard-note.readings-damaged.backup', { readings, backupAt });
  return message(DAMAGED_READINGS_NOTE, { readings, boards, backup });
}

/** @param backup  the newest that has more readings than were recovered */
export function salvagedNote(report: SalvageReport, backup: Backup | undefined): Message {
  const [boards, readings] = [savedOf(report, 'boards'), savedOf(report, 'readings')];
  const more = (backup?.contents?.readings ?? 0) - readings;
  const lost = lostOf(report, 'readings');
  const { damagedFile } = report;
  return message('yard-note.salvaged', {
    boards,
    readings,
    nextSentences: [
      ...(lost > 0 ? [message('yard-note.salvaged.lost', { lost })] : []),
      message('yard-note.salvaged.more'),
      ...(backup ? [message('yard-note.salvaged.backup', { backupAt: backup.at, more })] : []),
      damagedFile === null
        ? message('yard-note.salvaged.file-renamed')
        : message('yard-note.salvaged.file', { damagedFile }),
    ],
  });
}

/** What the disk damaged of a yard's entries, so that stand-ins or defaults hold; null where it is nothing. */
function damagedEntriesNote({ places, species, endUses, meters, settings }: YardReader): Message | null {
  const air = places.list().filter(({ isDamaged }) => isDamaged);
  const kinds = species.list().filter(({ isDamaged }) => isDamaged);
  const uses = endUses.list().filter(({ isDamaged }) => isDamaged);
  const toDescribe = meters.damaged();
  const ofSettings = areSettingsDamaged({ settings }) ? [message('yard-note.damaged-settings')] : [];
  const entries = [
    ...air.map(({ name }) => message('yard-note.damaged-place', { name })),
    ...kinds.map(({ name }) => message('yard-note.damaged-species', { name })),
    ...uses.map(({ name }) => message('yard-note.damaged-use', { name })),
    ...toDescribe.map((name) => message('yard-note.damaged-meter', { name })),
    ...ofSettings,
  ];
  if (entries.length === 0) return null;
  const blank = kinds.filter(({ id }) => !isBuiltIn(id)).length;
  const toSave = air.length + kinds.length + uses.length;
  const nextSentences = [
    ...(toSave - blank + ofSettings.length > 0 ? [message('yard-note.damaged-defaults')] : []),
    ...(blank > 0 ? [message('yard-note.damaged-blank')] : []),
    ...(toSave > 0 ? [message('yard-note.damaged-check', { entries: toSave })] : []),
    ...(toDescribe.length > 0 ? [message('yard-note.damaged-describe', { meters: toDescribe.length })] : []),
    ...(ofSettings.length > 0 ? [message('yard-note.damaged-check-settings')] : []),
  ];
  return message('yard-note.entries-damaged', { entries, nextSentences });
}

const isBuiltIn = (speciesId: string): boolean => builtInSpecies.some(({ id }) => id === speciesId);

/** The setting of a new yard that names the file which had its place. */
const STARTED_NEW = 'startedNew';
const startedNewSchema = z.object({ file: z.string() });

const putStartedNew = (
  { transaction, settings }: Yard,
  told: z.infer<typeof startedNewSchema> | null,
): void => transaction(() => settings.put(STARTED_NEW, told));

/** What a person must know of the open yard's file, until they dismiss it. */
export function createYardNotes() {
  let notes: Message[] = [];
  let open: Yard | null = null;
  const add = (note: Message): void => {
    notes = [...notes.filter(({ code }) => code !== note.code), note];
  };
  return {
    /** A yard was opened: what was found of its file on the way. */
    begin: (yard: Yard): void => {
      const { wal, missingActs, repaired } = yard;
      open = yard;
      notes = [];
      const startedNew = startedNewSchema.safeParse(yard.reader.settings.get(STARTED_NEW)).data;
      if (startedNew) notes.push(message('yard-note.started-new', startedNew));
      const damaged = damagedEntriesNote(yard.reader);
      if (damaged) notes.push(damaged);
      const names = undismissedCopies(yard.file);
      if (names.length > 0) notes.push(message('yard-note.rescued-copies', { copies: names.length, names }));
      if (wal.kind === 'repaired')
        notes.push(message('yard-note.changes-repaired', { changes: wal.commits }));
      if (repaired > 0) notes.push(message('yard-note.rules-repaired', { rules: repaired }));
      if (missingActs) {
        notes.push(
          message('yard-note.changes-missing', {
            changes: missingActs.acts,
            newestAt: missingActs.newestAt,
          }),
        );
      }
    },
    forget: (): void => {
      open = null;
      notes = [];
    },
    /** What could be read of a damaged file was saved. */
    addSalvaged: (report: SalvageReport): void => add(salvagedNote(report, undefined)),
    /** An empty yard was begun beside a file that is called so now. It says so until that is dismissed. */
    addStartedNew: (yard: Yard, file: string): void => {
      putStartedNew(yard, { file });
      notes.push(message('yard-note.started-new', { file }));
    },
    /** What is open was restored: a change of many boards was under way when it was backed up, not when Pintally ended. */
    tellRestored: (): void => {
      notes = notes.map((note) =>
        note.code === 'yard-note.taken-back' ? message('yard-note.taken-back-restored') : note,
      );
    },
    /** In the place of one of the same code. */
    add,
    queries: { 'recovery.notes': () => notes } satisfies Partial<Queries>,
    dismiss: (dismissed: string): void => {
      if (dismissed === 'yard-note.started-new' && open) putStartedNew(open, null);
      // Dismissed, the defaults are the person's.
      if (dismissed === 'yard-note.entries-damaged' && open && areSettingsDamaged(open))
        changeSettings(open, {});
      if (dismissed === 'yard-note.rescued-copies' && open) forgetUndismissedCopies(open.file);
      notes = notes.filter(({ code }) => code !== dismissed);
    },
  };
}

export type YardNotes = ReturnType<typeof createYardNotes>;
