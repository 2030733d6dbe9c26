import { homedir } from 'node:os';
import { join, resolve } from 'node:path';
import { keepPrivate } from './store/private-files.ts';

/**
 * Where yard files live: the same for Electron and for the loopback host, so that one machine has one yard.
 * `PINTALLY_DATA` overrides it; blank, it does not. No other user can enter Pintally's own folder, also where an earlier version made it;
 * one that the person chose stays as open as it is.
 */
export function dataDir(): string {
  const chosen = process.env.PINTALLY_DATA?.trim();
  // Whole from here on: the folder that this process was started in may be another one next time.
  if (chosen) return resolve(chosen.replace(/^~(?=$|[\\/])/, homedir()));
  const own = ownFolder();
  keepPrivate(own);
  return own;
}

function ownFolder(): string {
  const { APPDATA, XDG_DATA_HOME } = process.env;
  if (process.platform === 'win32') return join(APPDATA ?? homedir(), 'Pintally');
  if (process.platform === 'darwin') return join(homedir(), 'Library', 'Application Support', 'Pintally');
  return join(XDG_DATA_HOME ?? join(homedir(), '.local', 'share'), 'pintally');
}
