import type { RadioWay } from '../../../shared-core/contract/radio-way.ts';
import { listenAsWanted, sendFound, setOverhear, setScan, startRadio } from './listening.ts';
import type { Radio } from './radio.ts';
import { connect, hangUp, leave, listen, prove, watch } from './session.ts';
import { endVisit, visit } from './visiting.ts';

/** The adapter as noble reaches it: by a raw socket on Linux, through the system on macOS and Windows. */
export const nobleRadio = (way: RadioWay): Radio => ({
  start: () => startRadio(way),
  scan: (on) => {
    setScan(on);
    listenAsWanted();
  },
  overhear: setOverhear,
  sendFound,
  connect,
  listen,
  watch,
  prove,
  visit,
  endVisit,
  disconnect: async () => {
    await leave();
    listenAsWanted();
  },
  hangUp,
});
