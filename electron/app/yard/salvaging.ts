import { existsSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { type SalvageReport, salvageReportSchema } from '../../../shared-core/contract/salvage.ts';
import { makePrivateFile } from '../../store/private-files.ts';
import { renameDamaged } from '../../store/yard-file.ts';
import type { OwnThread } from '../own-thread.ts';

/** The thread that reads a damaged file (`salvage-worker.ts`) and writes what it could read to the target. */
export type SalvageThread = OwnThread<{ file: string; target: string }, SalvageReport>;

const reportOf = (file: string): string => `${file}-salvaged.json`;

/**
 * Puts a file with what could be read in the place of a damaged one, which is renamed and left in the folder. The report
 * is saved there as well. Until everything is read, nothing is moved. To be called while the damaged file is locked and not open.
 */
export async function salvageYard(file: string, day: string, thread: SalvageThread): Promise<void> {
  const target = `${file}-salvaging`;
  for (const suffix of ['', '-journal', '-wal', '-shm']) rmSync(target + suffix, { force: true });
  makePrivateFile(target);
  const report = await thread.ask({ file, target });
  renameDamaged(file, day);
  renameSync(target, file);
  saveReport(file, report);
}

/** Saves beside a yard file what was recovered. */
export function saveReport(file: string, report: SalvageReport): void {
  makePrivateFile(reportOf(file));
  writeFileSync(reportOf(file), JSON.stringify(report));
}

/** How many of a kind were saved. */
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
