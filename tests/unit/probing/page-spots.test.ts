import { describe, expect, test } from 'vitest';
import { pageSpots } from '../../../shared-core/probing/readings/page-spots.ts';
import { EXTRA_SPOTS, planSpots } from '../../../shared-core/probing/readings/spots.ts';

const long = { lengthMm: 2400 };
const short = { lengthMm: 8, insulated: false };
const numbers = (made: ReturnType<typeof pageSpots>) => made.spots.map(({ spotIndex }) => spotIndex);
const depths = (made: ReturnType<typeof pageSpots>) => made.spots.map(({ planned }) => planned.spot.depth);

describe('the columns of a page', () => {
  test('follow the plan of the board, and go on elsewhere', () => {
    const made = pageSpots({ ...long, thicknessMm: 52 }, short, ['pins', 'pins', 'pins']);
    expect(made.planBasis).toEqual({ faces: 'shell', core: null, pins: short });
    expect(numbers(made)).toEqual([0, 1, EXTRA_SPOTS.shell]);
  });

  test('pairs go on with the depth that would come next', () => {
    const made = pageSpots({ ...long, thicknessMm: 16 }, null, Array(6).fill('unknown'));
    expect(depths(made)).toEqual(['shell', 'core', 'shell', 'core', 'shell', 'core']);
    expect(numbers(made)).toEqual([0, 1, 2, 3, EXTRA_SPOTS.shell, EXTRA_SPOTS.core]);
  });

  test('of a given depth are at the spots that tell that depth', () => {
    const board = { ...long, thicknessMm: 52 };
    const made = pageSpots(board, short, [26, 5, 25, 5]);
    expect(made.planBasis).toEqual({ faces: 'shell', core: 'long-pins', pins: short });
    expect(depths(made)).toEqual(['core', 'shell', 'core', 'shell']);
    const { plan } = planSpots({ ...board, planBasis: made.planBasis });
    for (const { spotIndex, planned } of made.spots) expect(planned).toMatchObject(plan[spotIndex]!);
    expect(new Set(numbers(made)).size).toBe(4);
  });

  test.each([16, 25.4, 32, 52])(
    'that name a depth are at spots of that depth in a board of %d mm',
    (thicknessMm) => {
      const board = { ...long, thicknessMm };
      for (const pins of [null, short]) {
        for (const named of [['shell', 'core'], ['shell'], ['core'], ['average', 'average']] as const) {
          const made = pageSpots(board, pins, named);
          expect(depths(made)).toEqual(named);
          const { plan } = planSpots({ ...board, planBasis: made.planBasis });
          for (const { spotIndex, planned } of made.spots) expect(planned).toMatchObject(plan[spotIndex]!);
        }
      }
    },
  );

  test('name no place along the board, and no depth where it is unknown', () => {
    const board = { ...long, thicknessMm: 52 };
    const [known, unknown] = pageSpots(board, short, [5, 'unknown']).spots.map(({ planned }) => planned.spot);
    expect(known).toMatchObject({ depth: 'shell', isAlongUnknown: true });
    expect(known!.depthMm).not.toBeNull();
    expect(unknown).toMatchObject({ depthMm: null, isAlongUnknown: true });
  });

  test('of a given depth count from the nearer face', () => {
    expect(depths(pageSpots({ ...long, thicknessMm: 52 }, short, [26, 44]))).toEqual(['core', 'shell']);
  });

  test('a blank takes no other column’s spot', () => {
    const board = { ...long, thicknessMm: 27 };
    const pins = { lengthMm: 7, insulated: null };
    expect(numbers(pageSpots(board, pins, ['pins', 'pins', 'pins']))).toEqual([0, 1, 2]);
    expect(depths(pageSpots(board, pins, ['pins']))).toEqual(['average']);
  });

  test('pins through a thin board are in no core', () => {
    const made = pageSpots({ ...long, thicknessMm: 20 }, { lengthMm: 6, insulated: true }, [19]);
    expect(made.planBasis.core).toBeNull();
  });
});
