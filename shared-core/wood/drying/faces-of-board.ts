/** What the two faces of a board meet as it lies, and so how freely each dries. Face A is the upper one. */
import { z } from 'zod';
import { type Message, message } from '../../words/message.ts';
import { exposureFactor, type FaceExposure, type Faces } from './board-history.ts';

/** Which face was nearer the bark as the board lies, and whether bark is still on it. */
export const barkSideSchema = z.enum(['unknown', 'up', 'down', 'up-bark-on', 'down-bark-on']);
export type BarkSide = z.infer<typeof barkSideSchema>;

/** What is over the top layer of a stack outdoors. */
export const topCoverSchema = z.enum(['covered', 'sun']);

/** What is near the outer faces of a board where it is. */
export interface Exposure {
  /** Nothing but the sky is over its upper face. */
  isSunlit: boolean;
  /** It lies in the lowest layer, over the ground. */
  isLowest: boolean;
}

/** The face that was nearer the bark; null where not given. */
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

/** What leaves a face, as a percentage of what leaves an open one. */
const rateOf = (exposure: FaceExposure): number => 100 * exposureFactor[exposure];

/**
 * What `facesIn` assumes, as sentences.
 *
 * @param barkOffOn  the day on which the bark that covered a face came off; null where it is on, or never was
 * @param sunlitIn   names of the places in which the sun reaches or reached it
 * @param lowestIn   names of the places in which it lies or lay lowest, over the ground
 */
export function assumptionsOfFaces(
  side: BarkSide,
  barkOffOn: string | null,
  sunlitIn: readonly string[],
  lowestIn: readonly string[],
): Message[] {
  const covered = coveredFace(side);
  const assumed: Message[] = [];
  if (sunlitIn.length > 0 && covered !== 'a') {
    assumed.push(message('forecast.assumed.sun', { placeNames: sunlitIn, rateSharePct: rateOf('sun') }));
  }
  if (lowestIn.length > 0 && covered !== 'b') {
    assumed.push(
      message('forecast.assumed.lowest', { placeNames: lowestIn, rateSharePct: rateOf('bottom') }),
    );
  }
  const barked = barkOffOn === null ? covered : barkFaceOf(side);
  if (barked !== null) {
    const facts = { face: barked === 'a' ? 'upper' : 'lower', rateSharePct: rateOf('bark') };
    assumed.push(
      barkOffOn === null
        ? message('forecast.assumed.bark-on', facts)
        : message('forecast.assumed.bark-until', { ...facts, barkOffOn }),
    );
  }
  return assumed;
}
