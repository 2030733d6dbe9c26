import { describe, expect, test } from 'vitest';
import { estimateBoard } from '../../../shared-core/probing/readings/estimate.ts';
import type { KnownOfBoard } from '../../../shared-core/probing/readings/profile-posterior.ts';
import type { Depth } from '../../../shared-core/probing/readings/reading.ts';
import { whyAverage } from '../../../shared-core/probing/readings/why-average.ts';
import { german } from '../../../shared-core/words/de/index.ts';
import { english } from '../../../shared-core/words/en/index.ts';
import type { Message } from '../../../shared-core/words/message.ts';
import { createWords } from '../../../shared-core/words/words.ts';
import { reading } from './a-board.ts';

const THICKNESS_MM = 27;
const display = { locale: 'en-US', timeZone: 'America/Chicago', units: 'metric', today: null } as const;
const inEnglish = createWords({ catalog: english, ...display });
const inGerman = createWords({ catalog: german, ...display, locale: 'de-DE' });
const said = (why: Message | undefined) => why && inEnglish.say(why);

/** What the board is estimated at whose pins read these values so deep. */
function estimated(depth: Depth, depthMm: number, values: number[], more: Partial<KnownOfBoard> = {}) {
  const counted = values.map((mcPct, index) => ({
    reading: reading(index + 1, depth, mcPct, {
      depthFrom: 'pins' as const,
      spot: { depth, depthMm, fromEndMm: 1000, face: 'face' as const },
    }),
    mcPct,
    standardUncertaintyPct: 0.5,
  }));
  const known = { emcPct: 11, placeKind: 'shop', isNewHere: null, history: null, ...more } as const;
  return estimateBoard(counted, { thicknessMm: THICKNESS_MM, ...known })!.estimate;
}

describe('why an average is at an end of what was read', () => {
  // Pins at a quarter of the thickness read more than the average of a drying board (Crank's parabola has it at 0.21).
  test('in a drying board whose faces were not read', () => {
    const estimate = estimated('average', THICKNESS_MM / 4, [15.7, 16, 15.4]);
    expect(estimate.averagePct).toBeCloseTo(15.4, 1);
    expect(said(estimate.whyAverage)).toBe(
      'The average is at the low end of the readings. The board is probably drier near its faces than where the pins read.',
    );
    expect(inGerman.say(estimate.whyAverage!)).toBe(
      'Der Mittelwert liegt am unteren Ende der Messwerte. Außen ist das Brett vermutlich trockener als dort, wo die Spitzen messen.',
    );
  });

  test('in a drying board of which the core alone was read', () => {
    const estimate = estimated('core', THICKNESS_MM / 2, [15.7, 16]);
    expect(estimate.averagePct).toBeLessThan(15.6);
    expect(said(estimate.whyAverage)).toBe(
      'The average is below the readings. The board is probably drier near its faces than where the pins read.',
    );
  });

  test('in a drying board of which short pins read the outside', () => {
    expect(said(estimated('average', 3.5, [15.7, 16, 15.4]).whyAverage)).toBe(
      'The average is at the high end of the readings. The board is probably wetter in its core than where the pins read.',
    );
  });

  test('in a board that takes up moisture, by its history', () => {
    const history = { differencePct: -4, differenceSdPct: 0.5 };
    expect(said(estimated('core', THICKNESS_MM / 2, [9.1, 9.3], { history }).whyAverage)).toBe(
      'The average is above the readings. The board is probably wetter near its faces than where the pins read.',
    );
    expect(said(estimated('average', 3.5, [9.1, 9.6, 9.3], { history }).whyAverage)).toBe(
      'The average is at the low end of the readings. The board is probably drier in its core than where the pins read.',
    );
  });

  test.each([
    ['of one value alone', estimated('average', THICKNESS_MM / 4, [15.7, 15.7, 15.7])],
    ['of a shell alone, which is estimated', estimated('shell', 2.5, [15.7, 16])],
    ['within what was read', estimated('average', 0.21 * THICKNESS_MM, [15, 16, 15.5])],
  ])('is left out %s', (_, { whyAverage }) => expect(whyAverage).toBeUndefined());

  test('names the end, the part and how that is, so that a language can say each', () => {
    const facts = { where: 'highest', part: 'core', how: 'wetter' };
    expect(whyAverage(16, [15.4, 15.7, 16], 3)).toEqual({ code: 'board.why-average', facts });
    expect(whyAverage(16, [15.4, 15.7, 16], -3)?.facts).toEqual({ ...facts, part: 'faces' });
  });

  test('is left out where it is as good as the mean of two', () => {
    expect(whyAverage(15.4, [15.4, 15.5], 3)).toBeNull();
    expect(whyAverage(15.3, [15.3, 15.7], 3)).not.toBeNull();
    // As they are shown, to a tenth.
    expect(whyAverage(15.34, [15.3, 15.9], 3)).not.toBeNull();
    expect(whyAverage(15.36, [15.3, 15.9], 3)).toBeNull();
  });
});
