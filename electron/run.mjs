/**
 * `node electron/run.mjs FILE.ts …` runs a script of ours. An older Node would only say that it does not know what a
 * file of TypeScript is.
 */
import { resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import { endOnOldNode } from './node-version.mjs';

endOnOldNode();
process.argv.splice(1, 1);
const [, script = ''] = process.argv;
await import(pathToFileURL(resolve(script)).href);
