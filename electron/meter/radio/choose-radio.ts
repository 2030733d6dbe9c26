import { isNotAllowed, textOfError } from '../bluez/errors.ts';
import { nobleRadio } from './noble-radio.ts';
import type { Radio } from './radio.ts';

/**
 * The way to the air that works on this computer, found by trying.
 *
 * On Linux that is BlueZ wherever it runs. noble's raw socket needs a right that usual users do not have; and beside
 * BlueZ it drives an adapter that BlueZ drives too, so each ends what the other began: a scan, a connection, the answers
 * of one meter to two who ask. Where BlueZ is not there, or lets this user do nothing, noble has the adapter to itself
 * or is refused, too.
 */
export async function chooseRadio(): Promise<Radio> {
  if (process.platform !== 'linux') return nobleRadio(process.platform === 'darwin' ? 'macos' : 'windows');
  try {
    const { Bluez } = await import('../bluez/bluez.ts');
    const { bluezRadio } = await import('../bluez/bluez-radio.ts');
    return bluezRadio(await Bluez.open());
  } catch (error) {
    console.error(`no BlueZ: ${textOfError(error)}`);
    return nobleRadio(isNotAllowed(error) ? 'hci-beside-bluez' : 'hci');
  }
}
