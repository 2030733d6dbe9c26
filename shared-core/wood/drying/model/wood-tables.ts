import { surfaceHumidity, temperatureRise, USUAL_C } from '../diffusivity.ts';
import { ANCHOR_MC_PCT, type DryingLaw, woodDryingLaw } from './drying-law.ts';
import { diffusivitiesOf, integralOf, type LawTable, potentialOf, type Tables } from './law-tables.ts';
import type { McTable } from './mc-table.ts';

/** Of wood, whose surface potential is the same for every density: kept for all boards of a run of the program. */
const woodPotentials = new Map<number, McTable>();
/** More temperatures than a year has, to half a degree. */
const MOST_POTENTIALS = 400;

function woodPotentialOf(tempC: number): McTable {
  let potential = woodPotentials.get(tempC);
  if (potential === undefined) {
    if (woodPotentials.size === MOST_POTENTIALS) woodPotentials.clear();
    potential = potentialOf({ surfacePotential: surfaceHumidity }, tempC);
    woodPotentials.set(tempC, potential);
  }
  return potential;
}

/** Exponents that are tabulated; between two of them the mean of their tables is off by 3 % at most (`drying-model.test.ts`). */
const exponentStep = 0.4;
/** Beyond this the exponent counts as this; a fit to odd readings may try more. */
const [leastExponent, mostExponent] = [-0.8, 2];

/**
 * Tables of one wood for any exponent of its law; share them between runs. Temperature raises its diffusivity at every moisture
 * content alike, so one integral does for all.
 */
export class WoodTables {
  private readonly law: DryingLaw;
  private readonly diffusivities: Float64Array;
  private readonly byStep = new Map<number, McTable>();
  private readonly byTemp = new Map<number, Omit<LawTable, 'integral'>>();
  /** A board is run with the same exponent through its past and at each place. */
  private readonly byExponent = new Map<number, Tables>();

  constructor(basicSpecificGravity: number) {
    this.law = woodDryingLaw(basicSpecificGravity);
    this.diffusivities = diffusivitiesOf(this.law, USUAL_C);
  }

  /** @param exponent  as `woodDryingLaw` takes it; finite */
  with(exponent: number): Tables {
    if (!Number.isFinite(exponent)) throw new RangeError(`The exponent of a law cannot be ${exponent}.`);
    const before = this.byExponent.get(exponent);
    if (before !== undefined) return before;
    const steps = Math.min(mostExponent, Math.max(leastExponent, exponent)) / exponentStep;
    const below = Math.floor(steps);
    const integral = this.mixed(below, steps - below);
    const known = new Map<number, LawTable>();
    const tables: Tables = {
      at: (tempC) => {
        let table = known.get(tempC);
        if (table === undefined) {
          table = { ...this.sharedAt(tempC), integral };
          known.set(tempC, table);
        }
        return table;
      },
    };
    this.byExponent.set(exponent, tables);
    return tables;
  }

  private mixed(below: number, share: number): McTable {
    const integral = this.integralAt(below);
    if (share === 0) return integral;
    const next = this.integralAt(below + 1);
    const mixed = new Float64Array(integral.length);
    for (let i = 0; i < mixed.length; i++) mixed[i] = integral[i]! + share * (next[i]! - integral[i]!);
    return mixed;
  }

  private sharedAt(tempC: number): Omit<LawTable, 'integral'> {
    let shared = this.byTemp.get(tempC);
    if (shared === undefined) {
      const emission = this.law.emission(tempC);
      shared = { emission, potential: woodPotentialOf(tempC), rise: temperatureRise(tempC) };
      this.byTemp.set(tempC, shared);
    }
    return shared;
  }

  private integralAt(step: number): McTable {
    let integral = this.byStep.get(step);
    if (integral === undefined) {
      const anchor = this.law.diffusivityM2S(ANCHOR_MC_PCT, USUAL_C);
      integral = integralOf(this.diffusivities.map((d) => anchor * (d / anchor) ** (step * exponentStep)));
      this.byStep.set(step, integral);
    }
    return integral;
  }
}
