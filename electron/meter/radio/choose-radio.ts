import { nobleRadio } from './noble-radio.ts';
import type { Radio } from './radio.ts';

/** The way to the air that this computer has. */
export function chooseRadio(): Radio {
  if (process.platform === 'linux') return nobleRadio('hci');
  return nobleRadio(process.platform === 'darwin' ? 'macos' : 'windows');
}
