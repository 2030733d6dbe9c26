import nodeModule from 'node:module';
import { join } from 'node:path';
import { isNodeNewEnough, OLDEST_NODE } from './node-version.mjs';

/** The same app without Electron: built as `out/main/loopback.js`, prints the address that opens the window. */
if (!isNodeNewEnough(process.versions.node)) {
  console.error(`Pintally needs Node ${OLDEST_NODE} or newer. This is Node ${process.versions.node}.`);
  console.error('Use "npm start", which brings the right one. Nothing was opened.');
  process.exit(1);
}
// What Node compiles at one start, the next need not; nor need, by the variable, the host's threads and its radio. It is
// beside the build: whoever can write there can change the build as well.
process.env.NODE_COMPILE_CACHE ??= join(import.meta.dirname, '../compile-cache');
nodeModule.enableCompileCache(process.env.NODE_COMPILE_CACHE);
const { serveLoopback } = await import('./loopback-start.ts');
await serveLoopback(import.meta.dirname);
