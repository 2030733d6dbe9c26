import { homedir } from 'node:os';
import { join } from 'node:path';

/**
 * Where yard files live: the same for Electron and for the loopback host, so that one machine has one yard.
 * `PINTALLY_DATA` overrides it.
 */
export function dataDir(): string {
  const { PINTALLY_DATA, APPDATA, XDG_DATA_HOME } = process.env;
  if (PINTALLY_DATA) return PINTALLY_DATA;
  if (process.platform === 'win32') return join(APPDATA ?? homedir(), 'Pintally');
  if (process.platform === 'darwin') return join(homedir(), 'Library', 'Application Support', 'Pintally');
  return join(XDG_DATA_HOME ?? join(homedir(), '.local', 'share'), 'pintally');
}
