import { woodTempSchema } from '../../../shared-core/contract/round.ts';
import type { ProbeTemp } from '../../../shared-core/probing/readings/reading.ts';
import type { Yard } from '../../store/yard.ts';
import type { AppContext } from '../context.ts';

/** Wood warms and cools slowly: a value that is no older holds for it. */
const PROBE_HOLDS_MS = 5 * 60_000;

/** What the probe thermometers of the yard said last of the wood that they are in. */
export function createWoodProbes(context: Pick<AppContext, 'yard' | 'monotonicMs' | 'changed'>) {
  let newest: { yard: Yard; sensorId: number; tempC: number; atMs: number } | null = null;

  return {
    /** Of a probe of the yard that is open. What no wood can be at is left out. */
    take: (sensorId: number, tempC: number | null): void => {
      if (tempC === null || !woodTempSchema.safeParse(tempC).success) return;
      newest = { yard: context.yard(), sensorId, tempC, atMs: context.monotonicMs() };
      context.changed(['sensors']);
    },
    /** The newest value of any, with the name of that probe; null where there is none, or it is too old. */
    newest: (): ProbeTemp | null => {
      if (newest === null) return null;
      const { yard, sensorId, tempC, atMs } = newest;
      if (yard !== context.yard() || context.monotonicMs() - atMs > PROBE_HOLDS_MS) {
        newest = null;
        return null;
      }
      const probe = yard.airSensors.list().find(({ id }) => id === sensorId);
      return probe?.kind === 'probe' ? { name: probe.name, tempC } : null;
    },
  };
}
export type WoodProbes = ReturnType<typeof createWoodProbes>;
