import { describe, expect, test } from 'vitest';
import { judgeBoard } from '../../../shared-core/probing/calls/call.ts';
import type { Spot } from '../../../shared-core/probing/readings/reading.ts';
import { meantBy } from '../../../shared-core/probing/readings/typing-slip.ts';
import { isBeyondScales } from '../../../shared-core/probing/suspicions/reading-suspicions.ts';
import { isReadFrozen } from '../../../shared-core/probing/suspicions/suspicion.ts';
import { message } from '../../../shared-core/words/message.ts';
import { inEnglish } from '../words/in-english.ts';
import {
  averages,
  evidence,
  lastRound,
  lastRoundByAverage,
  reading,
  readings,
  rules,
  SCALE,
  TAKEN_AT,
} from './a-board.ts';

const judge = (...args: Parameters<typeof evidence>) => judgeBoard(evidence(...args)).readings;
const spot = (more: Partial<Spot>): { spot: Spot } => ({
  spot: { depth: 'shell', depthMm: null, fromEndMm: 1000, face: 'face', ...more },
});

/** What speaks against one reading among sound ones. */
const suspicionsOf = (odd: ReturnType<typeof reading>, more: Parameters<typeof evidence>[1] = {}) =>
  judge([odd, ...readings([8.1, 8.2], [8.6, 8.7]).map((each) => ({ ...each, id: each.id + 100 }))], more)[0]!
    .suspicions;

test('nothing speaks against sound readings', () => {
  expect(rules(judge(readings([8.1, 8.4], [8.6, 8.9])))).toEqual([[], [], [], []]);
});

describe('a reading by itself', () => {
  test('not a moisture content: refused, and left out of the average', () => {
    const judged = judge([
      reading(9, 'shell', -4, { how: 'settled', settled: true }),
      ...readings([8, 8], [8, 8]),
    ]);
    expect(judged[0]!.suspicions[0]).toMatchObject({ rule: 'not-a-reading', severity: 'refused' });
    expect(judged.map((each) => each.counts)).toEqual([false, true, true, true, true]);
    // Only a slip explains whatever else is odd.
    expect(rules(judged)[0]).toContain('outside-meter-range');
  });

  test('below freezing, bound water only: a note, and it is used (bound water does not freeze)', () => {
    const judged = judge(readings([8, 8.1], [8.2, 8.3], { woodTempC: -3 }));
    expect(judged.map((each) => each.counts)).toEqual([true, true, true, true]);
    expect(judged[0]!.suspicions).toMatchObject([
      {
        rule: 'below-freezing',
        severity: 'note',
        why: message('suspicion.below-freezing', { woodTempC: -3 }),
      },
    ]);
  });

  test('below freezing above 22 %: refused, since ice hardly conducts (common practice, no source)', () => {
    expect(suspicionsOf(reading(1, 'shell', 22, { woodTempC: -3 }))[0]).toMatchObject({
      rule: 'frozen',
      severity: 'refused',
      why: message('suspicion.frozen', {
        woodTempC: -3,
        frozenLimitPct: 22,
      }),
    });
  });

  test('saved before it settled: questionable', () => {
    expect(suspicionsOf(reading(1, 'shell', 8.2, { how: 'at-once', settled: false }))).toMatchObject([
      { rule: 'not-settled', severity: 'questionable' },
    ]);
    expect(suspicionsOf(reading(1, 'shell', 8.2, { how: 'at-once', settled: true }))).toEqual([]);
  });

  test('at the end of the meter’s scale: questionable at the dry end; at the wet end a note, since wet is wet', () => {
    const typedBasis = { scale: SCALE, range: { min: 8, max: 40 } };
    const dry = judge(readings([8, 9.4], [9.5, 9.6]), { typedBasis })[0]!.suspicions;
    expect(dry).toMatchObject([{ rule: 'outside-meter-range', severity: 'questionable' }]);
    // Poor contact reads too dry (common practice, no source), but not at one spot after another.
    const again = judge(readings([8, 8], [8, 8.1]), { typedBasis })[0]!.suspicions;
    expect(again).toMatchObject([{ rule: 'outside-meter-range', severity: 'note' }]);
    expect(inEnglish(again[0]!.whatToDo)).toContain('oven-dry check');
    const wet = judge(readings([40, 40], [40, 39]), {
      typedBasis: { scale: SCALE, range: { min: 6, max: 40 } },
    })[0]!.suspicions;
    expect(wet).toContainEqual(expect.objectContaining({ rule: 'outside-meter-range', severity: 'note' }));
  });

  test('above fiber saturation and below 6 %: a note', () => {
    expect(judge(readings([45, 45], [46, 46]))[0]!.suspicions).toMatchObject([
      {
        rule: 'outside-curve-range',
        severity: 'note',
        why: message('suspicion.outside-curve-range.wet', { mcPct: expect.closeTo(45, 6) }),
      },
    ]);
    expect(judge(readings([5.4, 5.4], [5.5, 5.5]))[0]!.suspicions).toMatchObject([
      {
        rule: 'outside-curve-range',
        severity: 'note',
        why: message('suspicion.outside-curve-range.dry', {
          mcPct: expect.closeTo(5.4, 6),
          leastLimitPct: 6,
        }),
      },
    ]);
  });

  test('wood temperature unknown: a note', () => {
    expect(judge(readings([8, 8], [8.2, 8.3], { woodTempC: null }))[0]!.suspicions).toMatchObject([
      { rule: 'temperature-unknown', severity: 'note' },
    ]);
  });

  test('corrected for the air, where that is known: a note that says so', () => {
    const place = { name: 'the shed', kind: 'open-shed', emcPct: 8, month: 5, airTempC: 20 } as const;
    expect(suspicionsOf(reading(1, 'shell', 8, { woodTempC: null }), { place })).toMatchObject([
      {
        rule: 'temperature-of-air',
        severity: 'note',
        why: message('suspicion.temperature-of-air', { airTempC: 20, placeName: 'the shed', perStepK: 10 }),
      },
    ]);
  });

  test('a wood temperature unlike the air that was measured is held against that', () => {
    const place = { name: 'the room', kind: 'heated-room', emcPct: 8, month: 5, airTempC: 20 } as const;
    const measured = { place: { ...place, isAirMeasured: true } };
    expect(suspicionsOf(reading(1, 'shell', 9.2, { woodTempC: 32 }), measured)).toMatchObject([
      {
        why: message('suspicion.temperature-unlikely.measured', {
          woodTempC: 32,
          airTempC: 20,
          placeName: 'the room',
        }),
      },
    ]);
  });

  test('a wood temperature that the air of that month cannot explain: questionable (30 °C typed for 30 °F, say)', () => {
    const heated = { name: 'the room', kind: 'heated-room', emcPct: 8, month: 5, airTempC: 20 } as const;
    expect(suspicionsOf(reading(1, 'shell', 9.2, { woodTempC: 32 }), { place: heated })).toMatchObject([
      {
        rule: 'temperature-unlikely',
        severity: 'questionable',
        why: message('suspicion.temperature-unlikely', {
          woodTempC: 32,
          airTempC: 20,
          placeName: 'the room',
        }),
      },
    ]);
    expect(suspicionsOf(reading(1, 'shell', 8.2, { woodTempC: 24 }), { place: heated })).toEqual([]);
  });

  test('a cold morning is asked about in one box, and once it is right the readings are used', () => {
    const place = { name: 'the yard', kind: 'outdoors', emcPct: 13, month: 11, airTempC: 15 } as const;
    const cold = { woodTempC: -5 };
    const asked = judge(readings([13, 13.2], [13.4, 13.5], cold), { place });
    expect(rules(asked)).toEqual(Array.from({ length: 4 }, () => ['temperature-unlikely']));
    const right = judge(readings([13, 13.2], [13.4, 13.5], { ...cold, isTempRight: true }), { place });
    expect(rules(right)).toEqual(Array.from({ length: 4 }, () => ['below-freezing']));
    expect(right.every(({ counts }) => counts)).toBe(true);
  });

  test('frozen wood is said in one box, whatever else is odd', () => {
    const place = { name: 'the yard', kind: 'outdoors', emcPct: 13, month: 11, airTempC: 15 } as const;
    const wet = judge([reading(1, 'shell', 24, { woodTempC: -5 })], { place });
    expect(rules(wet)).toEqual([['frozen']]);
    // Its spot will be no better before it thaws, unless a person excluded it.
    expect(wet.map(isReadFrozen)).toEqual([true]);
    const excluded = reading(1, 'shell', 24, { woodTempC: -5, excluded: { code: 'wrong-spot' } });
    expect(judge([excluded], { place }).map(isReadFrozen)).toEqual([false]);
    const questioned = judge(readings([8.1, 8.4], [8.6, 12.6], { woodTempC: -3 }));
    expect(questioned.map(isReadFrozen)).toEqual([false, false, false, false]);
  });

  test('wood temperature outside the published range: questionable', () => {
    expect(rules([{ suspicions: suspicionsOf(reading(1, 'shell', 8, { woodTempC: 75 })) }])[0]).toContain(
      'temperature-out-of-range',
    );
  });

  test('so is air outside it, where that is taken for the wood', () => {
    const place = { name: 'the yard', kind: 'outdoors', emcPct: 13, month: 1, airTempC: -60 } as const;
    const asked = suspicionsOf(reading(1, 'shell', 8, { woodTempC: null }), { place }).find(
      ({ rule }) => rule === 'temperature-out-of-range',
    );
    expect(asked?.severity).toBe('questionable');
    expect(inEnglish(asked!.why)).toContain('The air in the yard');
    const cold = { ...place, airTempC: -20 };
    expect(
      rules([{ suspicions: suspicionsOf(reading(1, 'shell', 8, { woodTempC: null }), { place: cold }) }])[0],
    ).not.toContain('temperature-out-of-range');
  });

  test.each([
    [3000, 299, ['near-end']],
    [3000, 300, []],
    [null, 250, ['near-end']],
    // A short board has no spot that far from both ends: its middle third serves.
    [600, 250, []],
    [600, 150, ['near-end']],
  ])('on a board %s mm long, %d mm from an end: %j', (lengthMm, fromEndMm, expected) => {
    const found = suspicionsOf(reading(1, 'shell', 8.2, spot({ fromEndMm })), {
      board: { thicknessMm: 27, lengthMm },
    });
    expect(found.map((each) => each.rule)).toEqual(expected);
  });

  test('in end grain: questionable', () => {
    expect(suspicionsOf(reading(1, 'shell', 8.2, spot({ face: 'end-grain' })))).toMatchObject([
      { rule: 'end-grain', severity: 'questionable' },
    ]);
  });

  test('called a core, but 8 mm deep in 52 mm: the pins were not deep enough', () => {
    const board = { thicknessMm: 52, lengthMm: 3000 };
    const shallow = reading(1, 'core', 8.6, spot({ depth: 'core', depthMm: 8 }));
    expect(suspicionsOf(shallow, { board })).toMatchObject([
      {
        rule: 'pins-shallow',
        severity: 'questionable',
        why: message('suspicion.pins-shallow', { depthMm: 8, coreDepthMm: 26 }),
      },
    ]);
    const deep = reading(1, 'core', 8.6, spot({ depth: 'core', depthMm: 22 }));
    expect(suspicionsOf(deep, { board })).toEqual([]);
  });

  test('1 mm deep: the pins read the surface only, whatever the spot is for (common practice, no source)', () => {
    const board = { thicknessMm: 27, lengthMm: 3000 };
    for (const depth of ['shell', 'average', 'core'] as const) {
      expect(suspicionsOf(reading(1, depth, 8.6, spot({ depth, depthMm: 1 })), { board })).toMatchObject([
        {
          rule: 'pins-shallow',
          severity: 'questionable',
          why: message('suspicion.pins-shallow.surface', { depthMm: 1 }),
        },
      ]);
    }
    // 1/16 in, and as deep as a sheet 5 mm thick is planned.
    expect(suspicionsOf(reading(1, 'shell', 8.6, spot({ depthMm: 25.4 / 16 })), { board })).toEqual([]);
    const thin = { thicknessMm: 5, lengthMm: 3000 };
    expect(suspicionsOf(reading(1, 'shell', 8.6, spot({ depthMm: 1 })), { board: thin })).toEqual([]);
  });

  test('a depth that a person gave, beyond the board since its thickness was edited: questionable', () => {
    const board = { thicknessMm: 20, lengthMm: 3000 };
    const given = reading(1, 'core', 8.6, {
      ...spot({ depth: 'core', depthMm: 27 }),
      depthFrom: 'person',
    });
    expect(suspicionsOf(given, { board })).toMatchObject([
      { rule: 'deeper-than-board', severity: 'questionable' },
    ]);
    const cut = { ...given, spot: { ...given.spot, face: 'fresh-cut' as const } };
    expect(suspicionsOf(cut, { board })).toEqual([]);
    expect(suspicionsOf({ ...given, depthFrom: 'plan' }, { board })).toEqual([]);
  });
});

describe('readings that may be one and the same', () => {
  test('the second at a spot: a note on it, not on the first', () => {
    const [first, ...others] = readings([8.1, 8.4], [8.6, 8.9]);
    const judged = judge([
      { ...first!, spotIndex: 0 },
      ...others,
      reading(9, 'shell', 8.2, { spotIndex: 0 }),
    ]);
    expect(rules(judged)).toEqual([[], [], [], [], ['same-spot']]);
    expect(judged.every(({ counts }) => counts)).toBe(true);
  });

  test('one of another depth is at another spot, whatever its number', () => {
    const [shell, ...others] = readings([8.1, 8.4], [8.6, 8.9]);
    const core = reading(9, 'core', 8.7, { spotIndex: 0 });
    expect(rules(judge([{ ...shell!, spotIndex: 0 }, ...others, core])).flat()).toEqual([]);
  });

  test('one that is excluded leaves its spot free', () => {
    const [first, ...others] = readings([8.1, 8.4], [8.6, 8.9]);
    const excluded = { ...first!, spotIndex: 0, excluded: { text: 'a knot' } };
    expect(
      rules(judge([excluded, ...others, reading(9, 'shell', 8.2, { spotIndex: 0 })])).flat(),
    ).not.toContain('same-spot');
  });

  test('equal values: a note on each of three, or of four in whole or half points (common practice, no source)', () => {
    const three = judge(readings([7.2, 7.2], [7.2]));
    expect(rules(three)).toEqual([['equal-values'], ['equal-values'], ['equal-values']]);
    expect(rules(judge(readings([8, 8], [8]))).flat()).toEqual([]);
    expect(rules(judge(readings([8.5, 8.5], [8.5]))).flat()).toEqual([]);
    expect(rules(judge(readings([8, 8], [8, 8]))).flat()).toContain('equal-values');
    const four = judge(readings([8.4, 8.4], [8.4, 8.4]));
    expect(rules(four)).toEqual([['equal-values'], ['equal-values'], ['equal-values'], ['equal-values']]);
    expect(four[0]!.suspicions[0]).toMatchObject({
      severity: 'note',
      why: message('suspicion.equal-values', {
        readings: 4,
        reading: message('suspicion.reading-pct', { rawPct: 8.4 }),
      }),
    });
    expect(rules(judge(readings([8.4, 8.4], [8.4, 8.5]))).flat()).toEqual([]);
    expect(rules(judge(readings([8.4, 8.4], []))).flat()).toEqual([]);
    // No meter steps by whole ohms: three are enough.
    const ohms = judge(readings([5e8, 5e8], [5e8], { unit: 'ohm' }));
    expect(rules(ohms).every((each) => each.includes('equal-values'))).toBe(true);
  });
});

describe('typing slips', () => {
  test('all of a round ten times too large: no meter shows so much, or the last round tells', () => {
    const noMeterShows = judge(readings([126, 118], [131, 134]));
    expect(rules(noMeterShows)).toEqual([['typing-slip'], ['typing-slip'], ['typing-slip'], ['typing-slip']]);
    expect(meantBy(noMeterShows[0]!)).toBe(12.6);
    const previous = lastRound(8.2, 8.8, '2026-05-06T10:00:00Z');
    const asBefore = judge(readings([82, 79], [85, 88]), { previous });
    expect(rules(asBefore)).toEqual([['typing-slip'], ['typing-slip'], ['typing-slip'], ['typing-slip']]);
    expect(meantBy(asBefore[0]!)).toBe(8.2);
  });

  test('a board that is wet through, and was in the last round: no slips', () => {
    const previous = lastRound(78, 84, '2026-05-18T10:00:00Z');
    const wet = judge(readings([75, 77], [82, 84]), { previous });
    expect(rules(wet).flat()).not.toContain('typing-slip');
    expect(rules(judge(readings([75, 77], [82, 84]))).flat()).not.toContain('typing-slip');
  });

  test.each([
    [126, 12.6],
    [1.26, 12.6],
    [1260, 12.6],
  ])('%d typed among readings about 12.5 was meant as %d', (typed, meant) => {
    const judged = judge([reading(9, 'shell', typed), ...readings([12.4, 12.7], [13, 13.2])]);
    expect(judged[0]!.suspicions[0]).toMatchObject({
      rule: 'typing-slip',
      severity: 'refused',
      why: message('suspicion.typing-slip', { rawPct: typed, rawMeantPct: meant }),
    });
    expect(rules(judged).slice(1)).toEqual([[], [], [], []]);
    expect(judged[0]!.counts).toBe(false);
  });

  test('with nothing else on the board the last round tells, or what lumber reads', () => {
    expect(rules(judge([reading(1, 'shell', 126)]))).toEqual([['typing-slip']]);
    expect(rules(judge([reading(1, 'shell', 1.4)]))[0]).toContain('typing-slip');
  });

  test('what is no reading does not tell what was meant, and nothing is offered that no lumber reads', () => {
    const judged = judge([-5, 200, 999, 3].map((raw, index) => reading(index + 1, 'shell', raw)));
    expect(meantBy(judged[3]!)).not.toBe(300);
    for (const each of judged) expect(meantBy(each) ?? 10).toSatisfy((pct: number) => pct >= 5 && pct <= 60);
  });

  test('what cannot be a reading, or the disk changed, is no other reading of the board', () => {
    const beside = (other: ReturnType<typeof reading>) =>
      rules(judge([reading(1, 'shell', 75), other]))[0]!.includes('typing-slip');
    expect(beside(reading(2, 'shell', 70))).toBe(false);
    expect(beside(reading(2, 'shell', -4))).toBe(true);
    const small = (other: ReturnType<typeof reading>) =>
      rules(judge([reading(1, 'shell', 4.5), other]))[0]!.includes('typing-slip');
    expect(small(reading(2, 'shell', 46))).toBe(true);
    expect(small(reading(2, 'shell', 46, { isDamaged: true }))).toBe(false);
  });

  const slips = (...args: Parameters<typeof evidence>) =>
    rules(judge(...args)).map((found) => found.includes('typing-slip'));
  const typed = (...values: number[]) => values.map((raw, index) => reading(index + 1, 'shell', raw));
  const none = (...values: number[]) => values.map(() => false);

  test('readings in other units and excluded ones tell nothing, nor do those that disagree', () => {
    expect(slips([...typed(4.5), reading(2, 'shell', 46, { unit: 'ohm' })])[0]).toBe(false);
    expect(slips([...typed(4.5), reading(2, 'shell', 46, { excluded: { code: 'defect' } })])[0]).toBe(false);
    expect(slips(typed(130, 30, 31, 400))[0]).toBe(false);
  });

  describe('of a whole round', () => {
    const room = { name: 'the room', kind: 'heated-room', emcPct: 7, month: 5 } as const;
    const core = (pct: number) => ({ pct, logSd: 0.01, airSdPct: 0.1 });
    const prior = (pct: number, emcPct: number) => ({
      shell: core(pct),
      average: core(pct),
      core: core(pct),
      emcPct,
    });

    test('are asked about in a room where a tenth is about what its air makes, beside whatever else is odd', () => {
      const wet = typed(75, 76, 78).map((each) => ({ ...each, spot: { ...each.spot, fromEndMm: 100 } }));
      expect(rules(judge(wet, { place: room }))[0]).toEqual(
        expect.arrayContaining(['typing-slip', 'near-end']),
      );
      // No wood comes to so much in so dry a room, or ten times too small there.
      expect(slips(typed(95, 96, 97), { place: { ...room, emcPct: 3.4 } })).toEqual(none(1, 2, 3));
      expect(slips(typed(1.2, 1.3, 1.25), { place: room })).toEqual(none(1, 2, 3));
      // Wet in the last round, or beside one that is dry, it is what it says.
      const previous = lastRound(60, 64, '2026-05-06T10:00:00Z');
      expect(slips(typed(75), { place: room, previous })).toEqual([false]);
      expect(slips(typed(75, 30, 76), { place: room })).toEqual(none(1, 2, 3));
    });

    test('are none where a tenth would be too wet for the board as well', () => {
      expect(slips(typed(99, 98, 97), { prior: prior(7.5, 7) })).toEqual(none(1, 2, 3));
      expect(slips(typed(99, 98, 97), { prior: prior(10, 9) })).toEqual([true, true, true]);
    });

    test('are ten times too small where no air makes so dry, and the board can be ten times as wet', () => {
      const driestAir = { emcPct: 12.6, sdPct: 0.7 };
      const small = typed(1.31, 1.33, 1.35);
      expect(slips(small, { driestAir, prior: prior(15, 12) })).toEqual([true, true, true]);
      expect(slips(small, { driestAir, prior: prior(9, 8) })).toEqual(none(1, 2, 3));
      // In air that is hardly known nobody can tell.
      expect(slips(typed(0.8, 0.9, 0.85), { driestAir: { emcPct: 5, sdPct: 2 } })).toEqual(none(1, 2, 3));
    });
  });

  // The scales of pin meters end at 100 % or before: from memory.
  test('no meter shows more than 100%', () => {
    expect([100, 100.1].map(isBeyondScales)).toEqual([false, true]);
  });

  test('a meter does not slip: a value that came over the air is not one', () => {
    const live = reading(9, 'shell', 126, { how: 'settled', settled: true });
    expect(rules(judge([live, ...readings([12.4, 12.7], [13, 13.2])]))[0]).not.toContain('typing-slip');
  });

  test('a board that is wet through reads above 60 % without a slip', () => {
    expect(rules(judge(readings([70, 75], [80, 85]))).flat()).not.toContain('typing-slip');
  });
});

describe('against the board’s other readings', () => {
  test('one of three is far from the others', () => {
    expect(rules(judge(readings([8.1, 8.4, 12.2], [8.6, 8.9])))).toEqual([
      [],
      [],
      ['outlier-on-board'],
      [],
      [],
    ]);
  });

  test('it says what to look for, by the side on which it is', () => {
    const doOf = (odd: number) =>
      judge(readings([8.1, 8.4, odd], [8.6, 8.9]))[2]!.suspicions.find(
        ({ rule }) => rule === 'outlier-on-board',
      )?.whatToDo.code;
    expect(doOf(12.2)).toBe('suspicion.outlier-on-board.high.do');
    expect(doOf(4.4)).toBe('suspicion.outlier-on-board.low.do');
  });

  // 4 % of the MC from spot to spot: common practice, no source.
  test('two differ by more in wet wood before they disagree', () => {
    expect(rules(judge(readings([26, 28.5], [26.5, 29]))).flat()).not.toContain('outlier-on-board');
    expect(rules(judge(readings([8, 10.5], [8.5, 11]))).flat()).toContain('outlier-on-board');
  });

  test('of two that disagree, both are questionable', () => {
    const judged = judge(readings([8.1, 8.4], [8.6, 12.6]));
    expect(rules(judged)).toEqual([[], [], ['outlier-on-board'], ['outlier-on-board']]);
    expect(judged[2]!.suspicions[0]!.why).toMatchObject({
      facts: { onePct: expect.closeTo(8.6, 6), otherPct: expect.closeTo(12.6, 6) },
    });
  });

  test('an excluded reading is not compared with the others', () => {
    const odd = reading(9, 'core', 19, { excluded: { text: 'in a knot' } });
    expect(rules(judge([...readings([8.1, 8.4], [8.6, 8.7]), odd])).slice(0, 4)).toEqual([[], [], [], []]);
  });

  test('the shell above the core in a drying board', () => {
    const shed = { name: 'the shed', kind: 'open-shed', emcPct: 12, month: 5 } as const;
    const judged = judge(readings([22, 22.5], [18, 18.2]), { place: shed });
    expect(rules(judged)).toEqual([['shell-above-core'], ['shell-above-core'], [], []]);
  });

  test('one wet spot on the face', () => {
    const shed = { name: 'the shed', kind: 'open-shed', emcPct: 12, month: 5 } as const;
    const judged = judge(readings([15, 15.4, 22], [17, 17.4]), { place: shed });
    expect(rules(judged)[2]).toContain('surface-wet');
    expect(rules(judged).slice(0, 2)).toEqual([[], []]);
  });

  // 8/4 oak outdoors after rain: common practice, no source.
  test('a shell that no air makes so wet, over a dry core, was rained on: let it dry, whatever the core says', () => {
    const outdoors = { name: 'the yard', kind: 'outdoors', emcPct: 13.5, month: 11 } as const;
    const board = { thicknessMm: 54, lengthMm: 3000 };
    const {
      call,
      reasons,
      readings: judged,
    } = judgeBoard(evidence(readings([22, 23], [12.5, 12.5]), { place: outdoors, board }));
    expect(rules(judged)).toEqual([['rained-on'], ['rained-on'], [], []]);
    expect(call).toBe('probe-again');
    expect(inEnglish(reasons[0])).toBe(
      'Shell 10.0 points wetter than the core: rain? Let the faces dry, then probe again.',
    );
    // Three damp weeks, or a core that is still wet itself.
    expect(rules(judge(readings([17, 17.4], [12.5, 12.5]), { place: outdoors, board })).flat()).toEqual([]);
    expect(rules(judge(readings([40, 41], [30, 30]), { place: outdoors, board })).flat()).not.toContain(
      'rained-on',
    );
  });

  test('a board that takes up moisture from its air may be damper at the shell', () => {
    const shed = { name: 'the shed', kind: 'open-shed', emcPct: 16, month: 5 } as const;
    expect(rules(judge(readings([12, 12.2], [9, 9.2]), { place: shed })).flat()).toEqual([]);
  });
});

describe('against the last round', () => {
  test('a board in the shop cannot have become wetter than its air; both readings of a depth say it in one sentence', () => {
    const judged = judge(readings([14.6, 14.9], [15.4, 15.7]), {
      previous: lastRound(8.2, 8.8, '2026-05-06T10:00:00Z'),
    });
    expect(rules(judged)).toEqual(Array(4).fill(['jump-since-last-round']));
    const why = message('suspicion.jump.wetter', {
      depth: 'core',
      beforePct: 8.8,
      mcPct: expect.closeTo(15.55, 6),
      days: 14,
    });
    expect(judged.slice(2).map(({ suspicions }) => suspicions[0]!.why)).toEqual([why, why]);
  });

  test('the core of a thick beam cannot have lost 8 points since yesterday; its shell can', () => {
    const judged = judge(readings([12, 12.3], [20, 20.2]), {
      board: { thicknessMm: 76.2, thicknessQuarters: 12, lengthMm: 3000 },
      place: { name: 'the yard', kind: 'outdoors', emcPct: 12, month: 5 },
      previous: lastRound(20, 28, '2026-05-19T10:00:00Z'),
    });
    expect(rules(judged)).toEqual([[], [], ['jump-since-last-round'], ['jump-since-last-round']]);
    // A board given as 12/4 is called that.
    expect(judged[2]!.suspicions[0]!.why.facts).toMatchObject({
      boardThickness: { thicknessMm: 76.2, quarters: 12 },
    });
  });

  test('what drying does in two months is no jump', () => {
    const judged = judge(readings([12, 12.3], [14, 14.2]), {
      place: { name: 'the yard', kind: 'outdoors', emcPct: 12, month: 5 },
      previous: lastRound(20, 28, '2026-03-20T10:00:00Z'),
    });
    expect(rules(judged).flat()).toEqual([]);
  });

  test('a board that stayed in one known air is compared with the drying model', () => {
    const shed = { name: 'the shed', kind: 'open-shed', emcPct: 13, month: 5 } as const;
    const stayed = (moved: boolean) =>
      rules(
        judge(readings([14.2, 14.4], [14.3, 14.5]), {
          place: shed,
          board: { thicknessMm: 52, lengthMm: 3000 },
          previous: { ...lastRound(16, 22, '2026-05-09T10:00:00Z'), moved },
        }),
      );
    expect(stayed(false)).toEqual([[], [], ['jump-since-last-round'], ['jump-since-last-round']]);
    // Where it was moved it may have been in unknown air: only the bounds for any board hold.
    expect(stayed(true)).toEqual([[], [], [], []]);
  });

  test('a board read by its average alone cannot have become wetter than its air, nor drier than diffusion allows', () => {
    const before = lastRoundByAverage(8.5, '2026-05-06T10:00:00Z');
    const wetter = judge(averages([15.1, 15.4, 15.2]), { previous: before });
    expect(rules(wetter)).toEqual(Array(3).fill(['jump-since-last-round']));
    expect(wetter[0]!.suspicions[0]!.why).toEqual(
      message('suspicion.jump.wetter', {
        depth: 'average',
        beforePct: 8.5,
        mcPct: expect.closeTo(15.23, 2),
        days: 14,
      }),
    );
    const shed = { name: 'the shed', kind: 'open-shed', emcPct: null, month: 5 } as const;
    const drier = (takenAt: string) =>
      rules(judge(averages([12, 12.3, 12.1]), { place: shed, previous: lastRoundByAverage(24, takenAt) }));
    expect(drier('2026-05-20T07:00:00Z')).toEqual(Array(3).fill(['jump-since-last-round']));
    expect(drier('2026-04-06T10:00:00Z')).toEqual([[], [], []]);
  });

  test('a board read by its average alone that stayed is compared with the drying model', () => {
    const shed = { name: 'the shed', kind: 'open-shed', emcPct: 13, month: 5 } as const;
    const judgedOn = (...values: number[]) =>
      rules(
        judge(averages(values), {
          place: shed,
          previous: { ...lastRoundByAverage(24, '2026-05-16T10:00:00Z'), moved: false },
        }),
      );
    expect(judgedOn(14, 14.2, 14.1)).toEqual(Array(3).fill(['jump-since-last-round']));
    expect(judgedOn(22, 22.2, 22.1)).toEqual([[], [], []]);
  });

  test('an average after a round of shell and core is compared with the average of those', () => {
    const pairs = lastRound(8.3, 8.7, '2026-05-06T10:00:00Z');
    const wetter = judge(averages([15.1, 15.4, 15.2]), { previous: pairs });
    expect(rules(wetter)).toEqual(Array(3).fill(['jump-since-last-round']));
    expect(wetter[0]!.suspicions[0]!.why).toMatchObject({ facts: { depth: 'average', beforePct: 8.5 } });
    expect(rules(judge(averages([8.4, 8.7, 8.5]), { previous: pairs })).flat()).toEqual([]);
    // A shell alone tells no average.
    const { estimate, takenAt } = pairs;
    const shells = { estimate: { ...estimate, corePct: null, differencePct: null, countedCore: 0 }, takenAt };
    expect(rules(judge(averages([15.1, 15.4, 15.2]), { previous: shells })).flat()).toEqual([]);
  });

  test('of two cores that disagree, only the one that the last round speaks against is questionable', () => {
    const judged = judge(readings([8.1, 8.4], [8.6, 13.6]), {
      previous: lastRound(8.3, 8.7, '2026-05-06T10:00:00Z'),
    });
    expect(rules(judged)).toEqual([[], [], [], ['jump-since-last-round', 'outlier-on-board']]);
  });

  test('probed twice on the same day, a sound board does not jump', () => {
    const judged = judge(readings([8.1, 8.4], [8.6, 8.9]), { previous: lastRound(8.4, 8.5, TAKEN_AT) });
    expect(rules(judged).flat()).toEqual([]);
  });
});
