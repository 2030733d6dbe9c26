import { type Message, message } from '../../words/message.ts';
import type { Species } from '../species/species.ts';
import {
  acrossBoard,
  isShrinkage,
  RING_ANGLE_DEG,
  type Sawing,
  sizeChangeByCoefficientMm,
  sizeChangeMm,
} from './shrinkage.ts';

/** What a board's change of size follows from. */
interface Board {
  thicknessMm: number;
  widthMm: number | null;
  sawing: Sawing | 'unknown';
}

/** How one size of a board changes between two moisture contents, mm. */
export interface SizeChange {
  side: 'width' | 'thickness';
  sawing: Sawing;
  sizeMm: number;
  /** By the shrinkage from green to oven-dry, and by the change coefficients; null where those are not known or do not hold. */
  byRouteMm: { shrinkage: number | null; coefficient: number | null };
}

/** The change coefficients hold between these, % MC (Wood Handbook, chapter 13). */
const COEFFICIENT_RANGE = { minPct: 6, maxPct: 14 } as const;

const inCoefficientRange = (mcPct: number) =>
  mcPct >= COEFFICIENT_RANGE.minPct && mcPct <= COEFFICIENT_RANGE.maxPct;

/**
 * How a board's width (where known) and thickness change from one moisture content to another, by both published
 * routes. A board whose sawing is not known gets both extremes: flat-sawn and quarter-sawn.
 */
export function sizeChanges(
  board: Board,
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
            byRouteMm: {
              shrinkage:
                isShrinkage(radialPct) && isShrinkage(tangentialPct)
                  ? sizeChangeMm(sizeMm, fromPct, toPct, acrossBoard(radialPct, tangentialPct, angle)[side])
                  : null,
              coefficient:
                changeCoefficient === null || !coefficientsHold
                  ? null
                  : sizeChangeByCoefficientMm(
                      sizeMm,
                      fromPct,
                      toPct,
                      acrossBoard(changeCoefficient.radial, changeCoefficient.tangential, angle)[side],
                    ),
            },
          };
        }),
  );
}

/** Why a route is empty. */
export function missingForChanges(
  board: Omit<Board, 'thicknessMm'>,
  species: Pick<Species, 'name' | 'radialPct' | 'tangentialPct' | 'changeCoefficient'>,
  fromPct: number,
  toPct: number,
): Message[] {
  const { name: speciesName, radialPct, tangentialPct, changeCoefficient } = species;
  const missing: Message[] = [];
  if (board.widthMm === null) missing.push(message('movement.width-missing'));
  if (board.sawing === 'unknown') missing.push(message('movement.sawing-missing'));
  if (radialPct === null || tangentialPct === null) {
    missing.push(message('movement.shrinkage-missing', { speciesName }));
  }
  if (changeCoefficient === null) {
    const byShrinkage = radialPct !== null && tangentialPct !== null;
    missing.push(
      message(byShrinkage ? 'movement.by-shrinkage-alone' : 'movement.coefficients-missing', { speciesName }),
    );
  } else if (!inCoefficientRange(fromPct) || !inCoefficientRange(toPct)) {
    missing.push(message('movement.coefficients-outside', { validRange: COEFFICIENT_RANGE }));
  }
  return missing;
}
