/** What the two faces of a board meet as it lies, and so how freely each dries. Face A is the upper one. */
import { z } from 'zod';
import { exposureFactor, type FaceExposure } from './board-history.ts';

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

export interface FacesOfBoard {
  faces: [FaceExposure, FaceExposure];
  /** The face that the pins go in: the upper one, unless bark covers it. */
  pinFace: 'a' | 'b';
  /** What was taken for granted, as sentences with what they rest on. */
  takenForGranted: string[];
}

/** Part of what leaves an open face, as a whole percentage. */
const share = (exposure: FaceExposure): string => `${Math.round(exposureFactor[exposure] * 100)} %`;

/**
 * @param lowestOutside   where the board lies in the lowest course outdoors or in an open shed: that place's name
 */
export function facesOfBoard(barkSide: BarkSide, lowestOutside: string | null): FacesOfBoard {
  const bark = hasBarkOn(barkSide) ? barkFaceOf(barkSide) : null;
  const takenForGranted: string[] = [];
  if (lowestOutside !== null && bark !== 'b') {
    takenForGranted.push(
      `It lies in course 1, the lowest, in ${lowestOutside}: little air passes between it and the ground, so its lower face is taken to dry at ${share('bottom')} of the rate of an open one (common practice, no source).`,
    );
  }
  if (bark !== null) {
    const [covered, other] = bark === 'a' ? ['upper', 'lower'] : ['lower', 'upper'];
    takenForGranted.push(
      `Bark is on its ${covered} face: that face is taken to dry at ${share('bark')} of the rate of an open one (common practice, no source), all the time since its history begins, and the pins to have gone into the ${other} face.`,
    );
  }
  const lower = lowestOutside === null ? 'open' : 'bottom';
  return {
    faces: [bark === 'a' ? 'bark' : 'open', bark === 'b' ? 'bark' : lower],
    pinFace: bark === 'a' ? 'b' : 'a',
    takenForGranted,
  };
}
