import type { AdapterState } from './meter-link.ts';
import type { AdapterReason } from './radio-messages.ts';

const typedWorks = 'Typed readings and the simulated meter work without it.';

const sentences: Readonly<Record<AdapterReason, string>> = {
  on: 'Bluetooth is on.',
  starting: 'Bluetooth is starting.',
  'no-adapter': `This computer has no Bluetooth adapter that can be used. Plug one in, then look for meters again. ${typedWorks}`,
  off: `Bluetooth is switched off. Switch it on in the system's settings; Pintally notices by itself. ${typedWorks}`,
  refused: `The system does not let Pintally use Bluetooth. Allow it in the system's privacy settings (on Linux: the right cap_net_raw), then look for meters again. ${typedWorks}`,
  unsupported: `This computer's Bluetooth adapter is too old for Low Energy meters. Use another adapter. ${typedWorks}`,
  'module-missing': `The part that talks to the Bluetooth adapter is missing or was built for another version. Run "npx node electron/meter/native-socket.ts" in Pintally's folder, then look for meters again. ${typedWorks}`,
  'no-answer': `The Bluetooth adapter does not answer. Switch Bluetooth off and on, or pull the adapter out and plug it in again. ${typedWorks}`,
};

export const adapterState = (reason: AdapterReason): AdapterState => ({
  usable: reason === 'on',
  sentence: sentences[reason],
});

/**
 * What noble's word for the adapter means.
 * @param adaptersPresent how many adapters the system lists; null where it keeps no list that can be read. noble calls
 *   an adapter that is not there "powered off".
 */
export function reasonOfState(nobleState: string, adaptersPresent: number | null): AdapterReason {
  switch (nobleState) {
    case 'poweredOn':
      return 'on';
    case 'poweredOff':
      return adaptersPresent === 0 ? 'no-adapter' : 'off';
    case 'unauthorized':
      return 'refused';
    case 'unsupported':
      return adaptersPresent === 0 ? 'no-adapter' : 'unsupported';
    default:
      return 'starting';
  }
}

/** What an error of loading noble or opening the adapter means. */
export function reasonOfError(message: string): AdapterReason {
  if (/EPERM|EACCES|not permitted|permission/i.test(message)) return 'refused';
  if (/NODE_MODULE_VERSION|cannot find module|ERR_DLOPEN|no native build/i.test(message))
    return 'module-missing';
  if (/EAFNOSUPPORT|ENODEV|no such device|no compatible/i.test(message)) return 'no-adapter';
  return 'no-answer';
}
