import { join } from 'node:path';
import { dataDir } from './data-dir.ts';
import { serveInBrowser, showRunning } from './loopback-window.ts';

/** What the packed folder's start script runs: `npm start` without npm, a build or Electron. */
if (!(await showRunning(dataDir()))) serveInBrowser(join(import.meta.dirname, 'loopback.js'));
