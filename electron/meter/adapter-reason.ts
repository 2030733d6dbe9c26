import type { RadioWay } from '../../shared-core/contract/radio-way.ts';
import { type Message, message } from '../../shared-core/words/message.ts';
import type { AdapterState } from './meter-link.ts';
import type { AdapterReason } from './radio-messages.ts';

const messages: Readonly<Record<AdapterReason, Message>> = {
  on: message('meter.adapter.on'),
  starting: message('meter.adapter.starting'),
  'no-adapter': message('meter.adapter.missing'),
  off: message('meter.adapter.off'),
  refused: message('meter.adapter.refused'),
  unsupported: message('meter.adapter.unsupported'),
  'module-missing': message('meter.adapter.module-missing'),
  'no-answer': message('meter.adapter.no-answer'),
  'service-stopped': message('meter.adapter.service-stopped'),
};

/** Where what to do depends on the system. */
const bySystem: Readonly<Record<RadioWay, Partial<Record<AdapterReason, Message>>>> = {
  bluez: {
    refused: message('meter.adapter.refused-bluez'),
    off: message('meter.adapter.off-linux'),
    'no-answer': message('meter.adapter.no-answer-bluez'),
  },
  'hci-beside-bluez': {
    refused: message('meter.adapter.refused-bluez'),
    off: message('meter.adapter.off-linux'),
  },
  hci: {
    'no-adapter': message('meter.adapter.missing-hci'),
    refused: message('meter.adapter.refused-hci'),
    off: message('meter.adapter.off-linux'),
  },
  macos: { refused: message('meter.adapter.refused-macos'), off: message('meter.adapter.off-macos') },
  windows: {
    refused: message('meter.adapter.refused-windows'),
    off: message('meter.adapter.off-windows'),
    unsupported: message('meter.adapter.unsupported-windows'),
  },
};

/** @param way  how the radio is reached; null until that is known */
export const adapterState = (reason: AdapterReason, way: RadioWay | null): AdapterState => ({
  usable: reason === 'on',
  message: (way !== null && bySystem[way][reason]) || messages[reason],
  way,
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
