/**
 * `npm run pack:electron`: builds, and packs the app with Electron into installers under `dist/electron/`, for the system
 * that it runs on. It fetches Electron's binary. A deb is made where `PINTALLY_HOMEPAGE` gives the project's address.
 */
import { readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { ensureNativeSocket, reportNotReady } from '../meter/native-socket.ts';
import { packElectron } from './electron-app.ts';

const root = resolve(import.meta.dirname, '../..');
const electron = join(root, 'node_modules/electron');

// npm built it for whichever Node ran npm.
const { version } = JSON.parse(readFileSync(join(electron, 'package.json'), 'utf8'));
const execPath = join(electron, 'dist', readFileSync(join(electron, 'path.txt'), 'utf8'));
const state = await ensureNativeSocket({ execPath, electronVersion: version });
if (!state.ready) reportNotReady();
for (const file of await packElectron(root, { homepage: process.env.PINTALLY_HOMEPAGE })) console.log(file);
