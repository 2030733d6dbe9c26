import type { AirSource } from '../../shared-core/contract/yard.ts';
import type { MonthlyAir } from '../../shared-core/wood/climate/monthly-air.ts';
import { builtInEndUses, builtInSpecies } from '../../shared-core/wood/species/built-in.ts';
import type { EndUse } from '../../shared-core/wood/species/end-use.ts';
import { onlyNamed, type Species } from '../../shared-core/wood/species/species.ts';

// What an entry says whose own text the disk damaged, until a person saves it again.

/** What came with the program under that id; else a species of which nothing but its name is known. */
export const standInSpecies = (id: string, name: string): Species =>
  builtInSpecies.find((each) => each.id === id) ?? {
    id,
    name,
    group: name,
    ...onlyNamed,
  };

/** What came with the program under that id; else the target of the first of those. */
export const standInEndUse = (id: string, name: string): EndUse =>
  builtInEndUses.find((each) => each.id === id) ?? {
    ...(builtInEndUses[0] as EndUse),
    id,
    name,
    note: '',
    source: '',
  };

/** Air that is neither dry nor damp, with a margin that makes forecasts wide: common practice, no source. */
export const STAND_IN_AIR: MonthlyAir = Array.from({ length: 12 }, () => ({
  tempC: 15,
  rh: 0.65,
  emcSdPct: 3,
}));
/** Its own object, so that it is known by identity. No station has this air. */
export const STAND_IN_AIR_SOURCE: AirSource = { kind: 'region', stations: null };
