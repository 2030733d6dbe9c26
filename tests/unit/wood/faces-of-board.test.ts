import { describe, expect, test } from 'vitest';
import { type BarkSide, facesIn, pinFaceOf, takenOfFaces } from '../../../shared-core/wood/faces-of-board.ts';

// How much less a covered face dries is common practice, no source; here is what follows from it.
describe('the faces of a board', () => {
  test.each<[BarkSide, string | null, [string, string], 'a' | 'b', number]>([
    ['unknown', null, ['open', 'open'], 'a', 0],
    ['up', null, ['open', 'open'], 'a', 0],
    ['down', 'Yard', ['open', 'bottom'], 'a', 1],
    ['up-bark-on', null, ['bark', 'open'], 'b', 1],
    ['up-bark-on', 'Yard', ['bark', 'bottom'], 'b', 2],
    // Bark keeps in more than still air over the ground does.
    ['down-bark-on', 'Yard', ['open', 'bark'], 'a', 1],
  ])('bark side %s, lowest outside: %s', (barkSide, lowestOutside, faces, pinFace, sentences) => {
    const places = lowestOutside === null ? [] : [lowestOutside];
    expect(facesIn(barkSide, lowestOutside !== null)).toEqual(faces);
    expect(pinFaceOf(barkSide)).toBe(pinFace);
    const taken = takenOfFaces(barkSide, places);
    expect(taken).toHaveLength(sentences);
    for (const sentence of taken) expect(sentence).toMatch(/common practice, no source/);
  });
});
