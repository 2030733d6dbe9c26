import Database from 'better-sqlite3';
import { actHistory } from './act-history.ts';
import { actSlices } from './act-slices.ts';
import { actReads, actWrites } from './act-table.ts';
import { actTakingBack } from './act-taking-back.ts';
import { actUndo } from './act-undo.ts';
import { airLogReads, airLogWrites } from './air-log-table.ts';
import { airSensorReads, airSensorWrites } from './air-sensor-table.ts';
import { amendmentWrites } from './amendment-table.ts';
import { type BadCacheCollector, createBadCaches } from './bad-caches.ts';
import { boardReads, boardWrites } from './board-table.ts';
import { endUseReads, endUseWrites, speciesReads, speciesWrites } from './catalog-tables.ts';
import { confirmedSpeciesWrites } from './confirmed-species-table.ts';
import { coreHistoryReads, coreHistoryWrites } from './core-history-table.ts';
import { findingReads, findingWrites } from './finding-table.ts';
import { labelPrintReads, labelPrintWrites } from './label-print-table.ts';
import { likeBoardReads } from './like-boards.ts';
import { originReads, originWrites } from './lineage.ts';
import { meterCheckReads, meterCheckWrites } from './meter-check-table.ts';
import { meterReads, meterWrites } from './meter-table.ts';
import { moveReads, moveWrites } from './move-table.ts';
import { missingActs, rememberingNewestAct } from './newest-act.ts';
import { noteReads, noteWrites } from './note-table.ts';
import { outlookReads, outlookWrites } from './outlook-table.ts';
import { ovenCheckReads, ovenCheckWrites } from './oven-check-table.ts';
import { pictureReads, pictureWrites } from './picture-table.ts';
import { placeReads, placeWrites } from './place-table.ts';
import { plannedMoveReads, plannedMoveWrites } from './planned-move-table.ts';
import { projectReads, projectWrites } from './project-table.ts';
import { readingReads, readingWrites } from './reading-table.ts';
import { type Rescued, rescue } from './rescued-copy.ts';
import { roundComparisonReads, roundComparisonWrites } from './round-comparison-table.ts';
import { roundReads, roundWrites } from './round-table.ts';
import { sampleBoardReads, sampleBoardWrites } from './sample-board-table.ts';
import { settingReads, settingWrites } from './setting-table.ts';
import { spotPlanReads, spotPlanWrites } from './spot-plan-table.ts';
import { stackReads, stackWrites } from './stack-table.ts';
import { prepareWhenUsed } from './when-used.ts';
import { woodTemperatureReads, woodTemperatureWrites } from './wood-temperature-table.ts';
import { backupIdOf, holdsAnything } from './yard-contents.ts';
import {
  allowWriting,
  asProblem,
  closeUntouched,
  type Db,
  forbidWriting,
  isDamage,
  isDiskFault,
  openYardFile,
} from './yard-file.ts';
import { type Happened, type Loss, watchYard } from './yard-watch.ts';

/** A WAL of this length is brought into the file: on a full disk nothing is saved until it begins again. */
const LONG_WAL_BYTES = 1024 * 1024;
/** Not before nothing was written for so long, ms: by then whoever wrote is answered. */
const QUIET_MS = 50;
/** One of this length does not wait for that. */
const TOO_LONG_WAL_BYTES = 4 * 1024 * 1024;
/** One of this length is brought in at once, by whoever writes: nobody else had a turn. */
const LONGEST_WAL_BYTES = 16 * 1024 * 1024;

/** The file at the yard's path is not as this process left it; nothing was committed. */
export class FileMoved extends Error {
  override name = 'FileMoved';
}

/** Everything that can be asked of a yard file; nothing in here changes it. */
export type YardReader = ReturnType<typeof readsOf>;

/**
 * One open yard file with its tables. `reader` asks the file over a connection that cannot write, and sees what is
 * committed. `integrityChecked` is false for a large file that may be damaged and refuses to be written until
 * `allowWriting`; see `openYardFile`.
 * @throws YardFileProblem with a sentence for a person
 */
export function openYard(file: string, beforeMigrating?: (db: Db) => void) {
  const { db, integrityChecked, wal, repaired } = openYardFile(file, beforeMigrating);
  let readOnly: Db | undefined;
  try {
    readOnly = new Database(file, { readonly: true, timeout: 2000 });
    const reader = readOnly;
    for (const connection of [db, reader]) prepareWhenUsed(connection);
    // Every change of the file is one that `watch` knows of.
    db.pragma('wal_autocheckpoint = 0');
    const watch = watchYard(file, db);
    const badCaches = createBadCaches();
    let checkpointing: NodeJS.Timeout | undefined;

    /**
     * Brings the WAL into the file, and empties it: what is in the file alone can be copied, and no bit of the WAL can be
     * lost. Left for later where anybody reads from the WAL.
     */
    function checkpoint(): void {
      clearTimeout(checkpointing);
      if (watch.loss() !== null) return;
      db.pragma('busy_timeout = 0');
      try {
        bringIn(db);
      } catch {
        // On a full disk, say: the WAL still has everything, and a later one brings it in.
      } finally {
        db.pragma('busy_timeout = 2000');
        watch.settle();
      }
    }

    const tables = tablesOf(db, badCaches);
    const versionAtOpening = tables.version();
    const isInSlices = (): boolean => tables.acts.unfinished().length > 0;
    function checkpointWhenLong(walBytes: number): void {
      clearTimeout(checkpointing);
      if (walBytes > LONGEST_WAL_BYTES) checkpoint();
      else if (walBytes > LONG_WAL_BYTES) {
        const waitMs = walBytes > TOO_LONG_WAL_BYTES ? 0 : QUIET_MS;
        checkpointing = setTimeout(checkpointOutOfSlices, waitMs).unref();
      }
    }
    function checkpointOutOfSlices(): void {
      try {
        if (!isInSlices()) checkpoint();
      } catch (error) {
        // What is asked next finds what is wrong with the file, and says it.
        if (!(isDiskFault(error) || isDamage(error))) throw error;
      }
    }

    return {
      file,
      uuid: String(db.prepare('SELECT uuid FROM yard').pluck().get()),
      /** Under which its backups belong together. */
      backupId: backupIdOf(db),
      holdsAnything: () => holdsAnything(reader),
      integrityChecked,
      /** What was found of its WAL. */
      wal,
      /** How many indexes and triggers the disk had changed, which were repaired. */
      repaired,
      missingActs: missingActs(file, db),
      rememberNewestAct: rememberingNewestAct(file, db),
      allowWriting: () => allowWriting(db),
      forbidWriting: () => forbidWriting(db),
      ...tables,
      /** Rows of caches that were found and cannot be read. */
      badCaches,
      reader: readsOf(reader, badCaches),
      checkpoint,
      /** Brings in the WAL where it is too long, between two slices of an act. @returns whether it was */
      checkpointInSlices: (): boolean => {
        const isLong = watch.walBytes() > TOO_LONG_WAL_BYTES;
        if (isLong) checkpoint();
        return isLong;
      },
      /** What happened to the file from outside while it was open; null where nothing did. */
      loss: (): Loss | null => watch.loss(),
      /** What a person reads of that loss. */
      happened: (): Happened => watch.happened(),
      /** Whether anybody else wrote to it, by SQLite, while it was open. */
      wasWrittenByOthers: () => tables.version() !== versionAtOpening,
      /** Whether it is at its path, and was emptied, cut short or overwritten. */
      isSpoiled: () => watch.loss() === 'spoiled',
      /** Where only the WAL was moved, brings into the file what SQLite still has of that: whether that is all. */
      bringInMovedWal: (): boolean => {
        allowWriting(db);
        try {
          if (!bringIn(db)) return false;
        } catch {
          return false;
        }
        watch.settle();
        return true;
      },
      /** Saves what a lost file holds to a new one, which it names; see `rescue`. */
      rescue: (day: string): Rescued => {
        allowWriting(db);
        return rescue(
          db,
          file,
          day,
          watch.loss() === 'spoiled' ? { sizeBefore: watch.size(), walPages: watch.walPages() } : null,
        );
      },
      inTransaction: (): boolean => db.inTransaction,
      /**
       * Runs all of `work` or none of it.
       * @throws FileMoved
       */
      transaction: <T>(work: () => T): T => {
        if (db.inTransaction) return db.transaction(work)();
        // Before, too: what is rolled back goes from SQLite's cache, and may be nowhere else any more.
        if (watch.loss() !== null) throw new FileMoved();
        const result = db
          .transaction(() => {
            const made = work();
            if (watch.isSuspect()) throw new FileMoved();
            return made;
          })
          .immediate();
        checkpointWhenLong(watch.committed());
        return result;
      },
      /**
       * A spoiled file is left as it is: what the WAL or the cache has does not fit to what is there.
       * @param isDamaged  then it is left as it is, too
       */
      close: (isDamaged = false): void => {
        clearTimeout(checkpointing);
        if (isDamaged || watch.loss() === 'spoiled') closeUntouched(db, file);
        reader.close();
        if (db.open) db.close();
        watch.end();
      },
    };
  } catch (error) {
    readOnly?.close();
    db.close();
    throw asProblem(error, file);
  }
}
export type Yard = ReturnType<typeof openYard>;

/** Whether all of the WAL is in the file now, and the WAL is empty. */
function bringIn(db: Db): boolean {
  const [done] = db.pragma('wal_checkpoint(TRUNCATE)') as { busy: number; log: number }[];
  return done !== undefined && done.busy === 0;
}

/** All reads of a yard over a connection. */
export function readsOf(db: Db, badCaches: BadCacheCollector) {
  const endUses = endUseReads(db);
  const meters = meterReads(db);
  return {
    /** Changes with each write by another connection: for one that only reads, with every write. */
    version: (): unknown => db.pragma('data_version', { simple: true }),
    acts: { ...actReads(db), ...actHistory(db) },
    places: placeReads(db),
    airSensors: airSensorReads(db),
    airLogs: airLogReads(db),
    stacks: stackReads(db, badCaches, endUses),
    boards: boardReads(db, badCaches),
    origins: originReads(db),
    likeBoards: likeBoardReads(db),
    moves: moveReads(db),
    rounds: roundReads(db),
    woodTemperatures: woodTemperatureReads(db),
    spotPlans: spotPlanReads(db),
    readings: readingReads(db, meters),
    findings: findingReads(db, badCaches),
    outlooks: outlookReads(db),
    coreHistories: coreHistoryReads(db, badCaches),
    comparisons: roundComparisonReads(db, badCaches),
    meters,
    meterChecks: meterCheckReads(db),
    ovenChecks: ovenCheckReads(db),
    samples: sampleBoardReads(db),
    species: speciesReads(db),
    endUses,
    notes: noteReads(db),
    plannedMoves: plannedMoveReads(db),
    projects: projectReads(db),
    pictures: pictureReads(db),
    labelPrints: labelPrintReads(db),
    settings: settingReads(db),
  };
}

function tablesOf(db: Db, badCaches: BadCacheCollector) {
  const reads = readsOf(db, badCaches);
  return {
    version: reads.version,
    acts: {
      ...reads.acts,
      ...actWrites(db),
      ...actSlices(db),
      ...actTakingBack(db),
      ...actUndo(db),
    },
    places: { ...reads.places, ...placeWrites(db, reads.places) },
    airSensors: { ...reads.airSensors, ...airSensorWrites(db, reads.airSensors) },
    airLogs: { ...reads.airLogs, ...airLogWrites(db) },
    stacks: { ...reads.stacks, ...stackWrites(db, reads.stacks) },
    boards: { ...reads.boards, ...boardWrites(db, reads.boards) },
    confirmedSpecies: confirmedSpeciesWrites(db),
    origins: { ...reads.origins, ...originWrites(db) },
    likeBoards: reads.likeBoards,
    moves: { ...reads.moves, ...moveWrites(db, reads.moves) },
    rounds: { ...reads.rounds, ...roundWrites(db, reads.rounds) },
    woodTemperatures: { ...reads.woodTemperatures, ...woodTemperatureWrites(db) },
    spotPlans: { ...reads.spotPlans, ...spotPlanWrites(db) },
    readings: { ...reads.readings, ...readingWrites(db, reads.meters) },
    amendments: amendmentWrites(db),
    findings: { ...reads.findings, ...findingWrites(db) },
    outlooks: { ...reads.outlooks, ...outlookWrites(db) },
    coreHistories: { ...reads.coreHistories, ...coreHistoryWrites(db) },
    comparisons: { ...reads.comparisons, ...roundComparisonWrites(db) },
    meters: { ...reads.meters, ...meterWrites(db, reads.meters) },
    meterChecks: { ...reads.meterChecks, ...meterCheckWrites(db, reads.meterChecks, reads.meters) },
    ovenChecks: { ...reads.ovenChecks, ...ovenCheckWrites(db, reads.meters) },
    samples: { ...reads.samples, ...sampleBoardWrites(db) },
    species: { ...reads.species, ...speciesWrites(db, reads.species) },
    endUses: { ...reads.endUses, ...endUseWrites(db, reads.endUses) },
    notes: { ...reads.notes, ...noteWrites(db) },
    plannedMoves: { ...reads.plannedMoves, ...plannedMoveWrites(db, reads.plannedMoves) },
    projects: { ...reads.projects, ...projectWrites(db, reads.projects) },
    pictures: { ...reads.pictures, ...pictureWrites(db, reads.pictures) },
    labelPrints: { ...reads.labelPrints, ...labelPrintWrites(db) },
    settings: { ...reads.settings, ...settingWrites(db) },
  };
}
