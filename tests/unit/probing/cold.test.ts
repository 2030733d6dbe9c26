import { describe, expect, test } from 'vitest';
import { judgeBoard } from '../../../shared-core/probing/calls/call.ts';
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
      /^Below freezing, published corrections differ by 1\.\d points, and the call turns on it\. Probe it on a milder day\.$/,
    );
    expect(reliable).not.toBeNull();
  });

  test('all others keep their call: a cold morning stays of use', () => {
    expect(judge(6.2, -5).call).toBe('ready');
    expect(judge(16, -5).call).toBe('keep-drying');
  });

  test('above freezing nothing is asked for', () => {
    expect(judge(9.6, 20).call).toBe('ready');
  });
});
