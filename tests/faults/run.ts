/**
 * `npm run test:faults`: makes each fault many times and prints what came of it. Ends badly where anything was lost
 * without a sentence.
 *
 *     node tests/faults/run.ts [--short] [NAME …] [--tries N] [--seed N]
 *
 * A reason for a loss begins with its seed: `NAME --tries 1 --seed N` makes that one again.
 */
import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import { disksInBackups, killsInBackups } from './backup-faults.ts';
import { backupFolderGone } from './backup-folder-gone.ts';
import { bitFlipsInFile, bitFlipsInLog } from './bit-flips.ts';
import { clockSet } from './clock-set.ts';
import { fuzzContract } from './contract-fuzz.ts';
import { diskErrors, fullDisk, readOnly } from './failing-disk.ts';
import type { Fault, FaultResult } from './fault.ts';
import { fileSwapped } from './file-swapped.ts';
import { foreignFiles } from './foreign-files.ts';
import { hostileSockets } from './hostile-sockets.ts';
import { killedWindows } from './killed-windows.ts';
import { killsInLongWork } from './kills-in-long-work.ts';
import { killsWhileStreaming } from './kills-while-streaming.ts';
import { powerCuts } from './power-cuts.ts';
import { twoHosts } from './two-hosts.ts';

/** How often each is made, in full and in the short form that `npm test` has. */
const faults: { name: string; fault: Fault; full: number; short: number }[] = [
  { name: 'kills-while-streaming', fault: killsWhileStreaming, full: 300, short: 4 },
  { name: 'killed-windows', fault: killedWindows, full: 60, short: 3 },
  { name: 'kills-in-long-work', fault: killsInLongWork, full: 80, short: 5 },
  { name: 'kills-in-backups', fault: killsInBackups, full: 80, short: 4 },
  { name: 'disks-in-backups', fault: disksInBackups, full: 72, short: 4 },
  { name: 'backup-folder-gone', fault: backupFolderGone, full: 40, short: 3 },
  { name: 'power-cuts', fault: powerCuts, full: 200, short: 6 },
  { name: 'bit-flips-in-file', fault: bitFlipsInFile, full: 200, short: 10 },
  { name: 'bit-flips-in-log', fault: bitFlipsInLog, full: 100, short: 6 },
  { name: 'full-disk', fault: fullDisk, full: 40, short: 4 },
  { name: 'disk-errors', fault: diskErrors, full: 40, short: 4 },
  { name: 'read-only', fault: readOnly, full: 30, short: 3 },
  { name: 'two-hosts', fault: twoHosts, full: 24, short: 6 },
  { name: 'file-swapped', fault: fileSwapped, full: 40, short: 10 },
  { name: 'foreign-files', fault: foreignFiles, full: 28, short: 7 },
  { name: 'clock-set', fault: clockSet, full: 24, short: 4 },
  // Each kind of attack once, whatever the number.
  { name: 'hostile-sockets', fault: hostileSockets, full: 1, short: 1 },
  // So many inputs of each request.
  { name: 'contract-fuzz', fault: fuzzContract, full: 2000, short: 15 },
];

const { values, positionals } = parseArgs({
  options: {
    short: { type: 'boolean', default: false },
    tries: { type: 'string' },
    seed: { type: 'string', default: '1' },
  },
  allowPositionals: true,
});
const wanted = faults.filter(({ name }) => positionals.length === 0 || positionals.includes(name));
if (wanted.length === 0)
  throw new Error(`There is no such fault. There are: ${faults.map(({ name }) => name)}`);

/** What nobody caught would have ended the app. */
const uncaught: string[] = [];
process.on('uncaughtException', (error) => uncaught.push(`the process would have ended: ${error.stack}`));

/** In the short form two faults go on at once: each waits for its processes most of the time. */
const LANES = values.short ? 2 : 1;
const rows: (FaultResult & { name: string; seconds: number })[] = [];
const left = [...wanted];
async function lane(): Promise<void> {
  for (let next = left.shift(); next !== undefined; next = left.shift()) {
    const { name, fault, full, short } = next;
    const begun = performance.now();
    const result = await fault(Number(values.tries ?? (values.short ? short : full)), Number(values.seed));
    console.error([`— ${name}`, ...result.lost].join('\n  '));
    rows.push({ ...result, name, seconds: (performance.now() - begun) / 1000 });
  }
}
await Promise.all(Array.from({ length: LANES }, lane));
if (uncaught.length > 0) {
  console.error(uncaught.join('\n'));
  rows.push({ name: 'uncaught', tried: uncaught.length, survived: 0, lost: uncaught, seconds: 0 });
}

const columns = ['fault', 'tried', 'survived', 'lost without a sentence', 'seconds'];
const lines = [
  columns,
  ...rows.map(({ name, tried, survived, lost, seconds }) =>
    [name, tried, survived, lost.length, seconds.toFixed(0)].map(String),
  ),
];
const widths = columns.map((_, column) => Math.max(...lines.map((line) => line[column]?.length ?? 0)));
for (const line of lines) {
  console.log(
    line
      .map((cell, column) =>
        column === 0 ? cell.padEnd(widths[0] ?? 0) : cell.padStart(widths[column] ?? 0),
      )
      .join('  '),
  );
}

const failed = rows.filter(({ lost }) => lost.length > 0).length;
const artifacts = join(import.meta.dirname, '../../artifacts');
mkdirSync(artifacts, { recursive: true });
writeFileSync(join(artifacts, 'faults.json'), JSON.stringify({ passed: rows.length - failed, failed }));
process.exit(failed === 0 ? 0 : 1);
