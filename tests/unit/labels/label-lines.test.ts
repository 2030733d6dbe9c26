import { describe, expect, test } from 'vitest';
import { type LabelFinding, labelContentSchema } from '../../../shared-core/labels/label.ts';
import { labelLines } from '../../../shared-core/labels/label-lines.ts';
import { aFinding, aLabel, wordsIn } from './a-label.ts';

const linesOf = (finding: Partial<LabelFinding>) =>
  labelLines({ ...aLabel, latest: { ...aFinding, ...finding } }, wordsIn('metric'));

describe('what a label shows', () => {
  test('of a probed board: ID, species, thickness, MC with its day and interval, shell and core, call', () => {
    expect(labelLines(aLabel, wordsIn('metric'))).toEqual({
      code: 'OAK-07',
      speciesName: 'Northern red oak',
      thickness: '27 mm',
      mc: '12.4%',
      day: 'Mar 12, 2026',
      interval: 'Likely 11.6–13.2%',
      shellCore: 'Shell 11.2%, core 13.1%',
      call: { shape: 'house', filled: false, letter: 'B', word: 'Bring in' },
    });
  });

  test('of a board that no round has reached: no readings, and no call', () => {
    expect(labelLines({ ...aLabel, latest: null }, wordsIn('metric'))).toMatchObject({
      mc: 'No readings yet',
      day: '',
      interval: '',
      shellCore: '',
      call: null,
    });
  });

  test('of a board without a usable reading: that it was probed, and when', () => {
    const none = { averagePct: null, shellPct: null, corePct: null, lowPct: null, highPct: null };
    expect(linesOf({ ...none, call: 'probe-again' })).toMatchObject({
      mc: 'No usable reading',
      day: 'Mar 12, 2026',
      interval: '',
      shellCore: '',
      call: { word: 'Probe again' },
    });
  });

  test('which depth was not probed', () => {
    expect(linesOf({ corePct: null }).shellCore).toBe('Shell 11.2%, core not probed');
    expect(linesOf({ shellPct: null }).shellCore).toBe('Shell not probed, core 13.1%');
  });

  // Wood Handbook, chapter 13: reliable from about 6 to 30 % MC, over 30 % only qualitative.
  test.each([
    [30.1, 'Over 30%: rough'],
    [30, 'Likely 11.6–13.2%'],
    [6, 'Likely 11.6–13.2%'],
    [5.9, 'Under 6%: rough'],
  ])('at %f %% MC, where pin meters are or are not reliable: %s', (averagePct, interval) => {
    expect(linesOf({ averagePct }).interval).toBe(interval);
  });
});

describe('a label reads as its person reads everything else', () => {
  const thicknessIn = (thickness: { thicknessMm: number; quarters: number | null }) =>
    (['metric', 'imperial'] as const).map(
      (units) => labelLines({ ...aLabel, thickness }, wordsIn(units)).thickness,
    );

  // 1 in = 25.4 mm exactly (international inch, 1959).
  test.each([
    [9.5, '9.5 mm', '3/8 in'],
    [25.4, '25 mm', '1 in'],
    [27, '27 mm', '1 1/16 in'],
    [31.75, '32 mm', '1 1/4 in'],
    [54, '54 mm', '2 1/8 in'],
    [399.9, '400 mm', '15 3/4 in'],
  ])('%f mm is "%s" or "%s"', (thicknessMm, metric, imperial) => {
    expect(thicknessIn({ thicknessMm, quarters: null })).toEqual([metric, imperial]);
  });

  test('8/4 stays 8/4', () => {
    expect(thicknessIn({ thicknessMm: 50.8, quarters: 8 })).toEqual(['8/4', '8/4']);
  });

  test('day and decimal mark are those of the region', () => {
    expect(labelLines(aLabel, wordsIn('metric', 'en-DE'))).toMatchObject({
      day: '12 Mar 2026',
      interval: 'Likely 11,6–13,2\u00a0%',
    });
  });

  test('a reading late in the evening was taken on that day, not on the next one of UTC', () => {
    expect(linesOf({ at: '2026-03-13T04:30:00Z' }).day).toBe('Mar 12, 2026');
  });
});

describe('what makes no label', () => {
  const parsed = (more: object) => labelContentSchema.safeParse({ ...aLabel, ...more });

  test('the one above does', () => expect(parsed({})).toEqual({ success: true, data: aLabel }));

  test.each([Number.NaN, 0, -27, 2.9, 401])('a thickness of %f mm', (thicknessMm) => {
    expect(parsed({ thickness: { thicknessMm, quarters: null } }).success).toBe(false);
  });

  test.each([Number.NaN, Number.POSITIVE_INFINITY])('an MC of %f', (averagePct) => {
    expect(parsed({ latest: { ...aFinding, averagePct } }).success).toBe(false);
  });
});
