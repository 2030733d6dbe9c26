/** What the two faces of a board meet as it lies, and so how freely each dries. Face A is the upper one. */
import { z } from 'zod';
import { exposureFactor, type FaceExposure, type Faces } from './board-history.ts';

/** Which face was nearer the bark as the board lies, and whether bark is still on it. */
export const barkSideSchema = z.enum(['unknown', 'up', 'down', 'up-bark-on', 'down-bark-on']);
export type BarkSide = z.infer<typeof barkSideSchema>;

/** What is over the top course of a stack that stands outdoors. */
export const topCoverSchema = z.enum(['covered', 'sun']);
export type TopCover = z.infer<typeof topCoverSchema>;

/** What is near the outer faces of a board where it stands. */
export interface Exposure {
  /** Nothing but the sky is over its upper face. */
  isSunlit: boolean;
  /** It lies in the lowest course, over the ground. */
  isLowest: boolean;
}

/** The face that was nearer the bark; null where nobody said. */
export function barkFaceOf(side: BarkSide): 'a' | 'b' | null {
  if (side === 'unknown') return null;
  return side.startsWith('up') ? 'a' : 'b';
}

/** Whether that face still carries bark. */
export const hasBarkOn = (side: BarkSide): boolean => side.endsWith('bark-on');

/** How it lay before the bark was taken off. */
export const withBarkOn = (side: BarkSide): BarkSide =>
  side === 'up' ? 'up-bark-on' : side === 'down' ? 'down-bark-on' : side;

/** The face that the pins go in: the upper one, unless bark covers it. */
export const pinFaceOf = (side: BarkSide): 'a' | 'b' => (coveredFace(side) === 'a' ? 'b' : 'a');

const coveredFace = (side: BarkSide): 'a' | 'b' | null => (hasBarkOn(side) ? barkFaceOf(side) : null);

/** What the upper and the lower face meet; bark on a face outweighs what is over or under it. */
export function facesIn(side: BarkSide, { isSunlit, isLowest }: Exposure): Faces {
  const covered = coveredFace(side);
  const upper = isSunlit ? 'sun' : 'open';
  const lower = isLowest ? 'bottom' : 'open';
  return [covered === 'a' ? 'bark' : upper, covered === 'b' ? 'bark' : lower];
}

/** Part of what leaves an open face, as a whole percentage. */
const share = (exposure: FaceExposure): string => `${Math.round(exposureFactor[exposure] * 100)} %`;

/**
 * What `facesIn` takes for granted, as sentences with what they rest on.
 *
 * @param barkUntil  the day on which the bark that covered a face came off, in words; null where it is on, or never was
 * @param sunlitIn   names of the places in which the sun reaches or reached it
 * @param lowestIn   names of the places in which it lies or lay lowest, over the ground
 */
export function takenOfFaces(
  side: BarkSide,
  barkUntil: string | null,
  sunlitIn: readonly string[],
  lowestIn: readonly string[],
): string[] {
  const covered = coveredFace(side);
  const taken: string[] = [];
  if (sunlitIn.length > 0 && covered !== 'a') {
    taken.push(
      `It lies in the top course with nothing over it: in ${sunlitIn.join(' and ')} the sun is taken to dry its upper face at ${share('sun')} of the rate of an open one (common practice, no source). Rain that falls on it is not reckoned with.`,
    );
  }
  if (lowestIn.length > 0 && covered !== 'b') {
    taken.push(
      `It lies in course 1, the lowest: in ${lowestIn.join(' and ')} little air passes between it and the ground, so its lower face is taken to dry there at ${share('bottom')} of the rate of an open one (common practice, no source).`,
    );
  }
  const barked = barkUntil === null ? covered : barkFaceOf(side);
  if (barked !== null) {
    const [covers, other] = barked === 'a' ? ['upper', 'lower'] : ['lower', 'upper'];
    const [since, dried] =
      barkUntil === null
        ? [`Bark is on its ${covers} face`, 'all the time since its history begins']
        : [`Bark was on its ${covers} face until ${barkUntil}`, 'until then'];
    taken.push(
      `${since}: that face is taken to dry at ${share('bark')} of the rate of an open one (common practice, no source), ${dried}, and the pins to have gone into the ${other} face.`,
    );
  }
  return taken;
}
