import { describe, expect, test } from 'vitest';
import { type LabelInput, labelContent, labelContentSchema } from '../../../shared-core/labels/label.ts';

const board: LabelInput = {
  code: 'OAK-07',
  speciesName: 'Northern red oak',
  thicknessMm: 27,
  units: 'metric',
  latest: {
    averagePct: 12.36,
    shellPct: 11.2,
    corePct: 13.1,
    lowPct: 11.55,
    highPct: 13.17,
    dateText: '2026-03-12',
  },
  call: 'bring-in',
};
const latest = board.latest as NonNullable<LabelInput['latest']>;

describe('what a label says', () => {
  test('of a probed board: ID, wood, thickness, MC with its day and interval, shell and core, call', () => {
    const content = labelContent(board);
    expect(content).toEqual({
      boardId: 'OAK-07',
      qrPayload: 'OAK-07',
      speciesName: 'Northern red oak',
      thicknessText: '27 mm',
      mcText: '12.4 %',
      mcDateText: '2026-03-12',
      intervalText: 'likely 11.6–13.2 %',
      shellCoreText: 'shell 11.2 %, core 13.1 %',
      call: 'bring-in',
    });
    expect(labelContentSchema.parse(content)).toEqual(content);
  });

  test('of a board that no round has reached: not probed yet, and no call', () => {
    const content = labelContent({ ...board, latest: null, call: null });
    expect(content).toMatchObject({
      mcText: 'not probed yet',
      mcDateText: '',
      intervalText: '',
      shellCoreText: '',
      call: null,
    });
  });

  test('of a board whose readings were all refused: it was probed, and there is no sound reading', () => {
    const nothing = {
      ...latest,
      averagePct: null,
      shellPct: null,
      corePct: null,
      lowPct: null,
      highPct: null,
    };
    const content = labelContent({ ...board, latest: nothing, call: 'probe-again' });
    expect(content).toMatchObject({
      mcText: 'no sound reading',
      mcDateText: '2026-03-12',
      shellCoreText: '',
      call: 'probe-again',
    });
  });

  test('which depth was not probed', () => {
    expect(labelContent({ ...board, latest: { ...latest, corePct: null } }).shellCoreText).toBe(
      'shell 11.2 %, core not probed',
    );
    expect(labelContent({ ...board, latest: { ...latest, shellPct: null } }).shellCoreText).toBe(
      'shell not probed, core 13.1 %',
    );
  });

  // Wood Handbook, chapter 13: reliable from about 6 to 30 % MC, over 30 % only qualitative.
  test.each([
    [30.1, 'rough: over 30 %'],
    [30, 'likely 11.6–13.2 %'],
    [6, 'likely 11.6–13.2 %'],
    [5.9, 'rough: under 6 %'],
  ])('at %f %% MC, where pin meters are or are not reliable: %s', (averagePct, said) => {
    expect(labelContent({ ...board, latest: { ...latest, averagePct } }).intervalText).toBe(said);
  });
});

// 1 in = 25.4 mm exactly (international inch, 1959; from memory).
test.each([
  [25.4, '1 in'],
  [27, '1 1/16 in'],
  [31.75, '1 1/4 in'],
  [12.7, '1/2 in'],
  [54, '2 1/8 in'],
  [399.9, '15 3/4 in'],
  [25.3, '1 in'],
])('%f mm is %s to the nearest sixteenth', (thicknessMm, said) => {
  expect(labelContent({ ...board, thicknessMm, units: 'imperial' }).thicknessText).toBe(said);
});

test.each([Number.NaN, 0, -27, 2.9, 401])('a thickness of %f mm is refused', (thicknessMm) => {
  expect(() => labelContent({ ...board, thicknessMm })).toThrow(RangeError);
});

test.each([Number.NaN, Number.POSITIVE_INFINITY])('an MC of %f is never printed', (averagePct) => {
  expect(() => labelContent({ ...board, latest: { ...latest, averagePct } })).toThrow(RangeError);
});
