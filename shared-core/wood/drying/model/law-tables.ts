import type { DryingLaw } from './drying-law.ts';
import { hermitePieces, type McTable, nodesPct } from './mc-table.ts';

/** A law at one temperature, as a run looks it up. */
export type LawTable = {
  /** Rate off a freely exposed face, % MC · m/s per unit of potential. */
  emission: number;
  /** Diffusivity over the one that was integrated. */
  rise: number;
  /** Of the diffusivity from 0 % MC (Kirchhoff), m²/s · % MC. */
  integral: McTable;
  /** What drives moisture off a face, as the law has it. */
  potential: McTable;
};

/** What a run looks its law up in. */
export interface Tables {
  at(tempC: number): LawTable;
}

/** Diffusivity at the nodes, m²/s, and after each but the last halfway to the next. */
export function diffusivitiesOf(law: DryingLaw, tempC: number): Float64Array {
  return Float64Array.from({ length: 2 * nodesPct.length - 1 }, (_, j) => {
    const [below, above] = [nodesPct[j >> 1]!, nodesPct[(j + 1) >> 1]!];
    return law.diffusivityM2S((below + above) / 2, tempC);
  });
}

/** The integral of a diffusivity given there, by Simpson's rule. */
export function integralOf(diffusivities: Float64Array): McTable {
  const atNodes = diffusivities.filter((_, j) => j % 2 === 0);
  const integral = new Float64Array(nodesPct.length);
  for (let j = 1; j < nodesPct.length; j++) {
    const middle = diffusivities[2 * j - 1]!;
    const width = nodesPct[j]! - nodesPct[j - 1]!;
    integral[j] = integral[j - 1]! + (width / 6) * (atNodes[j - 1]! + 4 * middle + atNodes[j]!);
  }
  return hermitePieces(integral, atNodes);
}

/** Of a law's surface potential; its slopes by differences. */
export function potentialOf(
  { surfacePotential }: Pick<DryingLaw, 'surfacePotential'>,
  tempC: number,
): McTable {
  const potential = Float64Array.from(nodesPct, (mc) => surfacePotential(mc, tempC));
  const small = 1e-3;
  const slopes = Float64Array.from(
    nodesPct,
    (mc) =>
      (surfacePotential(mc + small, tempC) - surfacePotential(Math.max(0, mc - small), tempC)) /
      (small + Math.min(mc, small)),
  );
  return hermitePieces(potential, slopes);
}

/** Keeps one table a temperature; share it between runs of the same species, whatever their factors. */
export class LawTables implements Tables {
  private readonly law: DryingLaw;
  private readonly byTemp = new Map<number, LawTable>();

  constructor(law: DryingLaw) {
    this.law = law;
  }

  at(tempC: number): LawTable {
    let table = this.byTemp.get(tempC);
    if (table === undefined) {
      table = {
        emission: this.law.emission(tempC),
        potential: potentialOf(this.law, tempC),
        integral: integralOf(diffusivitiesOf(this.law, tempC)),
        rise: 1,
      };
      this.byTemp.set(tempC, table);
    }
    return table;
  }
}
