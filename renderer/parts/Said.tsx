import { inUnits } from '../../shared-core/units/said.ts';
import { useUnits } from '../stores/settings.ts';

/** A sentence of the core, with its lengths and temperatures in the person's units. */
export function Said({ children }: { children: string }) {
  return inUnits(children, useUnits());
}
