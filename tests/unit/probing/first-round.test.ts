import { describe, expect, test } from 'vitest';
import { findingOf, foundOf } from '../../../electron/app/judging/finding.ts';
import { judgeBoard } from '../../../shared-core/probing/calls/call.ts';
import type { BoardEvidence } from '../../../shared-core/probing/readings/evidence.ts';
import { PAIRS } from '../../../shared-core/probing/readings/plan-basis.ts';
import type { Reading } from '../../../shared-core/probing/readings/reading.ts';
import { meantBy } from '../../../shared-core/probing/readings/typing-slip.ts';
import {
  driestMet,
  firstRoundSuspicion,
  priorNow,
} from '../../../shared-core/probing/suspicions/first-round.ts';
import { GREEN, mostWaterPct } from '../../../shared-core/wood/moisture/most-water.ts';
import { builtInEndUses, builtInSpecies } from '../../../shared-core/wood/species/built-in.ts';
import { dryingClassOf } from '../../../shared-core/wood/species/drying-class.ts';
import { expectWhole, inEnglish } from '../words/in-english.ts';
import { averages, evidence, lastRound, reading, readings, rules } from './a-board.ts';

/** A shed in summer; months of the middle United States. */
const summer = (days: number) => ({
  days,
  airs: [{ days, emcPct: 12.6, tempC: 20, sdPct: 0.7, isKnown: true }],
});
const woodOf = (id: string) => {
  const species = builtInSpecies.find((each) => each.id === id)!;
  return { basicSpecificGravity: species.basicSpecificGravity, dryingClass: dryingClassOf(species) };
};
const airDried = builtInEndUses.find(({ id }) => id === 'air-dried-stock')!;
const shed = { name: 'the shed', kind: 'open-shed', emcPct: 12.6, month: 7 } as const;

const judge = (
  of: Reading[],
  thicknessMm: number,
  { prior = null, driestAir = null }: Pick<BoardEvidence, 'prior' | 'driestAir'>,
  previous: ReturnType<typeof lastRound> | null = null,
) =>
  judgeBoard(
    evidence(of, {
      board: { thicknessMm, lengthMm: 3000 },
      endUse: airDried,
      place: shed,
      prior,
      driestAir,
      previous: previous && { ...previous, moved: true },
    }),
  );

describe('a first round is checked against what is possible', () => {
  const oak = priorNow(54, woodOf('oak-white'), summer(60))!;
  const flat = readings([14, 14], [14.5, 14.5]);

  // The board: 54 mm white oak, sawn 60 days ago, with 14 and 14.5 % in shell and core.
  test('54 mm white oak, sawn 60 days ago: no such board is at 14% through', () => {
    expect(oak.core.pct).toBeGreaterThan(32);
    const onlyPlanned = readings([14, 14], [14.5, 14.5], { depthFrom: 'plan' });
    const { call, reasons, readings: judged } = judge(onlyPlanned, 54, { prior: oak });
    expect(call).toBe('probe-again');
    expect(rules(judged).flat()).toContain('dry-too-soon');
    const said = reasons.map((each) => inEnglish(each)).join(' ');
    for (const reason of ['only the dry shell', 'sawing date', 'species', 'fresh crosscut'])
      expect(said.toLowerCase()).toContain(reason);
    expect(said).toContain('The core reads 14.5%. That is unlikely this soon after sawing. Core expected: ');
    expectWhole(reasons);
    // Without the check the same round is ready.
    expect(judge(flat, 54, {}).call).toBe('ready');
  });

  test('a shell that is too dry itself gets reasons of a shell, and tells no average', () => {
    const plan = { shell: 2, average: 0, core: 0 };
    const assessment = judgeBoard(
      evidence(readings([9, 9.1], []), {
        board: { thicknessMm: 54, lengthMm: 3000 },
        place: shed,
        prior: oak,
        plan,
      }),
    );
    const { call, reasons, readings: judged, estimate } = assessment;
    expect(call).toBe('probe-again');
    expect(rules(judged).flat()).toEqual(['dry-too-soon', 'dry-too-soon']);
    const said = reasons.map((each) => inEnglish(each)).join(' ');
    expect(said).toContain('Was the face in the sun?');
    expect(said).not.toContain('Short pins');
    expect(estimate?.averageIs).toBe('estimated');
    const board = { thicknessMm: 54, lengthMm: 3000, planBasis: PAIRS };
    for (const found of [findingOf(1, board, assessment), foundOf(assessment)])
      expect(found).toMatchObject({ isQuestionable: true, averageIs: 'unknown' });
    expect(findingOf(1, board, assessment)).toMatchObject({ averagePct: null, lowPct: null, highPct: null });
  });

  test('where the core was read, short pins are no reason', () => {
    const { reasons } = judge(flat, 54, { prior: oak });
    const said = reasons.map((each) => inEnglish(each)).join(' ');
    expect(said).toContain('sawing date');
    expect(said).not.toContain('Short pins');
  });

  test('its shell alone may be so dry, and is compared with what a shell should be', () => {
    expect(rules(judge(readings([18, 18.5], []), 54, { prior: oak }).readings).flat()).toEqual([]);
  });

  test('the same board after two years is believed', () => {
    const { call } = judge(flat, 54, { prior: priorNow(54, woodOf('oak-white'), summer(730)) });
    expect(call).toBe('ready');
  });

  test('thin boards of a light wood dry so far in a summer', () => {
    const prior = priorNow(25, woodOf('pine-eastern-white'), summer(90));
    expect(rules(judge(flat, 25, { prior }).readings).flat()).toEqual([]);
  });

  // The board: 7.6 % in a shed whose lowest EMC is 11.2 %.
  test('no board is at 7.6% where the air never got below an EMC of 11.2%', () => {
    const driestAir = { emcPct: 11.2, sdPct: 0 };
    const dry = readings([7.5, 7.6], [7.6, 7.7]);
    const { call, readings: judged, reasons } = judge(dry, 27, { driestAir });
    expect(call).toBe('probe-again');
    expect(rules(judged).flat()).toContain('drier-than-its-air');
    expect(reasons.map((each) => inEnglish(each)).join(' ')).toContain('lowest EMC 11.2%');
    expect(rules(judge(readings([11, 11], [11.1, 11.1]), 27, { driestAir }).readings).flat()).toEqual([]);
  });

  // 4/4 oak, read in November at 24 °F: 7.7 to 8.0 %, where no month of its air since May had less than 11.8 %.
  test('what its air has made of it by now counts, and a dry month that it has long left does not', () => {
    const since = (months: readonly number[]) =>
      months.map((emcPct) => ({ days: 30, emcPct, tempC: 15, sdPct: 0.7, isKnown: false }));
    const air = since([11.8, 12.2, 12.6, 12.9, 13.2, 13.9, 14.6]);
    const wood = woodOf('oak-white');
    const thin = driestMet(25.4, wood, air)!;
    expect(thin.emcPct).toBe(11.8);
    expect(thin.followedPct).toBeGreaterThan(14);
    expect(driestMet(52, wood, air)!.followedPct).toBeLessThan(thin.followedPct!);
    const at = (pct: number, driestAir: BoardEvidence['driestAir']) =>
      rules(
        judge(readings([pct, pct], [pct, pct], { woodTempC: -4.4 }), 25.4, { driestAir }).readings,
      ).flat();
    expect(at(6.4, thin)).toContain('drier-than-its-air');
    expect(at(6.4, { emcPct: 11.8, sdPct: 0.7 })).not.toContain('drier-than-its-air');
    // Above the driest month it is nothing that its places cannot do.
    expect(at(12, { ...thin, followedPct: 25 })).not.toContain('drier-than-its-air');
    expect(driestMet(25.4, wood, [])).toBeNull();
  });

  test('air that is known roughly gives it the benefit of that doubt', () => {
    const dry = readings([7.5, 7.6], [7.6, 7.7]);
    const rulesAt = (sdPct: number) => rules(judge(dry, 27, { driestAir: { emcPct: 11.2, sdPct } }).readings);
    expect(rulesAt(0.5).flat()).toContain('drier-than-its-air');
    expect(rulesAt(1.5).flat()).toEqual([]);
  });

  // 8/4 walnut, sawn two and a half years ago and lately brought into a room of which the app knows the air roughly.
  describe('a dry board in a heated room', () => {
    const days = 930;
    const inRoom = (sdPct: number, enteredAfterDays: number) => ({
      days,
      airs: Array.from({ length: days / 15 }, (_, step) => ({
        days: 15,
        emcPct: 10.2,
        tempC: 21,
        sdPct,
        isKnown: step * 15 >= enteredAfterDays,
      })),
    });

    test('is believed within the doubt in its air', () => {
      const driestAir = { emcPct: 10.2, sdPct: 1.6 };
      const prior = priorNow(52, woodOf('walnut-black'), inRoom(1.6, 0));
      const { readings: judged } = judge(readings([7.4, 7.5], [7.8, 7.9]), 52, { prior, driestAir });
      expect(rules(judged).flat()).toEqual([]);
    });

    test('is believed to have been in drier air before it was entered', () => {
      const rulesAt = (enteredAfterDays: number) => {
        const prior = priorNow(52, woodOf('walnut-black'), inRoom(0.7, enteredAfterDays));
        return rules(judge(readings([6.2, 6.4], [6.3, 6.1]), 52, { prior }).readings).flat();
      };
      expect(rulesAt(0)).toContain('dry-too-soon');
      expect(rulesAt(915)).not.toContain('dry-too-soon');
    });

    test('is questioned beyond that, and not for being dry so soon', () => {
      const prior = priorNow(52, woodOf('walnut-black'), inRoom(0.7, 0));
      const { readings: judged, reasons } = judge(readings([5, 5.1], [5.2, 5]), 52, { prior });
      expect(rules(judged).flat()).toContain('dry-too-soon');
      const said = reasons.map((each) => inEnglish(each)).join(' ');
      expect(said).toContain('That is drier than its places should get it.');
      expect(said).not.toContain('soon');
    });
  });

  test('a round before that was not believed does not make it likelier', () => {
    const later = judge(flat, 54, { prior: oak }, lastRound(14, 14.4, '2026-05-01T10:00:00Z'));
    expect(rules(later.readings).flat()).toContain('dry-too-soon');
  });
});

describe('what a board should have before any reading', () => {
  test('falls with the days, and is unknown without air or specific gravity', () => {
    const wood = { basicSpecificGravity: 0.5, dryingClass: null };
    const at = (days: number) => priorNow(27, wood, summer(days))!.average.pct;
    expect(at(200)).toBeLessThan(at(30));
    expect(priorNow(27, { ...wood, basicSpecificGravity: null }, summer(30))).toBeNull();
    expect(priorNow(27, wood, { days: 30, airs: [] })).toBeNull();
    // Of longer ago than the model is run for, only that it is no wetter.
    expect(priorNow(27, wood, summer(2000))!.isAtMost).toBe(true);
    expect(priorNow(27, wood, summer(200))!.isAtMost).toBe(false);
  });
});

// Common practice, no source: lumber that was under a roof for a year is not wet through, and a decimal point is soon lost.
describe('a first round typed without the decimal point, where no board can be so wet', () => {
  const inches = 25.4;
  const slipped = readings([98, 101], [112, 99]);
  const dried = priorNow(inches, woodOf('walnut-black'), summer(400))!;

  test('4/4 walnut after a year: every value is a slip, and the one that was meant is offered', () => {
    const { readings: judged, call } = judge(slipped, inches, { prior: dried });
    expect(rules(judged)).toEqual(slipped.map(() => ['typing-slip']));
    expect(judged.map(meantBy)).toEqual([9.8, 10.1, 11.2, 9.9]);
    expect(call).not.toBe('keep-drying');
  });

  test('so is each of three, and not the fourth, which was typed right', () => {
    const { readings: judged } = judge(readings([98, 97], [97.5, 11.6]), inches, { prior: dried });
    expect(rules(judged)).toEqual([['typing-slip'], ['typing-slip'], ['typing-slip'], []]);
  });

  test.each([
    ['sawn a week ago', priorNow(inches, woodOf('walnut-black'), summer(7))],
    ['8/4 white oak after two months', priorNow(54, woodOf('oak-white'), summer(60))],
    ['of which nobody knows when it was sawn', null],
  ])('a board %s may be wet through', (_, prior) => {
    const { readings: judged } = judge(readings([68, 71], [74, 76]), inches, { prior });
    expect(rules(judged).flat()).not.toContain('typing-slip');
  });

  test('in a heated room, where a tenth is about what the air makes of wood, each is asked about: it may be green', () => {
    const room = { name: 'the room', kind: 'heated-room', emcPct: 7.4, month: 7 } as const;
    const inRoom = (of: Reading[]) => judgeBoard(evidence(of, { place: room }));
    const { readings: judged, call } = inRoom(readings([75, 76], [78, 77]));
    expect(rules(judged).every((each) => each.includes('typing-slip'))).toBe(true);
    expect(judged.map(meantBy)).toEqual([7.5, 7.6, 7.8, 7.7]);
    expect(call).toBe('keep-drying');
    const { readings: first } = inRoom(readings([130, 72], [78, 77]));
    expect(first.map(meantBy)).toEqual([13, 7.2, 7.8, 7.7]);
    expect(rules(inRoom(readings([45, 46], [48, 47])).readings).flat()).not.toContain('typing-slip');
  });
});

// Common practice, no source: a decimal point is soon misplaced to the left, too.
test('a first round typed ten times too small is a slip where the air makes no board so dry', () => {
  const small = readings([1.31, 1.33], [1.35, 1.32]);
  const driestAir = { emcPct: 12.6, sdPct: 0.7 };
  const { readings: judged, call } = judge(small, 27, { driestAir });
  expect(rules(judged)).toEqual(small.map(() => ['typing-slip']));
  expect(judged.map(meantBy)).toEqual([13.1, 13.3, 13.5, 13.2]);
  expect(call).not.toBe('ready');
  // Ten times as much is wetter than such air leaves it, or as dry as no air makes it.
  for (const raw of [4, 0.5])
    expect(rules(judge(readings([raw, raw], [raw, raw]), 27, { driestAir }).readings).flat()).not.toContain(
      'typing-slip',
    );
  // In a desert 23 % is no likelier than 2.3 %.
  const desert = judge(readings([2.3, 2.4], [2.5, 2.4]), 27, { driestAir: { emcPct: 2.3, sdPct: 0.7 } });
  expect(rules(desert.readings).flat()).not.toContain('typing-slip');
});

// The prior-predictive check of Box (1980, from memory) has two sides. Boards: common practice, no source.
describe('a first round wetter than the board can still be', () => {
  const old = (days: number) => priorNow(27, woodOf('oak-white'), summer(days))!;
  const wet = readings([38, 39], [37, 38]);

  test.each([500, 2500])('27 mm white oak at 38%, sawn %i days ago, is questioned', (days) => {
    const { call, reasons, readings: judged } = judge(wet, 27, { prior: old(days) });
    expect(call).toBe('probe-again');
    expect(rules(judged).every((each) => each.includes('wet-too-long'))).toBe(true);
    const said = reasons.map((each) => inEnglish(each)).join(' ');
    expect(said).toMatch(/The (shell|core) reads 3\d\.\d%\. By now it should be at most 1\d\.\d%\./);
    expect(said).toContain('sawing date');
    expect(said).toContain('Was it in rain, soaked, or under a leak?');
    expectWhole(reasons);
  });

  test('in a room no rain is to blame', () => {
    const room = { name: 'the room', kind: 'heated-room', emcPct: 7, month: 7 } as const;
    const { readings: judged } = judgeBoard(
      evidence(wet, { board: { thicknessMm: 27, lengthMm: 3000 }, place: room, prior: old(500) }),
    );
    const said = judged.flatMap(({ suspicions }) => suspicions.map(({ whatToDo }) => inEnglish(whatToDo)));
    expect(said.join(' ')).toContain('stickered later');
    expect(said.join(' ')).not.toContain('rain');
  });

  test('ten times too large is a slip six years after sawing, too', () => {
    const slipped = readings([72, 74], [75, 73]);
    expect(judge(slipped, 27, { prior: old(2190) }).readings.map(meantBy)).toEqual([7.2, 7.4, 7.5, 7.3]);
  });

  test.each([
    ['a month after sawing', priorNow(27, woodOf('oak-white'), summer(30))],
    ['while thick and slow', priorNow(80, woodOf('oak-white'), summer(400))],
  ])('is no wonder %s', (_, prior) => {
    expect(rules(judge(readings([30, 31], [38, 39]), 27, { prior }).readings).flat()).not.toContain(
      'wet-too-long',
    );
  });

  test('nor a few points above its air', () => {
    expect(rules(judge(readings([14.5, 14.7], [15, 15.1]), 27, { prior: old(500) }).readings).flat()).toEqual(
      [],
    );
  });

  test('nor where bark was on a face', () => {
    const prior = { ...old(500), mayBeWetter: true };
    expect(rules(judge(wet, 27, { prior }).readings).flat()).not.toContain('wet-too-long');
  });

  test('one brought into a room lately may have been in a damp shed before it was entered', () => {
    const days = 720;
    const inRoom = (enteredAfterDays: number) =>
      priorNow(27, woodOf('oak-white'), {
        days,
        airs: Array.from({ length: days / 15 }, (_, step) => ({
          days: 15,
          emcPct: 7.5,
          tempC: 21,
          sdPct: 0.7,
          isKnown: step * 15 >= enteredAfterDays,
        })),
      });
    const rulesAt = (enteredAfterDays: number) =>
      rules(
        judge(readings([17, 17.2], [17.5, 17.4]), 27, { prior: inRoom(enteredAfterDays) }).readings,
      ).flat();
    expect(rulesAt(0)).toContain('wet-too-long');
    expect(rulesAt(days)).not.toContain('wet-too-long');
  });

  test('of one sawn years ago nothing is too dry', () => {
    expect(rules(judge(readings([9, 9.1], [9.2, 9]), 27, { prior: old(2500) }).readings).flat()).toEqual([]);
  });
});

describe('the expectation of a board that was not read', () => {
  const wood = (basicSpecificGravity: number) => ({ basicSpecificGravity, dryingClass: null });
  const air = { days: 60, emcPct: 12, tempC: 15, sdPct: 0.7, isKnown: true };
  const expectedAfter = (days: number, gravity = 0.35) =>
    priorNow(54, wood(gravity), { days, airs: [{ ...air, days }] })!;

  // Green wood: as `GREEN` has it; the drying model begins at 58 % at most.
  test('just sawn, is what green wood holds, and 58% where that is more', () => {
    const dense = GREEN.share * mostWaterPct(0.9);
    expect(expectedAfter(0, 0.9).core.pct).toBeCloseTo(dense, 0);
    expect(expectedAfter(0).core.pct).toBeCloseTo(58, 0);
    // Dense wood may have begun with less.
    const drier = Math.log((dense - 12) / (dense * Math.exp(-2 * GREEN.logSd) - 12)) / 2;
    expect(expectedAfter(0, 0.9).core.logSd).toBeCloseTo(drier, 1);
    expect(expectedAfter(0).core.logSd).toBeCloseTo(0, 2);
  });

  test('may be wetter by the water that green wood holds beyond that', () => {
    const [light, dense] = [0.35, 0.9].map((gravity) => GREEN.share * mostWaterPct(gravity)) as [
      number,
      number,
    ];
    const wetter = Math.exp(GREEN.logSd);
    expect(expectedAfter(60).unmodeledLog).toBeCloseTo(Math.log((light * wetter - 12) / (58 - 12)), 9);
    expect(expectedAfter(60, 0.9).unmodeledLog).toBeCloseTo(
      Math.log((dense * wetter - 12) / (dense - 12)),
      9,
    );
  });

  // Two standard deviations, 0.7 of the diffusion's logarithm and 0.8 of the surface's, make a board about 4 to 5 times as
  // fast: as it is after so many times as long (both times scale with the thickness alone; Crank 1975, from memory).
  test('may be as far along as after four to five times as long', () => {
    const above = (days: number) => Math.log(expectedAfter(days).core.pct - 12);
    const { logSd } = expectedAfter(60).core;
    expect(logSd).toBeGreaterThan((above(60) - above(60 * Math.exp(1.4))) / 2 - 0.02);
    expect(logSd).toBeLessThan((above(60) - above(60 * Math.exp(1.6))) / 2 + 0.02);
  });

  test('where nobody knows where it was, may be as in a heated room, or as outdoors in winter', () => {
    const at = (met: Partial<typeof air>) =>
      priorNow(27, wood(0.5), { days: 60, airs: [{ ...air, ...met }] })!.core;
    for (const tempC of [0, 30]) {
      const unknown = at({ tempC, isKnown: false });
      const inRoom = at({ emcPct: 12 - 6, tempC: Math.max(20, tempC) });
      const inWinter = at({ emcPct: 20, tempC: Math.min(5, tempC) });
      expect(unknown.airSdPct).toBeCloseTo(Math.abs(unknown.pct - inRoom.pct) / 2, 9);
      expect(unknown.damperSdPct).toBeCloseTo(Math.hypot(3, (unknown.pct - inWinter.pct) / 2), 9);
    }
    // No air is drier than 3 % makes wood.
    const dry = priorNow(19, wood(0.5), {
      days: 400,
      airs: [{ ...air, days: 400, emcPct: 5, isKnown: false }],
    })!;
    expect(dry.core.airSdPct).toBeCloseTo((5 - 3) / 2, 1);
  });

  test('is the work of its last 1100 days', () => {
    const of = (days: number, airs: (typeof air)[]) => priorNow(150, wood(0.7), { days, airs })!;
    const long = { ...air, days: 1100 };
    expect(of(2200, [{ ...long, emcPct: 18 }, long]).core).toEqual(of(1100, [long]).core);
    expect(of(1600, [long, { ...long, days: 500 }]).core.pct).toBe(
      of(1100, [
        { ...long, days: 600 },
        { ...long, days: 500 },
      ]).core.pct,
    );
    expect(of(1100, [long]).isAtMost).toBe(false);
    expect(of(1101, [long]).isAtMost).toBe(true);
  });

  test('the driest air that it met is the driest of all, and a dense board follows more slowly', () => {
    const airs = [12, 8, 10].map((emcPct) => ({ ...air, emcPct }));
    const by = (basicSpecificGravity: number | null) => driestMet(54, { basicSpecificGravity }, airs)!;
    expect(by(0.5)).toMatchObject({ emcPct: 8, sdPct: 0.7 });
    expect(by(null)).toEqual(by(0.5));
    expect(by(0.8).followedPct).toBeGreaterThan(by(0.4).followedPct!);
  });
});

// The figures: standard deviations of what is expected, doubted from 2.3 on (Box 1980, from memory).
describe('what speaks against a first round', () => {
  const about = (pct: number, more = {}) => ({ pct, logSd: 0.2, airSdPct: 0, ...more });
  const drying = { shell: about(20), average: about(26), core: about(30), emcPct: 12 };
  const against = (
    of: Reading[],
    prior: NonNullable<BoardEvidence['prior']>,
    kind: 'outdoors' | 'shop' = 'shop',
  ) =>
    firstRoundSuspicion(
      of.map((each, index) => ({ index, reading: each, mcPct: each.raw, standardUncertaintyPct: 0.5 })),
      { prior, place: { name: 'here', kind, emcPct: 12, month: 5 } },
    );

  test('is nothing without readings', () => {
    expect(against([], drying)).toBeNull();
  });

  test('is the depth that is furthest off, be it the only one that is', () => {
    const soon = against(readings([20, 20.2], [18, 18.2]), drying)!;
    expect(soon).toMatchObject({
      rule: 'dry-too-soon',
      severity: 'questionable',
      why: { facts: { depth: 'core' } },
    });
    expect(against(averages([15, 15.2, 15.1]), drying)).toMatchObject({
      why: { facts: { depth: 'average' } },
    });
    expect(against(readings([20, 20.2], [30, 30.2]), drying)).toBeNull();
  });

  // 8 chances in 10 lie within 1.2816 standard deviations of a normal value: of the pace, 18 points times
  // 1 - exp(-0.256) below and exp(0.256) - 1 above; of the air, 1 point.
  test('says what would have been likely', () => {
    const { why } = against(readings([], [18, 18.2]), drying)!;
    expect(why.facts?.expectedInterval).toEqual({
      minPct: expect.closeTo(30 - Math.hypot(4.07, 1.28), 1),
      maxPct: expect.closeTo(30 + Math.hypot(5.26, 1.28), 1),
    });
  });

  test('is no pace that is two standard deviations faster, or a wetter start that explains it', () => {
    const fast = { ...drying, core: about(30, { logSd: 0.5 }) };
    expect(against(readings([], [18.6, 18.7]), fast)).toBeNull();
    expect(against(readings([], [16.2, 16.3]), fast)).not.toBeNull();
    const dry = { ...drying, core: about(20) };
    expect(against(readings([], [28, 28.2]), dry)).toMatchObject({ rule: 'wet-too-long' });
    expect(against(readings([], [28, 28.2]), { ...dry, unmodeledLog: Math.LN2 })).toBeNull();
  });

  test('is not that it is wet while there may be free water, from 28% on', () => {
    const at = (pct: number) => against(readings([], [90, 91]), { ...drying, core: about(pct) });
    expect(at(28)).toBeNull();
    expect(at(27.9)).toMatchObject({ rule: 'wet-too-long', severity: 'questionable' });
  });

  test('is rain where it may rain', () => {
    const dry = { ...drying, core: about(14) };
    const doOf = (kind: 'outdoors' | 'shop') => against(readings([], [28, 28.2]), dry, kind)?.whatToDo.code;
    expect(doOf('outdoors')).toBe('suspicion.wet-too-long.rain.do');
    expect(doOf('shop')).toBe('suspicion.wet-too-long.do');
  });

  test('may be short pins, unless the core was read on a cut or at a known depth', () => {
    const core = (more: Partial<Reading>) =>
      against([reading(1, 'shell', 20), reading(2, 'core', 15, more), reading(3, 'core', 15.2, more)], drying)
        ?.whatToDo.code;
    const spot = { depth: 'core', depthMm: 27, fromEndMm: 1000 } as const;
    expect(core({ depthFrom: 'plan' })).toBe('suspicion.dry-too-soon.pins.do');
    expect(core({ depthFrom: 'plan', spot: { ...spot, face: 'fresh-cut' } })).toBe(
      'suspicion.dry-too-soon.do',
    );
    expect(core({ depthFrom: 'pins' })).toBe('suspicion.dry-too-soon.do');
  });
});

test('what is no reading is not the round’s', () => {
  const prior = priorNow(54, woodOf('oak-white'), summer(60));
  const judged = judge([...readings([14, 14], [14.5, 14.5]), reading(9, 'core', -4)], 54, { prior }).readings;
  expect(rules(judged)[0]).toContain('dry-too-soon');
  expect(rules(judged)[4]).toContain('not-a-reading');
  expect(rules(judged)[4]).not.toContain('dry-too-soon');
});
