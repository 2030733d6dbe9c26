import { bridge } from '../../data/bridge.ts';
import { region } from '../../region.ts';

/** What a list of places has for one that the import adds. */
export const NEW_PLACE = -1;

/** A place outdoors with the average air of the person's region, without its name. */
export async function newOutdoors() {
  const { air, stations } = await bridge().query('stations.ofRegion', { timeZone: region().timeZone });
  const airSource = { kind: 'region' as const, stations };
  return { kind: 'outdoors' as const, air, airSource, airMovement: null };
}
