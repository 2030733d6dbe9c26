/**
 * How a board cups while it dries, and what to do about it.
 *
 * Two things bend it: its rings, because wood shrinks more around them than across (`cupMm` of `shrinkage.ts`),
 * and one face drier than the other. The first stays; the second goes when the faces are alike again, as far as the
 * wood has not set.
 */
import { z } from 'zod';
import { type Message, message, messageSchema } from '../../words/message.ts';
import { FIBER_SATURATION_PCT } from '../moisture/fiber-saturation.ts';
import { shownPoints } from '../moisture/shown-points.ts';
import { acrossBoard, cupMm, RING_ANGLE_DEG, shrunkPct } from './shrinkage.ts';

/** Radius of the rings where it was not measured, mm: half way out in an average log. Common practice, no source. */
export const usualRingRadiusMm = 150;

export const warpInputSchema = z.object({
  thicknessMm: z.number().min(3).max(400),
  widthMm: z.number().min(10).max(3000),
  sawing: z.enum(['flat', 'rift', 'quarter']),
  /** From the pith to the middle of the board, mm; null where not known. */
  ringRadiusMm: z.number().min(5).max(3000).nullable(),
  /** The face that was nearer the bark, the upper one being A; null where not known. */
  barkFace: z.enum(['a', 'b']).nullable(),
  /** Whether bark is still on it. */
  isBarkOn: z.boolean(),
  radialPct: z.number().min(0.1).max(30),
  tangentialPct: z.number().min(0.1).max(30),
  /** MC through the thickness now, % MC, at even steps from face A to face B; three values or more. */
  profilePct: z.array(z.number().min(0).max(400)).min(3).max(1001),
  /** The same where pins read it: under either face, in the shell, and in the core, % MC. */
  atPins: z.object({ faceAPct: z.number(), faceBPct: z.number(), shellPct: z.number(), corePct: z.number() }),
  /** Average that it is to be dried to. */
  targetPct: z.number().min(0).max(30),
  /** Largest difference of core over shell that its use allows, % MC. */
  maxShellCorePct: z.number().min(0.5).max(100).nullable(),
});
export type WarpInput = z.infer<typeof warpInputSchema>;

export const warpAdviceSchema = z.object({
  about: z.enum(['bark', 'flip', 'weight', 'stickers', 'end-seal', 'uneven']),
  message: messageSchema,
});
export type WarpAdvice = z.infer<typeof warpAdviceSchema>;

/** Depth of the hollow over the width, mm; above 0 where face A, the upper one, is the hollow one. */
const cupSchema = z.object({
  /** From the rings; its sign is open, and assumed above 0, where the bark face is not known. */
  ringsMm: z.number(),
  /** From unlike faces. */
  facesMm: z.number(),
  totalMm: z.number(),
});

export const warpSchema = z.object({
  now: cupSchema,
  atTarget: cupSchema,
  advice: z.array(warpAdviceSchema),
});
export type Warp = z.infer<typeof warpSchema>;

/** Cup of the rings for a section that has dried evenly from green to a moisture content, mm; bark side hollow. */
function ringCupMm(input: WarpInput, mcPct: number): number {
  const radius = input.ringRadiusMm ?? usualRingRadiusMm;
  const angle = (RING_ANGLE_DEG[input.sawing] * Math.PI) / 180;
  // A quarter-sawn board lies in a plane through the pith; a millimeter beside it keeps the geometry defined.
  const position = {
    widthMm: input.widthMm,
    pithDistanceMm: Math.max(1, radius * Math.cos(angle)),
    offCenterMm: radius * Math.sin(angle),
  };
  return cupMm(position, input, FIBER_SATURATION_PCT, mcPct);
}

/**
 * Cup from the moisture difference of the two faces, mm, were the wood elastic and free: above 0 where face A is the
 * drier, which then is the hollow one. Wood gives and sets, so it is the most to expect.
 *
 * A free plate takes the straight line that best fits its strains through the thickness; its slope is the
 * curvature (12 / t³) times their first moment (S. P. Timoshenko and J. N. Goodier, Theory of Elasticity, on the
 * free plate heated unevenly through its thickness; from memory).
 *
 * @param profilePct    % MC at even steps from face A to face B, three values or more
 * @param acrossPct     shrinkage across the face, green to oven-dry, %
 */
export function faceCupMm(
  profilePct: readonly number[],
  thicknessMm: number,
  widthMm: number,
  acrossPct: number,
): number {
  if (profilePct.length < 3) throw new RangeError('A profile needs three values or more.');
  if (!(thicknessMm > 0 && widthMm > 0)) throw new RangeError('Thickness and width must be above 0 mm.');
  const steps = profilePct.length - 1;
  const strains = profilePct.map((mc) => -shrunkPct(acrossPct, mc) / 100);
  let moment = 0;
  for (let i = 0; i < steps; i++) {
    // Exact for strains that run straight between the values: u from -1/2 at face A to 1/2 at face B.
    const [u0, u1] = [i / steps - 0.5, (i + 1) / steps - 0.5];
    const [e0, e1] = [strains[i]!, strains[i + 1]!];
    moment += ((u1 - u0) / 6) * (2 * e0 * u0 + e0 * u1 + e1 * u0 + 2 * e1 * u1);
  }
  const curvature = (12 * moment) / thicknessMm;
  return (curvature * widthMm * widthMm) / 8;
}

/**
 * Cup now and at the target, and what to do about it.
 *
 * @throws RangeError for a size not above 0, a shrinkage that is none (`isShrinkage`), or fewer than three values of MC
 */
export function warpOf(input: WarpInput): Warp {
  const { profilePct, widthMm, thicknessMm } = input;
  const across = acrossBoard(input.radialPct, input.tangentialPct, RING_ANGLE_DEG[input.sawing]).width;
  const steps = profilePct.length - 1;
  const averagePct =
    profilePct.reduce((sum, mc, i) => sum + mc * (i === 0 || i === steps ? 0.5 : 1), 0) / steps;
  const sign = input.barkFace === 'b' ? -1 : 1;
  const cupOf = (ringsMm: number, facesMm: number): Warp['now'] => ({
    ringsMm,
    facesMm,
    // With the bark face not known the two may add: say the worse.
    totalMm:
      input.barkFace === null
        ? Math.sign(facesMm || ringsMm) * (Math.abs(ringsMm) + Math.abs(facesMm))
        : ringsMm + facesMm,
  });
  const now = cupOf(sign * ringCupMm(input, averagePct), faceCupMm(profilePct, thicknessMm, widthMm, across));
  const atTarget = cupOf(sign * ringCupMm(input, input.targetPct), 0);
  return { now, atTarget, advice: adviceFor(input, averagePct, now, atTarget) };
}

/** A cup that a planer must take off, over a width: one part in a hundred. Common practice, no source. */
const flatEnough = 0.01;
/** Faces that differ by more than this are worth turning a board for, % MC. Common practice, no source. */
const unlikeFacesPct = 3;

/** Below this the shell of a drying board has shrunk enough to strain against its core, % MC. Common practice, no source. */
const shrunkShellPct = 25;

const faceNames = { a: 'upper', b: 'lower' } as const;

/**
 * Common practice, no source, but for stickers and ends: Air Drying of Lumber (USDA Agriculture Handbook 402, 1971),
 * from memory, stickers every 16 to 24 inches; and for an uneven board: Dry Kiln Operator's Manual (USDA Agriculture
 * Handbook 188) on drying stresses, from memory.
 */
function adviceFor(
  input: WarpInput,
  averagePct: number,
  now: Warp['now'],
  atTarget: Warp['now'],
): WarpAdvice[] {
  const { atPins, widthMm, thicknessMm, barkFace } = input;
  const { faceAPct: faceA, faceBPct: faceB } = atPins;
  const advice: WarpAdvice[] = [];
  const advise = (about: WarpAdvice['about'], message: Message) => advice.push({ about, message });
  const [drier, wetter] = faceA < faceB ? (['a', 'b'] as const) : (['b', 'a'] as const);
  const areUnlike = Math.abs(faceA - faceB) > unlikeFacesPct && Math.min(faceA, faceB) < FIBER_SATURATION_PCT;
  const differencePoints = Math.abs(shownPoints(faceA, faceB));
  const underBark = input.isBarkOn ? barkFace : null;
  if (underBark !== null) {
    const face = faceNames[underBark];
    advise(
      'bark',
      areUnlike && wetter === underBark
        ? message('cup.bark-and-hollow', { face, differencePoints })
        : message('cup.bark', { face }),
    );
  }
  if (areUnlike && wetter !== underBark) {
    advise('flip', message('cup.flip', { drierFace: faceNames[drier], differencePoints }));
  }
  const worst = [now.totalMm, atTarget.totalMm].reduce((a, b) => (Math.abs(b) > Math.abs(a) ? b : a));
  const stillMoves = averagePct > input.targetPct + 1;
  if (Math.abs(worst) > flatEnough * widthMm && stillMoves) {
    const cupMm = Math.abs(worst);
    advise(
      'weight',
      barkFace === null
        ? message('cup.weight', { cupMm })
        : message('cup.weight-hollow', { cupMm, hollowFace: faceNames[worst > 0 ? 'a' : 'b'] }),
    );
    advise('stickers', message('cup.stickers', { spacingDistanceMm: thicknessMm < 30 ? 400 : 600 }));
  }
  if (averagePct > 25) advise('end-seal', message('cup.end-seal'));
  const { shellPct: shell, corePct: core } = atPins;
  // Above fiber saturation the shell has not begun to shrink, so it does not strain against the core.
  const { maxShellCorePct: allowed } = input;
  if (allowed !== null && core - shell > allowed && shell < shrunkShellPct) {
    advise(
      'uneven',
      message(core > FIBER_SATURATION_PCT ? 'cup.uneven-green' : 'cup.uneven', {
        differencePoints: shownPoints(core, shell),
      }),
    );
  }
  return advice;
}
