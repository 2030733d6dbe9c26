import { z } from 'zod';
import type { EndUse } from '../../wood/species/end-use.ts';
import { type Pins, pinsSchema } from './pins.ts';

/** Ways to wood that the pins do not reach from a face: a fresh crosscut, rip or split, long insulated pins. */
export const coreWaySchema = z.enum(['fresh-cut', 'fresh-rip', 'fresh-split', 'long-pins']);
export type CoreWay = z.infer<typeof coreWaySchema>;

/** What the spots of a board follow from besides its sizes. It stays as it is from the first reading of a round on. */
export const planBasisSchema = z.object({
  /** What the pins tell from the faces: shell and core in pairs, the average alone, or the shell alone. */
  faces: z.enum(['pairs', 'average', 'shell']),
  /** How a person chose to reach the core all the same; null where it stays unjudged, and for pairs. */
  core: coreWaySchema.nullable(),
  /** The pins it was made for; null where unknown. */
  pins: pinsSchema.nullable(),
});
export type PlanBasis = z.infer<typeof planBasisSchema>;

/** What every board was probed by before plans followed from the pins. */
export const PAIRS: PlanBasis = { faces: 'pairs', core: null, pins: null };

/**
 * How far pins of unknown length go in, mm: 5/16 in, as on most hand-held meters (common practice, no source), and as the
 * electrodes that the published resistances were measured with (W. L. James, FPL-GTR-6).
 */
export const ASSUMED_PIN_MM = 8;

/** Up to this thickness one depth tells the average of a board well enough, mm. Common practice, no source. */
const THIN_MM = 30;
/** At a fifth to a third of the thickness pins read about the average, as parts of it. Common practice, no source. */
export const AVERAGE_FROM = 1 / 5;
export const AVERAGE_TO = 1 / 3;
/**
 * The deeper end of a fifth to a quarter, the rule of the Dry Kiln Operator's Manual (USDA Agriculture Handbook 188, 1991;
 * from memory). A parabola has its average at 0.2113 of the thickness, (1 - 1/√3) / 2.
 */
export const AVERAGE_AT = 1 / 4;
/** Tips this deep, as a part of the thickness, are 99 % of the way from the face's value to the middle's by a parabola. */
export const MIDDLE_FROM = 0.45;

export const pinLengthMm = (pins: Pins | null): number => pins?.lengthMm ?? ASSUMED_PIN_MM;

/**
 * What pins can tell of a board from its faces.
 *
 * @param thicknessMm board thickness, mm, above 0
 * @param pins        of the meter in use; null where unknown
 */
export function usualBasis(thicknessMm: number, pins: Pins | null): PlanBasis {
  const lengthMm = pinLengthMm(pins);
  const isThin = thicknessMm <= THIN_MM;
  const faces =
    lengthMm >= MIDDLE_FROM * thicknessMm
      ? 'pairs'
      : isThin && lengthMm >= AVERAGE_FROM * thicknessMm
        ? 'average'
        : 'shell';
  return { faces, core: null, pins };
}

/** How the core of wood for that use is reached where nobody chose a way: firewood is split anyway. Common practice, no source. */
export const usualCoreWay = ({ cautions }: Pick<EndUse, 'cautions'>): CoreWay | null =>
  cautions.includes('firewood') ? 'fresh-split' : null;

/**
 * What a board is planned by now. A board that is read keeps what it was planned by; the pins in use, and choices of a way
 * to the core, are for those that are not.
 *
 * @param saved    what the file has for the board in this round; null for nothing
 * @param ofRound  the way to the core for all boards whose core the pins do not reach
 */
export function basisNow(
  { thicknessMm, isRead }: { thicknessMm: number; isRead: boolean },
  saved: PlanBasis | null,
  ofRound: CoreWay | null,
  pins: Pins | null,
): PlanBasis {
  if (isRead) return saved ?? PAIRS;
  const usual = usualBasis(thicknessMm, pins);
  if (usual.faces === 'pairs') return usual;
  return { ...usual, core: saved !== null ? saved.core : usual.faces === 'shell' ? ofRound : null };
}

/**
 * How deep pins are driven to read the average, mm: all the way in where that is a fifth to a third of the thickness,
 * because that depth needs no guess; else to a quarter.
 */
export function averageDepthMm(thicknessMm: number, pins: Pins | null): number {
  const lengthMm = pinLengthMm(pins);
  const isRight = lengthMm >= AVERAGE_FROM * thicknessMm && lengthMm <= AVERAGE_TO * thicknessMm;
  return isRight ? lengthMm : Math.min(AVERAGE_AT * thicknessMm, lengthMm);
}
