import { describe, expect, test } from 'vitest';
import {
  type BarkSide,
  type Exposure,
  facesIn,
  pinFaceOf,
  takenOfFaces,
  withBarkOn,
} from '../../../shared-core/wood/drying/faces-of-board.ts';

const between: Exposure = { isSunlit: false, isLowest: false };
const lowest: Exposure = { isSunlit: false, isLowest: true };
const sunlit: Exposure = { isSunlit: true, isLowest: false };
const alone: Exposure = { isSunlit: true, isLowest: true };

// How much sooner or later a face dries is common practice, no source; here is what follows from it.
describe('the faces of a board', () => {
  test.each<[BarkSide, Exposure, [string, string], 'a' | 'b', number]>([
    ['unknown', between, ['open', 'open'], 'a', 0],
    ['up', between, ['open', 'open'], 'a', 0],
    ['down', lowest, ['open', 'bottom'], 'a', 1],
    ['up', sunlit, ['sun', 'open'], 'a', 1],
    ['unknown', alone, ['sun', 'bottom'], 'a', 2],
    ['up-bark-on', between, ['bark', 'open'], 'b', 1],
    ['up-bark-on', lowest, ['bark', 'bottom'], 'b', 2],
    // Bark keeps in more than still air over the ground does, and more than sun draws out.
    ['down-bark-on', lowest, ['open', 'bark'], 'a', 1],
    ['up-bark-on', sunlit, ['bark', 'open'], 'b', 1],
    ['down-bark-on', alone, ['sun', 'bark'], 'a', 2],
  ])('bark side %s, lying %o', (barkSide, exposure, faces, pinFace, sentences) => {
    expect(facesIn(barkSide, exposure)).toEqual(faces);
    expect(pinFaceOf(barkSide)).toBe(pinFace);
    const taken = takenOfFaces(
      barkSide,
      null,
      exposure.isSunlit ? ['Yard'] : [],
      exposure.isLowest ? ['Yard'] : [],
    );
    expect(taken).toHaveLength(sentences);
    for (const sentence of taken) expect(sentence).toMatch(/common practice, no source/);
  });

  test.each<[BarkSide, BarkSide, string]>([
    ['up', 'up-bark-on', 'upper'],
    ['down', 'down-bark-on', 'lower'],
  ])('bark side %s was %s until the bark came off, and that is said', (side, before, face) => {
    expect(withBarkOn(side)).toBe(before);
    const [sentence, ...more] = takenOfFaces(side, '3 May 2026', [], []);
    expect(sentence).toMatch(`Bark was on its ${face} face until 3 May 2026: `);
    expect(sentence).toMatch('common practice, no source), until then');
    expect(more).toEqual([]);
  });
});
