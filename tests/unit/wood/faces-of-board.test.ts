import { describe, expect, test } from 'vitest';
import {
  assumptionsOfFaces,
  type BarkSide,
  type Exposure,
  facesIn,
  pinFaceOf,
  withBarkOn,
} from '../../../shared-core/wood/drying/faces-of-board.ts';
import { message } from '../../../shared-core/words/message.ts';
import { expectWhole } from '../words/in-english.ts';

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
    const assumed = assumptionsOfFaces(
      barkSide,
      null,
      exposure.isSunlit ? ['Yard'] : [],
      exposure.isLowest ? ['Yard', 'Pole shed'] : [],
    );
    expect(assumed).toHaveLength(sentences);
    expectWhole(assumed);
  });

  test('what is assumed is said with its rate', () => {
    // Common practice, no source.
    expect(assumptionsOfFaces('unknown', null, ['Yard'], ['Yard', 'Lane'])).toEqual([
      message('forecast.assumed.sun', { placeNames: ['Yard'], rateSharePct: 160 }),
      message('forecast.assumed.lowest', { placeNames: ['Yard', 'Lane'], rateSharePct: 50 }),
    ]);
    expect(assumptionsOfFaces('up-bark-on', null, [], [])).toEqual([
      message('forecast.assumed.bark-on', { face: 'upper', rateSharePct: expect.closeTo(3, 9) }),
    ]);
  });

  test.each<[BarkSide, BarkSide, string]>([
    ['up', 'up-bark-on', 'upper'],
    ['down', 'down-bark-on', 'lower'],
  ])('bark side %s was %s until the bark came off, and that is said', (side, before, face) => {
    expect(withBarkOn(side)).toBe(before);
    const assumed = assumptionsOfFaces(side, '2026-05-03', [], []);
    expect(assumed).toEqual([
      message('forecast.assumed.bark-until', {
        face,
        barkOffOn: '2026-05-03',
        rateSharePct: expect.closeTo(3, 9),
      }),
    ]);
    expectWhole(assumed);
  });
});
