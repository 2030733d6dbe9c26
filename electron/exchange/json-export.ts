import {
  EXPORT_FORMAT,
  EXPORT_VERSION,
  type ExportHead,
  yardTableNames,
} from '../../shared-core/exchange/yard-tables.ts';
import type { Db } from '../store/yard-file.ts';
import { recordReads } from '../store/yard-records.ts';

const TELL_EVERY_RECORDS = 500;

/** Writes everything that a person entered, one record a line. @param nowAt  UTC instant */
export function writeJson(
  db: Db,
  nowAt: string,
  put: (text: string) => void,
  tell: (done: number, total: number) => void,
): void {
  const { count, all } = recordReads(db);
  const total = yardTableNames.reduce((sum, named) => sum + count(named), 0);
  let done = 0;
  const head: ExportHead = { format: EXPORT_FORMAT, version: EXPORT_VERSION, exportedAt: nowAt };
  put(JSON.stringify(head).slice(0, -1));
  for (const named of yardTableNames) {
    put(`,\n${JSON.stringify(named)}:[`);
    let isFirst = true;
    for (const record of all(named)) {
      put(`${isFirst ? '' : ','}\n${JSON.stringify(record)}`);
      isFirst = false;
      if (++done % TELL_EVERY_RECORDS === 0) tell(done, total);
    }
    put(']');
  }
  put('}\n');
}
