import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Assessment, assessmentSchema } from '../../../shared-core/probing/calls/assessment.ts';
import { type BoardEvidence, judgeBoard } from '../../../shared-core/probing/calls/call.ts';
import { saidTemperature } from '../../../shared-core/units/said.ts';
import { evidence, interior, reading, readings } from './a-board.ts';

const judge = (...args: Parameters<typeof evidence>): Assessment => judgeBoard(evidence(...args));
const shed = { name: 'the open shed', kind: 'open-shed', emcPct: 13 } as const;
const shop = { name: 'the shop', kind: 'shop', emcPct: 8 } as const;

describe('ready', () => {
  test('because the whole interval lies within the range, and shell and core are close', () => {
    const { call, estimate } = judge(readings([7.8, 8], [8.2, 8.4]));
    expect(call.call).toBe('ready');
    expect(call.reasons[0]).toMatch(
      /^At 8\.1 % \(\d\.\d % to \d\.\d %\) it lies within .* 6\.0 % to 10\.0 %\.$/,
    );
    expect(call.reasons[1]).toBe('Shell and core differ by 0.4 %, and 2.0 % is allowed.');
    expect(estimate!.lowPct).toBeGreaterThan(6);
    expect(estimate!.highPct).toBeLessThan(10);
  });

  // 6 to 8 % for furniture: common practice, no source. A good reading is known to about ±1 %, so its interval
  // would never fit: the middle half of the range is asked for instead, and that is said.
  const furniture = { ...interior, name: 'furniture', minPct: 6, maxPct: 8 };
  test('in a range as narrow as the meter’s own uncertainty: in the middle half, and it says so', () => {
    const { call } = judge(readings([7.3, 7.3], [7.4, 7.4]), { endUse: furniture });
    expect(call.call).toBe('ready');
    expect(call.reasons[0]).toContain('middle half');
    expect(judge(readings([7.8, 7.8], [7.9, 7.9]), { endUse: furniture }).call.call).not.toBe('ready');
  });

  test('not where the temperature is unknown and the range is narrow: that is too vague', () => {
    const { call } = judge(readings([7, 7], [7.1, 7.1], { woodTempC: null }), {
      endUse: furniture,
      typedBasis: { basis: null, range: null },
    });
    expect(call.call).toBe('probe-again');
    expect(call.reasons.at(-1)).toContain('Measure the temperature of the wood');
  });

  test('firewood at 20 % or less has no lower limit', () => {
    const firewood = { ...interior, name: 'firewood', minPct: 0, maxPct: 20, maxShellCorePct: 50 };
    const { call } = judge(readings([5.5, 5.5], [6, 6]), { endUse: firewood });
    expect(call.call).toBe('ready');
    expect(call.reasons[0]).toContain('20.0 % or less');
  });

  test('one doubtful reading that would not change it does not hold it up', () => {
    const near = reading(9, 'shell', 7.9, {
      spot: { depth: 'shell', depthMm: null, fromEndMm: 100, face: 'face' },
    });
    const { call } = judge([...readings([7.8, 8], [8.2, 8.4]), near]);
    expect(call.call).toBe('ready');
    expect(call.reasons.at(-1)).toContain('1 reading in doubt');
  });
});

describe('keep drying', () => {
  test('because it is too wet, and the air here can still dry it', () => {
    const { call } = judge(readings([15, 15.2], [17, 17.3]));
    expect(call.call).toBe('keep-drying');
    expect(call.reasons[0]).toMatch(
      /^At 16\.\d % it is too wet for interior work, which wants 6\.0 % to 10\.0 %\.$/,
    );
    expect(call.reasons[1]).toContain('down to about 8.0 %');
  });

  test('because it is too wet, though the air here will not suffice in the end', () => {
    const { call } = judge(readings([18, 18.2], [22, 22.3]), { place: shed });
    expect(call.call).toBe('keep-drying');
    expect(call.reasons[1]).toContain('down to about 13.0 %; after that it must come into drier air');
  });

  test('because the core is still too far above the shell', () => {
    const { call } = judge(readings([6.6, 6.7], [9.2, 9.4]));
    expect(call.call).toBe('keep-drying');
    expect(call.reasons[0]).toMatch(
      /^The core is 2\.\d % wetter than the shell, and interior work allows 2\.0 %/,
    );
  });

  test('even when only the core was read: a shell cannot make 30 % dry enough', () => {
    expect(judge(readings([], [30])).call.call).toBe('keep-drying');
  });

  test('with the air not known, it says so', () => {
    const { call } = judge(readings([15, 15.2], [17, 17.3]), { place: { ...shop, emcPct: null } });
    expect(call.call).toBe('keep-drying');
    expect(call.reasons[1]).toContain('enter the air there');
  });
});

describe('bring in', () => {
  test('because it is as dry as its place makes it, and its use wants drier', () => {
    const { call } = judge(readings([13.2, 13.4], [13.8, 14]), { place: shed });
    expect(call.call).toBe('bring-in');
    expect(call.reasons[0]).toMatch(
      /^At 13\.\d % it is about as dry as the air in the open shed makes it in the month it was probed \(13\.0 %\)/,
    );
  });

  test('also when it is within a point and a half of that', () => {
    expect(judge(readings([14, 14], [14.6, 14.6]), { place: shed }).call.call).toBe('bring-in');
    expect(judge(readings([16, 16], [17.5, 17.6]), { place: shed }).call.call).toBe('keep-drying');
  });
});

describe('probe again', () => {
  test('because nothing was read', () => {
    expect(judge([]).call).toEqual({
      call: 'probe-again',
      reasons: ['Nothing was read on this board yet.'],
    });
    expect(judge([]).estimate).toBeNull();
  });

  test('because too few readings stand, and it says how many more and where', () => {
    const { call } = judge(readings([8], [8.2]));
    expect(call.call).toBe('probe-again');
    expect(call.reasons[0]).toBe(
      'Too few sound readings, 1 of the shell and 1 of the core: take 1 more at the shell and 1 more at the core, at two places along the board.',
    );
  });

  test('a short board has room for one place only, and that is enough', () => {
    const board = { thicknessMm: 27, lengthMm: 500 };
    const spots = readings([8], [8.2], {}).map((each) => ({
      ...each,
      spot: { ...each.spot, fromEndMm: 250 },
    }));
    expect(judge(spots, { board }).call.call).toBe('ready');
  });

  test('because two cores disagree and neither can be leaned on', () => {
    const { call } = judge(readings([7.8, 8], [8.2, 12.4]));
    expect(call.call).toBe('probe-again');
    expect(call.reasons.join(' ')).toContain('8.2 % and 12.4 %');
  });

  test('because one doubtful reading would overturn it', () => {
    const { call } = judge(readings([7.8, 8], [8.2, 8.3, 15]));
    expect(call.call).toBe('probe-again');
    expect(call.reasons[0]).toContain('1 doubtful reading');
  });

  test('because it is too close to call and more readings would tell', () => {
    const scattered = judge(readings([8.2, 9.9], [8.3, 10]));
    expect(scattered.call.call).toBe('probe-again');
    expect(scattered.call.reasons[0]).toMatch(
      /too close to call .* Take \d more at the shell and \d more at the core/,
    );
  });

  test('because it is too dry, said plainly', () => {
    const siding = { ...interior, name: 'siding', minPct: 9, maxPct: 14 };
    const { call } = judge(readings([6.4, 6.5], [6.6, 6.7]), { endUse: siding });
    expect(call.call).toBe('probe-again');
    expect(call.reasons[0]).toMatch(/^At 6\.\d % it is too dry for siding.*take up moisture/);
  });

  test('because every reading was refused or set aside', () => {
    const frozen = judge(readings([8, 8], [8, 8], { woodTempC: -5 }));
    expect(frozen.call.call).toBe('probe-again');
    expect(frozen.call.reasons[0]).toContain(`No reading counts. The wood is at ${saidTemperature(-5)}`);
    expect(frozen.estimate).toBeNull();
    const excluded = judge(readings([8, 8], [8, 8], { excluded: 'wrong board' }));
    expect(excluded.call.reasons[0]).toContain('set aside');
  });

  test('because every reading is doubtful', () => {
    const { call, estimate } = judge(readings([8, 8], [8.2, 8.3], { settled: false, how: 'at-once' }));
    expect(call.call).toBe('probe-again');
    expect(call.reasons[0]).toContain('Every reading is doubtful');
    expect(estimate).not.toBeNull();
  });
});

describe('whatever the evidence', () => {
  const anyEvidence = fc.record({
    shell: fc.array(fc.double({ min: -10, max: 200, noNaN: true }), { maxLength: 5 }),
    core: fc.array(fc.double({ min: -10, max: 200, noNaN: true }), { maxLength: 5 }),
    woodTempC: fc.option(fc.double({ min: -30, max: 70, noNaN: true })),
    emcPct: fc.option(fc.double({ min: 3, max: 25, noNaN: true })),
    kind: fc.constantFrom('outdoors', 'open-shed', 'shop', 'heated-room'),
    lengthMm: fc.option(fc.integer({ min: 50, max: 6000 })),
    minPct: fc.integer({ min: 0, max: 12 }),
    width: fc.integer({ min: 1, max: 20 }),
  });
  const build = ({
    shell,
    core,
    woodTempC,
    emcPct,
    kind,
    lengthMm,
    minPct,
    width,
  }: typeof anyEvidence extends fc.Arbitrary<infer T> ? T : never): BoardEvidence =>
    evidence(readings(shell, core, { woodTempC }), {
      place: { name: 'there', kind: kind as 'shop', emcPct },
      board: { thicknessMm: 27, lengthMm },
      endUse: { ...interior, minPct, maxPct: minPct + width },
    });

  test('there is a call, its first reason holds a number, and the whole is well-formed', () => {
    fc.assert(
      fc.property(anyEvidence, (given) => {
        const assessment = judgeBoard(build(given));
        assessmentSchema.parse(assessment);
        if (given.shell.length + given.core.length > 0) expect(assessment.call.reasons[0]).toMatch(/\d/);
        expect(assessment.call.reasons.join(' ')).not.toMatch(/NaN|undefined|null|Infinity/);
      }),
    );
  });

  test('ready is never said outside the range, on fewer than two sound readings of either depth, or on doubted ones', () => {
    fc.assert(
      fc.property(anyEvidence, fc.double({ min: 4, max: 16, noNaN: true }), (given, about) => {
        const near = (values: number[]) => values.map((value) => about + value / 200);
        const judged = judgeBoard(build({ ...given, shell: near(given.shell), core: near(given.core) }));
        if (judged.call.call !== 'ready') return;
        const firm = judged.readings.filter(
          (each) => each.counts && each.suspicions.every((suspicion) => suspicion.severity === 'note'),
        );
        const wanted = given.lengthMm !== null && given.lengthMm < 750 ? 1 : 2;
        expect(firm.filter((each) => each.spot.depth === 'shell').length).toBeGreaterThanOrEqual(wanted);
        expect(firm.filter((each) => each.spot.depth === 'core').length).toBeGreaterThanOrEqual(wanted);
        const { averagePct } = judged.estimate!;
        expect(averagePct).toBeGreaterThanOrEqual(given.minPct);
        expect(averagePct).toBeLessThanOrEqual(given.minPct + given.width);
      }),
    );
  });

  test('the same evidence gives the same call, in any order of the readings', () => {
    fc.assert(
      fc.property(anyEvidence, (given) => {
        const there = build(given);
        const back = { ...there, readings: [...there.readings].reverse() };
        expect(judgeBoard(back).call.call).toBe(judgeBoard(there).call.call);
      }),
    );
  });
});
