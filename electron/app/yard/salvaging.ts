import { existsSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { basename, dirname } from 'node:path';
import { type SalvageReport, salvageReportSchema } from '../../../shared-core/contract/salvage.ts';
import { syncFile, syncFolder } from '../../store/durable-files.ts';
import { makePrivateFile } from '../../store/private-files.ts';
import { renameDamaged } from '../../store/yard-file.ts';
import type { OwnThread } from '../own-thread.ts';

/** The thread that reads a damaged file (`salvage-worker.ts`) and writes what it could read to the target. */
export type SalvageThread = OwnThread<{ file: string; target: string }, SalvageReport>;

const reportOf = (file: string): string => `${file}-salvaged.json`;
const unfinished = (file: string): string => `${file}-salvaging`;
/** Whole and on disk: all that is left is to rename the damaged file, and to give this one its name. */
const finished = (file: string): string => `${file}-salvaged`;

/**
 * Puts a file with what could be read in the place of a damaged one, which is renamed and left in the folder. The report
 * is saved there as well. Until everything is read, nothing is moved. To be called while the damaged file is locked and not open.
 */
export async function salvageYard(file: string, day: string, thread: SalvageThread): Promise<void> {
  forgetSalvage(file);
  const target = unfinished(file);
  makePrivateFile(target);
  try {
    const report = await thread.ask({ file, target });
    saveReport(file, report);
    for (const written of [reportOf(file), target]) syncFile(written);
    renameSync(target, finished(file));
    syncFolder(dirname(file));
    finishSalvage(file, day);
  } catch (error) {
    // Where the damaged file was renamed already, the next opening finishes it.
    if (existsSync(file)) forgetSalvage(file);
    throw error;
  }
}

/**
 * Finishes a salvage that ended, by a kill or a power cut, between reading everything and putting the new file in place.
 * Of one that ended earlier, what it left is removed.
 * @returns whether there was one to finish
 */
export function finishSalvage(file: string, day: string): boolean {
  const isFinished = existsSync(finished(file));
  if (isFinished) {
    const damagedFile = basename(renameDamaged(file, day));
    renameSync(finished(file), file);
    const report = salvageReport(file);
    if (report) saveReport(file, { ...report, damagedFile });
    syncFolder(dirname(file));
  }
  forgetSalvage(file);
  return isFinished;
}

/** Removes what a salvage that was not completed left beside the yard file. */
export function forgetSalvage(file: string): void {
  for (const left of [unfinished(file), finished(file)]) {
    for (const suffix of ['', '-journal', '-wal', '-shm']) rmSync(left + suffix, { force: true });
  }
}

/** Saves beside a yard file what was recovered. */
export function saveReport(file: string, report: SalvageReport): void {
  makePrivateFile(reportOf(file));
  writeFileSync(reportOf(file), JSON.stringify(report));
}

/** How many of a kind were saved. */
export const lostOf = ({ kinds }: SalvageReport, kind: SalvageReport['kinds'][number]['kind']): number =>
  kinds.find((each) => each.kind === kind)?.lost ?? 0;
export const savedOf = ({ kinds }: SalvageReport, kind: SalvageReport['kinds'][number]['kind']): number =>
  kinds.find((each) => each.kind === kind)?.saved ?? 0;

/** What was saved when the file was last salvaged; null where it never was. */
export function salvageReport(file: string): SalvageReport | null {
  if (!existsSync(reportOf(file))) return null;
  try {
    return salvageReportSchema.parse(JSON.parse(readFileSync(reportOf(file), 'utf8')));
  } catch {
    return null;
  }
}
