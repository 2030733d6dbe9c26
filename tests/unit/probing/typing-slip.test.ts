/** Which values no pin reading of lumber has, and what is ordinary: common practice, no source. */
import { describe, expect, test } from 'vitest';
import { intendedValue, meantBy } from '../../../shared-core/probing/readings/typing-slip.ts';
import { message } from '../../../shared-core/words/message.ts';

describe('what was meant, where the decimal point is lost or misplaced', () => {
  test.each([
    // Beside the board's others, whatever fits them.
    [126, [12.4, 12.7], 12.6],
    [1260, [12.4, 12.7], 12.6],
    [1.26, [12.4, 12.7], 12.6],
    [0.126, [12.4, 12.7], 12.6],
    [4.5, [46, 47], 45],
    [126, [30, 31], null],
    [80, [5], 8],
    // Alone, what lumber ordinarily reads: 5 to 40 %.
    [126, [], 12.6],
    [400, [], 40],
    [450, [], null],
    [500, [], 5],
    [0.4, [], 40],
    [4.5, [], null],
    // No value of wood at all.
    [0, [], null],
    [-126, [12.5], null],
    [Number.NaN, [12.5], null],
  ] as const)('%d typed, others %j: %s', (typed, others, meant) => {
    expect(intendedValue(typed, others)).toBe(meant);
  });

  test('5 to 60% is no slip, even where ten times or a tenth of it would fit the others', () => {
    for (const [typed, others] of [
      [5, 50],
      [5.5, 55],
      [60, 6],
    ] as const)
      expect(intendedValue(typed, [others])).toBeNull();
    expect(intendedValue(4.9, [49])).toBe(49);
    expect(intendedValue(61, [6])).toBe(6.1);
  });

  test('it fits the others from three fifths of them to five thirds', () => {
    expect([120, 121].map((typed) => intendedValue(typed, [20]))).toEqual([null, 12.1]);
    expect([166, 167].map((typed) => intendedValue(typed, [10]))).toEqual([16.6, null]);
  });

  test('a board that is wet through reads above 60% without a slip', () => {
    expect(intendedValue(82, [75, 80, 85])).toBeNull();
  });
});

describe('the value that was meant by a reading', () => {
  const slip = (facts: Record<string, number>) =>
    ({
      rule: 'typing-slip',
      severity: 'refused',
      why: { code: 'suspicion.typing-slip', facts },
      whatToDo: message('suspicion.near-end.do', { clearDistanceMm: 300 }),
    }) as const;
  const end = {
    rule: 'near-end',
    severity: 'questionable',
    why: message('suspicion.near-end', { fromEndDistanceMm: 100 }),
    whatToDo: message('suspicion.near-end.do', { clearDistanceMm: 300 }),
  } as const;

  test('is offered in its unit, whatever else speaks against it', () => {
    const given = slip({ rawPct: 126, rawMeantPct: 12.6 });
    expect(meantBy({ excluded: null, suspicions: [end, given] })).toBe(12.6);
    expect(meantBy({ excluded: null, suspicions: [slip({ rawOhm: 1, rawMeantOhm: 1e6 })] })).toBe(1e6);
  });

  test('is offered of no other reading, nor of one that is excluded', () => {
    expect(meantBy({ excluded: null, suspicions: [end] })).toBeNull();
    expect(meantBy({ excluded: null, suspicions: [] })).toBeNull();
    const given = slip({ rawPct: 126, rawMeantPct: 12.6 });
    expect(meantBy({ excluded: { code: 'typing-slip' }, suspicions: [given] })).toBeNull();
  });
});
