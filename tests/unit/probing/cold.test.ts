import { describe, expect, test } from 'vitest';
import type { Call } from '../../../shared-core/probing/calls/assessment.ts';
import { judgeBoard } from '../../../shared-core/probing/calls/call.ts';
import { turnedByCold } from '../../../shared-core/probing/calls/cold.ts';
import { inEnglish } from '../words/in-english.ts';
import { evidence, readings } from './a-board.ts';

const judge = (pct: number, woodTempC: number) =>
  judgeBoard(evidence(readings([pct, pct + 0.1], [pct, pct + 0.1], { woodTempC })));

// The corrections: Pfaff and Garrahan (1986), James (1988) and VTT 420 (2000). They make 9.9, 10.9 and 11.1 % of 8 % at
// 23 °F; up to 10 % is ready.
describe('below freezing', () => {
  test('a board that one published correction makes ready and another does not is read again on a milder day', () => {
    const { call, reasons, reliable } = judge(8, -5);
    expect(call).toBe('probe-again');
    expect(reasons).toHaveLength(1);
    expect(inEnglish(reasons[0])).toMatch(
      /^Below freezing, published corrections differ by 1\.\d points, and the call depends on which one is used\. Probe it on a milder day\.$/,
    );
    expect(reliable).not.toBeNull();
  });

  test('all others keep their call: a cold morning stays of use', () => {
    expect(judge(6.2, -5).call).toBe('ready');
    expect(judge(16, -5).call).toBe('keep-drying');
  });

  test('one cold reading among warm ones is enough for that', () => {
    const [first, ...others] = readings([8, 8.1], [8, 8.1], { woodTempC: -5 });
    const warm = { ...first!, raw: 10.3, woodTempC: 20 };
    expect(judgeBoard(evidence([warm, ...others])).reasons[0].code).toBe('call.cold');
  });

  test('turns no board that has no call, or is to be probed again anyway', () => {
    const cold = evidence(readings([8, 8.1], [8, 8.1], { woodTempC: -5 }));
    const counted = judgeBoard(cold).readings.map((reading) => ({
      reading,
      mcPct: reading.corrected.mcPct!,
      standardUncertaintyPct: reading.corrected.standardUncertaintyPct!,
    }));
    const known = { thicknessMm: 27, emcPct: 8, placeKind: 'shop', isNewHere: null, history: null } as const;
    const turned = (called: Call | null) => turnedByCold(called, counted, cold, known)?.code ?? null;
    expect(turned('ready')).toBe('call.cold');
    expect(turned('keep-drying')).toBe('call.cold');
    expect(turned('probe-again')).toBeNull();
    expect(turned(null)).toBeNull();
  });

  test('above freezing nothing is asked for', () => {
    expect(judge(9.6, 20).call).toBe('ready');
  });
});
