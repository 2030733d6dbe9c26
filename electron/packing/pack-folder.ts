/**
 * `npm run pack:folder`: builds, and packs the app with Node into `dist/`, for the system that it runs on.
 */
import { globSync, readFileSync, statSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { ensureNativeSocket, reportNotReady } from '../meter/native-socket.ts';
import { packFolder } from './packed-folder.ts';

const root = resolve(import.meta.dirname, '../..');
const { version } = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8'));
const folder = join(root, 'dist', `pintally-${version}-${process.platform}-${process.arch}`);

// npm built it for whichever Node ran npm.
const state = await ensureNativeSocket({ execPath: process.execPath, electronVersion: null });
if (!state.ready) reportNotReady();
await packFolder(root, folder);
const files = globSync('**/*', { cwd: folder, withFileTypes: true }).filter((entry) => entry.isFile());
const bytes = files.reduce((sum, { parentPath, name }) => sum + statSync(join(parentPath, name)).size, 0);
console.log(`${folder}: ${files.length} files, ${Math.round(bytes / 1e6)} MB`);
