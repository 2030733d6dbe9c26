import { describe, expect, test } from 'vitest';
import { type Assessment, assessmentSchema } from '../../../shared-core/probing/calls/assessment.ts';
import { judgeBoard } from '../../../shared-core/probing/calls/call.ts';
import type { BoardEvidence } from '../../../shared-core/probing/readings/evidence.ts';
import type { Reading } from '../../../shared-core/probing/readings/reading.ts';
import { EXTRA_SPOTS } from '../../../shared-core/probing/readings/spots.ts';
import { builtInEndUses } from '../../../shared-core/wood/species/built-in.ts';
import { message } from '../../../shared-core/words/message.ts';
import { expectWhole, inEnglish } from '../words/in-english.ts';
import { evidence, interior, lastRound, plainSpecies, reading, readings, rules } from './a-board.ts';

const judge = (...args: Parameters<typeof evidence>): Assessment => {
  const made = judgeBoard(evidence(...args));
  expect(assessmentSchema.parse(made)).toEqual(made);
  return made;
};
const shed = { name: 'the open shed', kind: 'open-shed', emcPct: 13, month: 5 } as const;
const shop = { name: 'the shop', kind: 'shop', emcPct: 8, month: 5 } as const;

/** The target of `interior`. */
const targetRange = { minPct: 6, maxPct: 10 };
const averagePct = expect.any(Number);

describe('ready', () => {
  test('because the whole interval lies within the target, and shell and core are close', () => {
    const { call, reasons, estimate } = judge(readings([7.8, 8], [8.2, 8.4]));
    const { lowPct, highPct, likelyInterval } = estimate!;
    expect(call).toBe('ready');
    expect(reasons).toEqual([
      message('call.within-target', {
        averagePct: expect.closeTo(8.1, 1),
        targetRange,
        likelyInterval,
      }),
      message('call.difference-allowed', { differencePoints: expect.closeTo(0.4, 6), allowedPoints: 2 }),
    ]);
    expect(lowPct).toBeGreaterThan(6);
    expect(highPct).toBeLessThan(10);
  });

  test('though the difference is read a little above its limit: harm is unlikely, and it says how unlikely', () => {
    const { call, reasons } = judge(readings([6.6, 6.7], [9.2, 9.4]));
    expect(call).toBe('ready');
    expect(reasons.at(-1)).toEqual(
      message('call.difference-just-over', {
        // 9.3% less 6.7%, as both are shown.
        differencePoints: 2.6,
        allowedPoints: 2,
        unevenChancePct: expect.any(Number),
      }),
    );
    const { unevenChancePct } = reasons.at(-1)!.facts as { unevenChancePct: number };
    expect(unevenChancePct).toBeGreaterThan(0);
    expect(unevenChancePct).toBeLessThan(10);
    // The same readings, but nobody knows that the pins were as deep as planned.
    const planned = judge(readings([6.6, 6.7], [9.2, 9.4], { depthFrom: 'plan' }));
    expect(planned.call).toBe('probe-again');
    expect(planned.reasons[0].code).toBe('call.core-depth-unknown');
  });

  // 6 to 8 % for furniture, workable at 9 to 10 %: common practice, no source. No meter tells a board to ±1 %, so the
  // whole interval never fits such a target; what counts is that wood too wet to work is unlikely.
  const furniture = { ...interior, name: 'furniture', minPct: 6, maxPct: 8, tolerancePoints: 2 };
  test('in a target as narrow as the meter’s own uncertainty, wherever in it the average lies', () => {
    for (const pct of [6.2, 7, 7.9]) {
      const { call, reasons, estimate } = judge(readings([pct, pct], [pct, pct]), { endUse: furniture });
      expect(call).toBe('ready');
      expect(reasons[0].code).toBe('call.within-target');
      expect(estimate!.highPct - estimate!.lowPct).toBeGreaterThan(1.5);
    }
    expect(judge(readings([8.6, 8.6], [8.7, 8.7]), { endUse: furniture }).call).not.toBe('ready');
  });

  test('up to its limit as it is shown: no 8.0% is too wet for 6–8%', () => {
    const calls = Array.from({ length: 101 }, (_, step) => 7.5 + step / 100).map((pct) => {
      const { call, reasons, estimate } = judge(readings([pct, pct], [pct, pct]), { endUse: furniture });
      return { call, average: estimate!.averagePct, says: inEnglish(reasons[0]) };
    });
    const justOver = calls.filter(({ average }) => average > 8 && average < 8.05);
    expect(justOver.length).toBeGreaterThan(1);
    expect(new Set(justOver.map(({ call }) => call))).toEqual(new Set(['ready']));
    for (const { call, average, says } of calls.filter(({ average }) => average > 8.05)) {
      expect([call, average]).not.toEqual(['ready', average]);
      expect(says).toMatch(/ 8\.[1-9]%/);
    }
  });

  test('not where it may well be wetter than the use can take, though the average is in the target', () => {
    const strict = { ...furniture, tolerancePoints: 0.3 };
    const { call, reasons } = judge(readings([7.8, 7.8], [7.9, 7.9]), {
      endUse: strict,
      place: { ...shop, emcPct: 6 },
    });
    expect(call).toBe('keep-drying');
    expect(inEnglish(reasons[0])).toMatch(/^Average 7\.\d%\. Chance that it is above 8\.3%: \d\d%\.$/);
    expect(reasons.at(-1)).toEqual(message('call.more-will-not-help'));
    expect(judge(readings([7.8, 7.8], [7.9, 7.9]), { endUse: furniture }).call).toBe('ready');
  });

  test('at the wet side of the target it says how far the board will still shrink across its width', () => {
    // Wood Handbook, Table 4-3, red oak group's size of shrinkage; the change by chapter 13's formula.
    const species = { ...plainSpecies, radialPct: 4, tangentialPct: 8.6 };
    const wet = readings([9.5, 9.5], [9.7, 9.7]);
    const widthMm = 200;
    const last = (board: Partial<BoardEvidence['board']>, of = wet) =>
      judge(of, { species, board: { thicknessMm: 27, lengthMm: 3000, ...board } }).reasons.at(-1)!;
    expect(inEnglish(last({ widthMm, sawing: 'flat' }))).toBe(
      'Dried to 8.0%, it shrinks about 1 mm across its width.',
    );
    expect(last({ widthMm: 2 * widthMm, sawing: 'quarter' }).facts!.shrinkMm).toBeLessThan(1.2);
    // Half a millimeter is less than a tape shows.
    expect(last({ widthMm, sawing: 'quarter' }).code).not.toMatch(/will-shrink/);
    expect(inEnglish(last({}))).toBe('Dried to 8.0%, it shrinks about 0.5% of its width.');
    expect(last({ widthMm }, readings([7.8, 8], [8, 8.1])).code).toBe('call.difference-allowed');
  });

  test('far below the target where drier is fine, without its core: even a wetter core would be within', () => {
    const stock = {
      ...interior,
      name: 'air-dried stock',
      minPct: 12,
      maxPct: 15,
      minIsAdvice: true,
      maxShellCorePct: 4,
    };
    const average = (pct: number) =>
      [pct, pct + 0.2, pct - 0.2].map((raw, index) => reading(index + 1, 'average', raw));
    const at = (pct: number) =>
      judge(average(pct), {
        endUse: stock,
        place: { ...shed, kind: 'outdoors', emcPct: null },
        plan: { shell: 0, average: 3, core: 0 },
      });
    expect(at(8.7).call).toBe('ready');
    expect(at(8.7).reasons.map(({ code }) => code)).toEqual([
      'call.below-target-serves',
      'call.core-not-judged',
    ]);
    expect(at(14.4).call).not.toBe('ready');
  });

  test('below the target, where drier is fine', () => {
    const staging = { ...interior, name: 'staging', minPct: 13.5, maxPct: 16, minIsAdvice: true };
    const dry = readings([12.6, 12.7], [12.7, 12.8]);
    const { call, reasons } = judge(dry, { endUse: staging, place: shed });
    expect(call).toBe('ready');
    expect(reasons[0].code).toBe('call.below-target-serves');
    expect(judge(dry, { endUse: { ...staging, minIsAdvice: false }, place: shed }).call).toBe('too-dry');
  });

  test('firewood at 20 % or less has no lower limit', () => {
    const firewood = { ...interior, name: 'firewood', minPct: 0, maxPct: 20, maxShellCorePct: null };
    const { call, reasons } = judge(readings([5.5, 5.5], [6, 6]), { endUse: firewood });
    expect(call).toBe('ready');
    expect(reasons[0]).toMatchObject({
      code: 'call.within-target',
      facts: { targetRange: { minPct: 0, maxPct: 20 } },
    });
  });

  test('from readings that are all the same, it says at once to check that the meter is not on hold', () => {
    const same = judge(readings([7.8, 7.8], [7.8, 7.8]));
    expect(same.call).toBe('ready');
    expect(same.reasons.slice(1, 3).map(({ code }) => code)).toEqual([
      'suspicion.equal-values',
      'suspicion.equal-values.do',
    ]);
    const sound = judge(readings([7.8, 7.9], [7.8, 7.8]));
    expect(sound.reasons.map(({ code }) => code)).not.toContain('suspicion.equal-values');
  });

  test('one questionable reading that would not change it does not hold it up', () => {
    const near = reading(9, 'shell', 7.9, {
      spot: { depth: 'shell', depthMm: null, fromEndMm: 100, face: 'face' },
    });
    const { call, reasons } = judge([...readings([7.8, 8], [8.2, 8.4]), near]);
    expect(call).toBe('ready');
    expect(reasons.at(-1)).toEqual(
      message('call.questionable-unused', {
        questionable: 1,
        why: message('suspicion.near-end', { fromEndDistanceMm: 100 }),
      }),
    );
  });
});

describe('keep drying', () => {
  // Whether it dries on here or is to be brought in, its place decides: call-here.test.ts.
  test('of a wet board a large shell–core difference is what drying brings, and no fault', () => {
    const { call, reasons } = judge(readings([14, 14.4], [27, 27.4]));
    expect(call).toBe('keep-drying');
    expect(reasons).toContainEqual(
      message('call.gradient-of-drying', { differencePoints: expect.closeTo(13, 1) }),
    );
    // Too wet and even, there is nothing to say of it; in the target the same words would hide a fault.
    const codes = [
      judge(readings([16, 16.2], [16.4, 16.6])),
      judge(readings([7, 7.1], [10.3, 10.4])),
    ].flatMap((each) => each.reasons.map(({ code }) => code));
    expect(codes).not.toContain('call.gradient-of-drying');
    expect(codes).toContain('call.core-wetter');
  });

  test('because it is too wet', () => {
    const { call, reasons } = judge(readings([15, 15.2], [17, 17.3]));
    expect(call).toBe('keep-drying');
    expect(reasons).toEqual([message('call.too-wet', { averagePct: expect.closeTo(16.5, 0), targetRange })]);
  });

  test('because the core is still too much wetter than the shell', () => {
    const { call, reasons, estimate } = judge(readings([6.3, 6.4], [9.7, 9.8]));
    expect(call).toBe('keep-drying');
    expect(reasons).toEqual([
      message('call.core-wetter', {
        // 9.8% less 6.4%, as both are shown.
        differencePoints: 3.4,
        allowedPoints: 2,
        placeName: 'the shop',
      }),
      message('call.average-in-target', { averagePct: estimate!.averagePct, targetRange }),
    ]);
  });

  test('even when only the core was read: a shell cannot make 30 % dry enough', () => {
    expect(judge(readings([], [30])).call).toBe('keep-drying');
  });
});

describe('what can be relied on', () => {
  test('is the estimate without readings that do not change the call', () => {
    const near = reading(9, 'shell', 9.4, {
      spot: { depth: 'shell', depthMm: null, fromEndMm: 100, face: 'face' },
    });
    const { estimate, reliable } = judge([...readings([7.8, 8], [8.2, 8.4]), near]);
    expect(reliable).toEqual(judge(readings([7.8, 8], [8.2, 8.4])).estimate);
    expect(reliable!.averagePct).toBeLessThan(estimate!.averagePct);
  });

  test('is nothing where every reading is questionable, or one would change the call', () => {
    expect(judge(readings([13, 13.2], [13, 13.2], { settled: false }))).toMatchObject({
      estimate: { averagePct: expect.any(Number) },
      reliable: null,
    });
    expect(judge(readings([7.8, 8], [8.2, 8.3, 15])).reliable).toBeNull();
  });
});

describe('probe again', () => {
  test('because nothing was read', () => {
    expect(judge([])).toMatchObject({
      call: 'probe-again',
      reasons: [message('call.no-readings')],
      estimate: null,
    });
  });

  test('because too few of its readings are not questionable, and it says how many more and where', () => {
    const nearEnd = (id: number, depth: 'shell' | 'core') =>
      reading(id, depth, 8, { spot: { depth, depthMm: null, fromEndMm: 100, face: 'face' } });
    const { call, reasons } = judge([...readings([8], [8.2]), nearEnd(8, 'shell'), nearEnd(9, 'core')]);
    expect(call).toBe('probe-again');
    expect(reasons[0]).toEqual(
      message('call.too-few', {
        missing: [message('call.more-shell', { count: 1 }), message('call.more-core', { count: 1 })],
        spots: 1,
      }),
    );
    expect(inEnglish(reasons[0])).toBe('Need 1 more shell reading and 1 more core reading, at another spot.');
    expect(reasons[1]!.code).toBe('call.likely');
    const coreAlone = judge([...readings([8, 8.1], [8.2]), nearEnd(9, 'core')]);
    expect(inEnglish(coreAlone.reasons[0])).toBe('Need 1 more core reading, at another spot.');
    const shellAlone = judge([...readings([8], [8.2, 8.3]), nearEnd(9, 'shell')]);
    expect(inEnglish(shellAlone.reasons[0])).toBe('Need 1 more shell reading, at another spot.');
  });

  test('a short board has room for one spot only, and that is enough', () => {
    const board = { thicknessMm: 27, lengthMm: 500 };
    const spots = readings([8], [8.2], {}).map((each) => ({
      ...each,
      spot: { ...each.spot, fromEndMm: 250 },
    }));
    expect(judge(spots, { board }).call).toBe('ready');
    expect(judge(spots.slice(0, 1), { board }).reasons).toEqual([
      message('call.half-read', { read: 1, planned: 2 }),
    ]);
  });

  test('because two cores disagree and neither can be relied on', () => {
    const { call, reasons } = judge(readings([7.8, 8], [8.2, 12.4]));
    expect(call).toBe('probe-again');
    expect(reasons.at(-1)).toEqual(
      message('call.questionable-unused', {
        questionable: 2,
        why: message('suspicion.outlier-on-board.pair', {
          depth: 'core',
          onePct: expect.closeTo(8.2, 6),
          otherPct: expect.closeTo(12.4, 6),
          allowedPoints: expect.any(Number),
        }),
      }),
    );
  });

  test('because one questionable reading would change the call', () => {
    const { call, reasons, estimate } = judge(readings([7.8, 8], [8.2, 8.3, 15]));
    expect(call).toBe('probe-again');
    expect(reasons.slice(0, 2)).toEqual([
      message('call.would-change', { questionable: 1 }),
      message('call.would-be', {
        questionable: 1,
        callName: message('call.ready'),
        firmPct: expect.closeTo(8.1, 1),
        allPct: estimate!.averagePct,
      }),
    ]);
  });

  test('because it is too close to call, and more readings would change the call often enough', () => {
    const { call, reasons } = judge(readings([9.5, 11.2], [9.6, 11.3]));
    expect(call).toBe('probe-again');
    expect(reasons[0]).toEqual(
      message('call.too-close', { averagePct, targetRange, each: expect.any(Number) }),
    );
  });

  test('not where more readings would hardly change it: then the likelier side, its chance, and an oven-dry check', () => {
    const { call, reasons } = judge(readings([10.6, 10.6], [10.7, 10.7]), { place: shop });
    expect(call).toBe('keep-drying');
    const chance = reasons.find(({ code }) => code === 'call.chance-too-wet')!;
    expect(chance.facts!.sideChancePct).toBeGreaterThan(50);
    expect(chance.facts!.sideChancePct).toBeLessThan(90);
    expect(reasons.at(-1)).toEqual(message('call.more-will-not-help'));
    expect(judge(readings([13, 13], [13.1, 13.1])).reasons.map(({ code }) => code)).not.toContain(
      'call.chance-too-wet',
    );
  });

  test('because every reading was refused or excluded', () => {
    const frozen = judge(readings([24, 24], [24, 24], { woodTempC: -5 }));
    expect(frozen).toMatchObject({
      call: 'probe-again',
      estimate: null,
      reasons: [
        message('call.none-usable', {
          why: message('suspicion.frozen', {
            woodTempC: -5,
            frozenLimitPct: 22,
          }),
        }),
        message('suspicion.frozen.do'),
      ],
    });
    const excluded = judge(readings([8, 8], [8, 8], { excluded: { text: 'wrong board' } }));
    expect(excluded.reasons).toEqual([message('call.none-left')]);
  });

  test('because every reading is questionable', () => {
    const { call, reasons, estimate } = judge(
      readings([8, 8], [8.2, 8.3], { settled: false, how: 'at-once' }),
    );
    expect(call).toBe('probe-again');
    expect(reasons[0]).toEqual(message('call.all-questionable', { averagePct: estimate!.averagePct }));
  });

  test('because every reading is questionable, of a shell only where the depth is known', () => {
    const shell = readings([8, 8], [], { settled: false, how: 'at-once' });
    const rest = { board: { thicknessMm: 80, lengthMm: 3000 }, plan: { shell: 2, average: 0, core: 0 } };
    expect(judge(shell, rest).reasons[0]).toEqual(message('call.shell-questionable', { shellPct: 8 }));
    const unknown = shell.map((each) => ({
      ...each,
      depthFrom: 'plan' as const,
      spot: { ...each.spot, depthMm: null },
    }));
    expect(judge([], { ...rest, readings: unknown }).reasons[0]).toEqual(
      message('call.all-questionable', { averagePct: 8 }),
    );
  });
});

describe('no call yet', () => {
  const half = { read: 1, planned: 4 };

  test('while spots of the plan are still to be read, and it says how many are', () => {
    const { call, reasons, spotsRead, estimate } = judge(readings([8], []));
    expect(call).toBeNull();
    expect(reasons).toEqual([message('call.half-read', half)]);
    expect(inEnglish(reasons[0])).toBe('1 of 4 spots read, so no call.');
    expect(spotsRead).toEqual(half);
    expect(estimate!.averagePct).toBeGreaterThan(7);
    expect(judge(readings([7.8, 8], [8.2])).spotsRead).toEqual({ read: 3, planned: 4 });
    expect(judge(readings([7.8, 8], [8.2]))).toMatchObject({ reliable: { countedShell: 2, countedCore: 1 } });
    expect(judge(readings([7.8, 8], [8.2, 8.4])).spotsRead).toBeNull();
  });

  // One hole tells of one spot, however often it is read.
  describe('by readings at one spot', () => {
    const at = (spotIndex: number, id: number, raw: number) => reading(id, 'average', raw, { spotIndex });
    const plan = { shell: 0, average: 3, core: 0 };

    test('two of them are one spot, of a board that is read by its average', () => {
      const { call, spotsRead, readings: judged } = judge([at(0, 1, 8), at(0, 2, 8.1)], { plan });
      expect(call).toBeNull();
      expect(spotsRead).toEqual({ read: 1, planned: 3 });
      expect(rules(judged)).toEqual([[], ['same-spot']]);
    });

    test('two of three spots are not all of them', () => {
      const two = [at(0, 1, 8), at(1, 2, 8.1)];
      expect(judge(two, { plan })).toMatchObject({ call: null, spotsRead: { read: 2, planned: 3 } });
      expect(judge([...two, at(2, 3, 8)], { plan })).toMatchObject({ call: 'ready', spotsRead: null });
    });

    test('more readings elsewhere are each at a spot of their own', () => {
      const elsewhere = [at(0, 1, 8), at(EXTRA_SPOTS.average, 2, 8.1), at(EXTRA_SPOTS.average, 3, 8)];
      const { call, readings: judged } = judge(elsewhere, { plan });
      expect(call).toBe('ready');
      expect(rules(judged).flat()).toEqual([]);
    });

    test('a pair of shell and core read twice is a pair', () => {
      const twice = (depth: 'shell' | 'core', spotIndex: number) =>
        [8, 8.1].map((raw, index) => reading(10 * spotIndex + index + 1, depth, raw, { spotIndex }));
      const { call, spotsRead } = judge([...twice('shell', 0), ...twice('core', 1)]);
      expect(call).toBeNull();
      expect(spotsRead).toEqual({ read: 2, planned: 4 });
    });
  });

  test('nor for what speaks against a reading, which is said', () => {
    const { call, reasons } = judge(readings([8], [], { settled: false, how: 'at-once' }));
    expect(call).toBeNull();
    expect(reasons.map(({ code }) => code)).toEqual(['call.half-read', 'suspicion.not-settled']);
  });

  test('but where the spots read decide it whatever the others read: far too wet', () => {
    expect(judge(readings([24], []))).toMatchObject({ call: 'keep-drying', spotsRead: null });
    expect(judge(readings([9.5], [])).call).toBeNull();
  });

  test('nor of a thick board whose core is open, dry enough to be brought in: a wet core may check there', () => {
    expect(judge(readings([14.6, 14.8], []))).toMatchObject({
      call: null,
      spotsRead: { read: 2, planned: 4 },
    });
    expect(judge(readings([14.6, 14.8], [15])).call).toBe('keep-drying');
  });

  test('not where the core was skipped: its spots are not in the plan', () => {
    const plan = { shell: 2, average: 0, core: 0 };
    expect(judge(readings([8], []), { plan }).spotsRead).toEqual({ read: 1, planned: 2 });
    expect(judge(readings([8, 8.1], []), { plan }).call).not.toBeNull();
  });

  describe('in a later round', () => {
    const fullRound = lastRound(8, 8.2, '2026-05-06T10:00:00Z');

    test('the call of the round that read every spot holds, far too wet or not', () => {
      const { call, reasons, spotsRead } = judge(readings([8.1], []), { fullRound, previous: fullRound });
      expect(call).toBeNull();
      expect(reasons).toEqual([message('call.half-read-since', { ...half, probedOn: fullRound.takenAt })]);
      expect(inEnglish(reasons[0])).toMatch(/^1 of 4 spots read\. The call of May 6, 2026 still holds\.$/);
      expect(spotsRead).toEqual(half);
      const wet = lastRound(26, 34, '2026-05-06T10:00:00Z');
      expect(judge(readings([24], []), { fullRound: wet, previous: wet }).call).toBeNull();
    });

    test('that contradicts it, the board is to be probed again, for that reason', () => {
      // In the shop's air of 8 % no board goes from 8 to 14 % in two weeks.
      const both = judge(readings([14, 14.2], [14.4]), { fullRound, previous: null });
      expect(both).toMatchObject({ call: 'probe-again', spotsRead: null, reliable: null });
      expect(both.reasons[0]).toEqual(
        message('call.contradicts-full', { read: 3, planned: 4, probedOn: fullRound.takenAt }),
      );
      const jumped = judge(readings([14], []), { fullRound, previous: fullRound });
      expect(jumped.call).toBe('probe-again');
      expect(jumped.reasons.map(({ code }) => code)).toEqual([
        'call.contradicts-full',
        expect.stringMatching(/^suspicion\.jump\./),
      ]);
    });

    // Common practice, no source: what dries, dries; what was dry does not get wet within a day.
    test('a board wetter or drier by points than the day before contradicts it, from the first reading on', () => {
      const before = { ...lastRound(12, 13, '2026-05-19T10:00:00.000Z'), moved: false };
      const now = (...shell: number[]) =>
        judge(readings(shell, [shell[0]! + 1]), { fullRound: before, previous: null });
      expect(now(12.1, 12).call).toBeNull();
      expect(now(17, 17.2).call).toBe('probe-again');
      expect(now(8, 8.2).call).toBe('probe-again');
      expect(now(17, 17.2).reliable).toBeNull();
      expect(now(12.1, 12).reliable).toMatchObject({ countedShell: 2 });
    });

    test('the days between are allowed for: what the air can have done is no contradiction', () => {
      const wetter = { ...lastRound(15, 17, '2026-04-10T10:00:00Z'), moved: false };
      const next = (takenAt: string) =>
        judge(readings([12, 12.2], [12.6], { takenAt }), { fullRound: wetter, previous: null }).call;
      expect(next('2026-04-11T10:00:00.000Z')).toBe('probe-again');
      expect(next('2026-05-20T10:00:00.000Z')).toBeNull();
    });

    test('without a usable reading keeps the call before it; a full round replaces that call', () => {
      const excluded = { excluded: { text: 'wrong board' } };
      expect(judge(readings([8], [], excluded), { fullRound })).toMatchObject({
        call: null,
        spotsRead: { read: 0, planned: 4 },
      });
      expect(judge(readings([7.8, 8], [8.2, 8.4]), { fullRound }).call).toBe('ready');
    });
  });
});

// A meter that shows 5 % at the least, on wood that is about as dry.
describe('as dry as the meter shows', () => {
  const of = (id: string) => builtInEndUses.find((use) => use.id === id)!;
  const plan = { shell: 0, average: 3, core: 0 };
  const at = (...raws: number[]) => raws.map((raw, index) => reading(index + 1, 'average', raw));

  test.each([
    ['firewood', [4.6, 4.7, 4.5], 'ready'],
    ['firewood', [5, 5.1, 4.9], 'ready'],
    ['framing', [5, 5.1, 4.9], 'ready'],
    ['furniture', [4.6, 4.7, 4.5], 'too-dry'],
  ] as const)('%s at %s is %s, with the oven-dry check', (id, raws, expected) => {
    const { call, reasons } = judge(at(...raws), { plan, endUse: of(id) });
    expect(call).toBe(expected);
    expect(reasons.map((each) => inEnglish(each)).join(' ')).toContain('An oven-dry check');
    expectWhole(reasons);
  });
});

describe('too dry', () => {
  const siding = { ...interior, name: 'siding', minPct: 9, maxPct: 14 };
  test('is said plainly, with what to do: no reading makes it damper', () => {
    const { call, reasons } = judge(readings([6.4, 6.5], [6.6, 6.7]), { endUse: siding });
    expect(call).toBe('too-dry');
    expect(reasons[0]).toEqual(
      message('call.below-target', {
        averagePct: expect.closeTo(6.6, 0),
        targetRange: { minPct: 9, maxPct: 14 },
      }),
    );
  });

  test('by a little, with its chance and an oven-dry check', () => {
    const { call, reasons } = judge(readings([8.4, 8.4], [8.4, 8.5]), { endUse: siding });
    expect(call).toBe('too-dry');
    expect(reasons.map(({ code }) => code)).toEqual([
      'call.below-target',
      'call.likely',
      'call.chance-too-dry',
      'call.more-will-not-help',
    ]);
  });
});

/** Pins that are pushed to the planned depths, or as deep as they reach. */
describe('the core', () => {
  const beam = { thicknessMm: 54, lengthMm: 3000 };
  const endUse = { ...interior, name: 'beams', minPct: 10, maxPct: 15, maxShellCorePct: 2 };
  const at =
    (depthMm: number, face: Reading['spot']['face'] = 'face') =>
    (each: Reading) =>
      each.spot.depth === 'core' ? { ...each, spot: { ...each.spot, depthMm, face } } : each;
  const flat = readings([13, 13.1], [13.2, 13.3]);
  /** Short pins read what they reach, and are planned for no more. */
  const short = [13, 13.1, 13.2].map((pct, index) =>
    reading(index + 1, 'shell', pct, {
      spot: { depth: 'shell', depthMm: 8, fromEndMm: 1000, face: 'face' },
    }),
  );
  const plan = { shell: 2, average: 0, core: 0 };
  const judgeBeam = (of: Reading[], more: Partial<BoardEvidence> = {}) =>
    judge(of, { board: beam, endUse, place: shed, ...more });

  test('that no pins reached never makes a thick board ready', () => {
    const { call, reasons } = judgeBeam(short, { plan });
    expect(call).toBe('probe-again');
    expect(reasons).toEqual([message('call.core-not-reached')]);
    expect(judgeBeam(flat).call).toBe('ready');
  });

  test('that only the plan says was reached is one of unknown depth', () => {
    const { call, reasons } = judgeBeam(flat.map((each) => ({ ...each, depthFrom: 'plan' })));
    expect(call).toBe('probe-again');
    expect(reasons.map(({ code }) => code)).toEqual(['call.core-depth-unknown', 'call.average-in-target']);
  });

  test('is read in a fresh crosscut as well', () => {
    const cut = flat.map(at(27, 'fresh-cut'));
    expect(judgeBeam(cut)).toMatchObject({ call: 'ready', estimate: { inCore: 2 } });
  });

  // 0.8 and 1.28 standard deviations of 0.5 on either side: 8 chances in 10.
  test('may be known from history, with how sure that is', () => {
    const { call, reasons } = judgeBeam(short, {
      plan,
      profile: { differencePct: 0.8, differenceSdPct: 0.5 },
    });
    expect(call).toBe('ready');
    expect(inEnglish(reasons[1]!)).toBe(
      'Core not read. Forecast difference: likely 0.2–1.4 points. 2.0 points allowed.',
    );
    const doubtful = judgeBeam(short, { plan, profile: { differencePct: 1.8, differenceSdPct: 1.5 } });
    expect(doubtful.call).toBe('probe-again');
    expect(doubtful.reasons.map(({ code }) => code)).toEqual(['call.core-not-reached', 'call.may-be-uneven']);
    // The use's own limit, and no other beside it.
    expect(inEnglish(doubtful.reasons[1]!)).toMatch(
      /^Chance that shell and core differ too much for this use: \d\d%\. 2\.0 points allowed\.$/,
    );
  });

  test('read where the shell was planned leaves the shell open, as a person says how deep the pins were', () => {
    const inMiddle = [13, 13.2].map((raw, index) =>
      reading(index + 1, 'shell', raw, {
        spot: { depth: 'shell', depthMm: 27, fromEndMm: 1000, face: 'face' },
        depthFrom: 'person',
      }),
    );
    const shellAlone = { shell: 2, average: 0, core: 0 };
    const { call, spotsRead, reasons } = judgeBeam(inMiddle, { plan: shellAlone });
    expect(call).toBeNull();
    expect(spotsRead).toEqual({ read: 0, planned: 2 });
    expect(reasons.map(({ code }) => code)).not.toContain('call.more-will-not-help');
    const both = [...inMiddle, ...readings([12.6, 12.8], []).map((each) => ({ ...each, id: each.id + 2 }))];
    expect(judgeBeam(both, { plan: shellAlone }).call).toBe('ready');
  });

  test('that an extra reading of a thin board told is not said to be unread: the shell is', () => {
    const average = [1, 2, 3].map((id) => reading(id, 'average', 8));
    const extra = reading(4, 'average', 8.3, {
      spotIndex: EXTRA_SPOTS.average,
      spot: { depth: 'average', depthMm: 13.5, fromEndMm: null, face: 'face' },
      depthFrom: 'person',
    });
    const { call, reasons } = judge([...average, extra], { plan: { shell: 0, average: 3, core: 0 } });
    expect(call).toBe('ready');
    expect(reasons.map((each) => inEnglish(each))).toContain('Shell not read.');
    expect(reasons).not.toContainEqual(message('call.core-not-judged'));
  });

  // Common practice, no source: pins at a fifth to a third of a thin board read about its average.
  test('of a board up to 30 mm goes unjudged, and Ready says so', () => {
    const average = [1, 2, 3].map((id) => reading(id, 'average', 8));
    const { call, reasons } = judge(average, { plan: { shell: 0, average: 3, core: 0 } });
    expect(call).toBe('ready');
    expect(reasons.at(-1)).toEqual(message('call.core-not-judged'));
  });

  test('of a thin board is asked for where its air makes it much wetter than the shell', () => {
    const average = [1, 2, 3].map((id) => reading(id, 'average', 9.8));
    const { call, reasons } = judge(average, {
      plan: { shell: 0, average: 3, core: 0 },
      place: { ...shop, emcPct: 5 },
    });
    expect(call).toBe('probe-again');
    expect(reasons.map(({ code }) => code)).toEqual([
      'call.core-not-reached',
      'call.may-be-uneven',
      'call.average-in-target',
    ]);
  });

  // The round of a 4 in piece of ash with two shell spots, which once was Ready, and drier than both.
  test('of thick firewood is asked for as well: its average is not read', () => {
    const firewood = builtInEndUses.find(({ id }) => id === 'firewood')!;
    const damp = { ...shed, emcPct: 20 };
    const shells = (pct: number) => short.map((each) => ({ ...each, raw: pct }));
    const ofFirewood = (pct: number) => judgeBeam(shells(pct), { plan, endUse: firewood, place: damp });
    expect(ofFirewood(17)).toMatchObject({
      call: 'probe-again',
      reasons: [{ code: 'call.core-not-split' }],
    });
    expect(ofFirewood(17).estimate!.averagePct).toBeGreaterThan(16.8);
    expect(ofFirewood(28)).toMatchObject({ call: 'keep-drying', reasons: [{ code: 'call.shell-too-wet' }] });
  });

  // A split piece dries from its ends too, and nobody knows for how long it was whole.
  test('of thick firewood is known from no history, but from a fresh split', () => {
    const firewood = builtInEndUses.find(({ id }) => id === 'firewood')!;
    const profile = { differencePct: 0.8, differenceSdPct: 0.5 };
    expect(judgeBeam(short, { plan, endUse: firewood, profile }).reasons[0].code).toBe('call.core-not-split');
    const split = flat.map(at(27, 'fresh-split'));
    expect(judgeBeam(split, { endUse: firewood })).toMatchObject({ call: 'ready', estimate: { inCore: 2 } });
  });

  test('decides where the shell is near the limit: no more shell readings are asked for', () => {
    for (const pct of [9.6, 10, 12, 14, 15]) {
      const { call, reasons } = judgeBeam(
        short.map((each) => ({ ...each, raw: pct })),
        { plan },
      );
      expect(call).toBe('probe-again');
      expect(reasons[0].code).toBe('call.core-not-reached');
    }
  });

  test('unread leaves the average estimated, or unknown where that is wide; a shell far out of the target decides', () => {
    const of = (pct: number, emcPct: number) =>
      judgeBeam(
        short.map((each) => ({ ...each, raw: pct })),
        { plan, place: { ...shed, emcPct } },
      );
    expect(of(13, 12.5).estimate!.averageIs).toBe('estimated');
    expect(of(13.2, 12.5).estimate!.averagePct).toBeGreaterThan(13.2);
    expect(of(22, 13).estimate!.averageIs).toBe('unknown');
    expect(of(22, 13).reasons.map((each) => inEnglish(each))).toEqual([
      'Too wet: shell 22.0%. Target 10–15%.',
    ]);
    expect(of(6, 13).call).toBe('too-dry');
    expect(of(6, 13).reasons.map((each) => inEnglish(each))).toEqual(['Too dry: shell 6.0%. Target 10–15%.']);
  });
});

describe('what the stack or the disk says of a reading', () => {
  const why = message('suspicion.damaged');
  const says = (rule: 'apart-from-stack' | 'equal-values', depth: 'core' | null = null) => ({
    depth,
    suspicion: { rule, severity: 'questionable' as const, why, whatToDo: why },
  });
  const jumped = evidence(readings([13.8, 14.1], [14.2, 14.4]), {
    previous: { ...lastRound(8, 8.2, '2026-05-19T10:00:00Z'), moved: false },
  });

  test('the stack says more of the same suspicion than the last round, and of its depth alone', () => {
    expect(rules(judgeBoard(jumped).readings)).toEqual(Array(4).fill(['jump-since-last-round']));
    expect(rules(judgeBoard(jumped, [says('apart-from-stack')]).readings)).toEqual(
      Array(4).fill(['apart-from-stack']),
    );
    expect(rules(judgeBoard(jumped, [says('equal-values', 'core')]).readings)).toEqual([
      ...Array(2).fill(['jump-since-last-round']),
      ...Array(2).fill(['jump-since-last-round', 'equal-values']),
    ]);
  });

  test('a damaged reading is the reason where nothing else is left, and the stack adds nothing to it', () => {
    const damaged = {
      ...evidence([reading(1, 'shell', 8, { isDamaged: true })]),
      plan: { shell: 1, average: 0, core: 0 },
    };
    const judged = judgeBoard({ ...damaged, fullRound: null }, [says('equal-values')]);
    expect(rules(judged.readings)).toEqual([['damaged']]);
    expect(judged.reasons[0]).toEqual(message('call.none-usable', { why }));
  });

  test('what speaks against a reading that a person excluded is no reason', () => {
    const frozen = readings([24, 24], [24, 24], { woodTempC: -5, excluded: { text: 'wrong board' } });
    expect(judge(frozen).reasons).toEqual([message('call.none-left')]);
  });
});

describe('with a cheap remedy', () => {
  test('a temperature that nobody measured is named where the board is to be probed again, and only there', () => {
    const unknown = judge(readings([9.5, 11.2], [9.6, 11.3], { woodTempC: null }));
    expect(unknown.call).toBe('probe-again');
    expect(unknown.reasons.map(({ code }) => code)).toContain('suspicion.temperature-unknown');
    expect(unknown.reasons.at(-1)!.code).toMatch(/^suspicion\.temperature-unknown.*\.do$/);
    const wet = judge(readings([20, 20.2], [20.4, 20.5], { woodTempC: null }));
    expect(wet.call).toBe('keep-drying');
    expect(wet.reasons.map(({ code }) => code).join()).not.toMatch(/temperature-unknown/);
    expect(
      judge(readings([9.5, 11.2], [9.6, 11.3]))
        .reasons.map(({ code }) => code)
        .join(),
    ).not.toMatch(/temperature/);
  });

  test('one reading never makes a board ready', () => {
    const one = { plan: { shell: 0, average: 1, core: 0 } };
    const { call, reasons } = judge([reading(1, 'average', 8)], one);
    expect([call, reasons]).toEqual(['probe-again', [message('call.one-reading')]]);
    expect(judge([reading(1, 'average', 8), reading(2, 'average', 8.1)], one).call).toBe('ready');
  });

  test('a round of the shell alone does not replace a full one that read the core and was ready', () => {
    const fullRound = { ...lastRound(8, 8.2, '2026-05-06T10:00:00Z'), isReady: true };
    const shellOnly = { plan: { shell: 2, average: 0, core: 0 }, board: { thicknessMm: 54, lengthMm: 3000 } };
    const judgedAfter = (shellPct: number) =>
      judge(readings([shellPct, shellPct], []), { ...shellOnly, fullRound });
    expect(judgedAfter(8).reasons[0].code).toBe('call.half-read-since');
    expect(judge(readings([8, 8], []), shellOnly).reasons[0].code).not.toBe('call.half-read-since');
    // A wet shell is news.
    expect(judgedAfter(16).reasons[0].code).not.toBe('call.half-read-since');
  });
});
