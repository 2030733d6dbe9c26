import type { Board } from '../../../shared-core/contract/yard.ts';
import {
  acrossBoard,
  RING_ANGLE_DEG,
  type Sawing,
  sizeChangeByCoefficientMm,
  sizeChangeMm,
} from '../../../shared-core/wood/movement/shrinkage.ts';
import type { Species } from '../../../shared-core/wood/species/species.ts';

/** How one size of a board changes between two moisture contents, mm. */
export interface SizeChange {
  side: 'width' | 'thickness';
  sawing: Sawing;
  sizeMm: number;
  /** By the shrinkage from green to oven-dry; null where that is not known. */
  byShrinkageMm: number | null;
  /** By the change coefficients; null where they are not known or do not hold. */
  byCoefficientMm: number | null;
}

/** The change coefficients hold between these, % MC (Wood Handbook, chapter 13). */
const COEFFICIENT_PCT = { min: 6, max: 14 } as const;

const inCoefficientRange = (mcPct: number) => mcPct >= COEFFICIENT_PCT.min && mcPct <= COEFFICIENT_PCT.max;

/**
 * How a board's width (where known) and thickness change from one moisture content to another, by both published
 * routes. A board whose sawing is not known gets both extremes: flat-sawn and quarter-sawn.
 */
export function sizeChanges(
  board: Pick<Board, 'thicknessMm' | 'widthMm' | 'sawing'>,
  species: Pick<Species, 'radialPct' | 'tangentialPct' | 'changeCoefficient'>,
  fromPct: number,
  toPct: number,
): SizeChange[] {
  const sawings: Sawing[] = board.sawing === 'unknown' ? ['flat', 'quarter'] : [board.sawing];
  const sides: [SizeChange['side'], number | null][] = [
    ['width', board.widthMm],
    ['thickness', board.thicknessMm],
  ];
  const { radialPct, tangentialPct, changeCoefficient } = species;
  const coefficientsHold = inCoefficientRange(fromPct) && inCoefficientRange(toPct);
  return sides.flatMap(([side, sizeMm]) =>
    sizeMm === null
      ? []
      : sawings.map((sawing): SizeChange => {
          const angle = RING_ANGLE_DEG[sawing];
          return {
            side,
            sawing,
            sizeMm,
            byShrinkageMm:
              radialPct === null || tangentialPct === null
                ? null
                : sizeChangeMm(sizeMm, fromPct, toPct, acrossBoard(radialPct, tangentialPct, angle)[side]),
            byCoefficientMm:
              changeCoefficient === null || !coefficientsHold
                ? null
                : sizeChangeByCoefficientMm(
                    sizeMm,
                    fromPct,
                    toPct,
                    acrossBoard(changeCoefficient.radial, changeCoefficient.tangential, angle)[side],
                  ),
          };
        }),
  );
}

/** Why a route is empty, as sentences. */
export function missingForChanges(
  board: Pick<Board, 'widthMm' | 'sawing'>,
  species: Pick<Species, 'name' | 'radialPct' | 'tangentialPct' | 'changeCoefficient'>,
  fromPct: number,
  toPct: number,
): string[] {
  const sentences: string[] = [];
  if (board.widthMm === null) sentences.push('Its width is not known: only the thickness is foreseen.');
  if (board.sawing === 'unknown') {
    sentences.push('Its sawing is not known: flat-sawn and quarter-sawn are the two extremes.');
  }
  if (species.radialPct === null || species.tangentialPct === null) {
    sentences.push(`The shrinkage of ${species.name} is not known both ways.`);
  }
  if (species.changeCoefficient === null) {
    sentences.push(`No change coefficients are published for ${species.name}.`);
  } else if (!inCoefficientRange(fromPct) || !inCoefficientRange(toPct)) {
    sentences.push(
      `Change coefficients hold from ${COEFFICIENT_PCT.min} to ${COEFFICIENT_PCT.max} % MC only, so that route is left out.`,
    );
  }
  return sentences;
}
