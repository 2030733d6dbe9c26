import type { LinkMakers } from '../../../electron/app/meter/chosen-link.ts';
import { NoLink } from '../../../electron/meter/no-link.ts';
import { SimulatedLink } from '../../../electron/meter/simulated-link.ts';

/** The links of a computer with no radio; a simulated meter always shows the same. */
export const noMeter: LinkMakers = {
  none: () => new NoLink(),
  bluetooth: () => new NoLink(),
  simulated: () => new SimulatedLink({ seed: 1 }),
};
