/** What the two faces of a board meet as it lies, and so how freely each dries. Face A is the upper one. */
import { z } from 'zod';
import { exposureFactor, type FaceExposure, type Faces } from './board-history.ts';

/** Which face was nearer the bark as the board lies, and whether bark is still on it. */
export const barkSideSchema = z.enum(['unknown', 'up', 'down', 'up-bark-on', 'down-bark-on']);
export type BarkSide = z.infer<typeof barkSideSchema>;

/** The face that was nearer the bark; null where nobody said. */
export function barkFaceOf(side: BarkSide): 'a' | 'b' | null {
  if (side === 'unknown') return null;
  return side.startsWith('up') ? 'a' : 'b';
}

/** Whether that face still carries bark. */
export const hasBarkOn = (side: BarkSide): boolean => side.endsWith('bark-on');

/** The face that the pins go in: the upper one, unless bark covers it. */
export const pinFaceOf = (side: BarkSide): 'a' | 'b' => (coveredFace(side) === 'a' ? 'b' : 'a');

const coveredFace = (side: BarkSide): 'a' | 'b' | null => (hasBarkOn(side) ? barkFaceOf(side) : null);

/**
 * @param isLowestOutside   whether it lies in the lowest course there, outdoors or in an open shed
 */
export function facesIn(side: BarkSide, isLowestOutside: boolean): Faces {
  const covered = coveredFace(side);
  const lower = isLowestOutside ? 'bottom' : 'open';
  return [covered === 'a' ? 'bark' : 'open', covered === 'b' ? 'bark' : lower];
}

/** Part of what leaves an open face, as a whole percentage. */
const share = (exposure: FaceExposure): string => `${Math.round(exposureFactor[exposure] * 100)} %`;

/**
 * What `facesIn` takes for granted, as sentences with what they rest on.
 *
 * @param lowestOutside   names of the places in which it lies or lay lowest, outdoors or in an open shed
 */
export function takenOfFaces(side: BarkSide, lowestOutside: readonly string[]): string[] {
  const covered = coveredFace(side);
  const taken: string[] = [];
  if (lowestOutside.length > 0 && covered !== 'b') {
    taken.push(
      `It lies in course 1, the lowest: in ${lowestOutside.join(' and ')} little air passes between it and the ground, so its lower face is taken to dry there at ${share('bottom')} of the rate of an open one (common practice, no source).`,
    );
  }
  if (covered !== null) {
    const [covers, other] = covered === 'a' ? ['upper', 'lower'] : ['lower', 'upper'];
    taken.push(
      `Bark is on its ${covers} face: that face is taken to dry at ${share('bark')} of the rate of an open one (common practice, no source), all the time since its history begins, and the pins to have gone into the ${other} face.`,
    );
  }
  return taken;
}
