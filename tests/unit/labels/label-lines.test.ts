import { describe, expect, test } from 'vitest';
import {
  type LabelContent,
  type LabelFinding,
  labelContentSchema,
  labelGist,
} from '../../../shared-core/labels/label.ts';
import type { LabelField } from '../../../shared-core/labels/label-field.ts';
import { labelLines } from '../../../shared-core/labels/label-lines.ts';
import { german } from '../../../shared-core/words/de/index.ts';
import { createWords } from '../../../shared-core/words/words.ts';
import { aFinding, aLabel, wordsIn } from './a-label.ts';

/** The whole form of each line. */
const byField = (content: LabelContent, words = wordsIn('metric'), fields?: readonly LabelField[]) =>
  Object.fromEntries(labelLines(content, words, fields).map(({ field, forms: [whole] }) => [field, whole]));

const linesOf = (finding: Partial<LabelFinding>) =>
  byField({ ...aLabel, latest: { ...aFinding, ...finding } });

/** How exact the MC of a label is, and its shell and core: the details that come last. */
const exactnessOf = (finding: Partial<LabelFinding>) => linesOf(finding).likely;
const shellCoreOf = (finding: Partial<LabelFinding>) => linesOf(finding)['shell-core'];

describe('what a label shows', () => {
  test('of a probed board: all that there is, the most important first', () => {
    const lines = labelLines(aLabel, wordsIn('metric'));
    expect(lines.map(({ field, forms }) => [field, ...forms])).toEqual([
      ['code', 'OAK-07'],
      ['call', 'Bring in', 'B'],
      ['mc', '12.4%'],
      ['day', 'Mar 12, 2026'],
      ['species', 'Northern red oak'],
      ['size', '27 mm × 180 mm × 2.4 m', '27 mm × 180 mm', '27 mm'],
      ['use', 'Furniture and cabinets, heated rooms', 'Furniture and cabinets'],
      ['likely', 'Likely 11.6–13.2%', ''],
      ['shell-core', 'Shell 11.2%, core 13.1%', ''],
    ]);
    expect(lines.flatMap(({ mark }) => mark ?? [])).toEqual([{ shape: 'house', filled: false }]);
  });

  test('the fields that were chosen, in their order', () => {
    const chosen = ['sawn', 'code', 'place', 'thickness', 'target', 'stack', 'log'] as const;
    expect(Object.entries(byField(aLabel, wordsIn('metric'), chosen))).toEqual([
      ['sawn', 'Sawn May 2, 2024'],
      ['code', 'OAK-07'],
      ['place', 'Pole shed'],
      ['thickness', '27 mm'],
      ['target', 'Target 6–8%'],
      ['stack', 'North stack'],
      ['log', 'Log B'],
    ]);
    expect(Object.keys(byField({ ...aLabel, sawnOn: null, log: '' }, wordsIn('metric'), chosen))).toEqual([
      'code',
      'place',
      'thickness',
      'target',
      'stack',
    ]);
  });

  test('of a board that no round has reached: no readings, and no call', () => {
    const lines = byField({ ...aLabel, latest: null });
    expect(lines.mc).toBe('No readings yet');
    expect(Object.keys(lines)).toEqual(['code', 'mc', 'species', 'size', 'use']);
  });

  test('of a board without a usable reading: that it was probed, and when', () => {
    const none = { averagePct: null, shellPct: null, corePct: null, lowPct: null, highPct: null };
    expect(linesOf({ ...none, call: 'probe-again' })).toMatchObject({
      mc: 'No usable reading',
      day: 'Mar 12, 2026',
      call: 'Probe again',
    });
    expect([exactnessOf(none), shellCoreOf(none)]).toEqual([undefined, undefined]);
  });

  test('which depth was not probed', () => {
    expect(shellCoreOf({ corePct: null })).toBe('Shell 11.2%, core not probed');
    expect(shellCoreOf({ shellPct: null })).toBe('Shell not probed, core 13.1%');
  });

  test('the shell once, where there is no average', () => {
    const alone = { averagePct: null, lowPct: null, highPct: null };
    expect(linesOf({ ...alone, corePct: null })).toMatchObject({
      mc: 'Shell 11.2%',
      'shell-core': 'Core not probed',
    });
    expect(linesOf(alone)).toMatchObject({ mc: 'Shell 11.2%', 'shell-core': 'Core 13.1%' });
  });

  test('no shell and no core where nobody knows how deep it was', () => {
    const unknown = { isDepthUnknown: true as const, corePct: null };
    const alone = { ...unknown, averagePct: null, lowPct: null, highPct: null };
    expect(linesOf(alone)).toMatchObject({ mc: '11.2%, depth unknown' });
    expect(linesOf(unknown)).toMatchObject({ mc: '12.4%, depth unknown' });
    expect(linesOf({ ...unknown, averageIs: 'estimated' })).toMatchObject({
      mc: 'About 12.4%, depth unknown',
    });
    expect([shellCoreOf(alone), shellCoreOf(unknown)]).toEqual([undefined, undefined]);
  });

  test('that what was read is questionable, and then no interval', () => {
    const questionable = { isQuestionable: true, lowPct: null, highPct: null, call: 'probe-again' } as const;
    expect(linesOf(questionable)).toMatchObject({ mc: '12.4%, questionable', day: 'Mar 12, 2026' });
    expect(exactnessOf(questionable)).toBeUndefined();
    expect(linesOf({ ...questionable, averagePct: null }).mc).toBe('Shell 11.2%, questionable');
    expect(linesOf({ ...questionable, isDepthUnknown: true }).mc).toBe('12.4%, depth unknown, questionable');
    expect(linesOf({ ...questionable, averagePct: null, shellPct: null }).mc).toBe('No usable reading');
    expect(linesOf({ isQuestionable: false }).mc).toBe('12.4%');
    const display = { locale: 'de-DE', timeZone: 'Europe/Berlin', units: 'metric', today: null } as const;
    const inGerman = createWords({ catalog: german, ...display });
    const latest = { ...aFinding, ...questionable };
    expect(byField({ ...aLabel, latest }, inGerman).mc).toBe('12,4\u00a0%, fraglich');
  });

  test('a printed label with the average is out of date once that is questionable', () => {
    const gistOf = (isQuestionable: boolean | undefined, fields?: readonly LabelField[]) =>
      labelGist({ ...aLabel, latest: { ...aFinding, isQuestionable } }, fields);
    expect(gistOf(true)).not.toBe(gistOf(false));
    // As it was hashed before labels said so.
    expect(gistOf(false)).toBe(labelGist({ ...aLabel, latest: aFinding }));
    expect(gistOf(true, ['code', 'call'])).toBe(gistOf(false, ['code', 'call']));
  });

  test('of a board whose width or length is not known: the sizes that are', () => {
    const sizeOf = (more: object) => byField({ ...aLabel, ...more }).size;
    expect(sizeOf({ widthMm: null })).toBe('27 mm × 2.4 m');
    expect(sizeOf({ widthMm: null, lengthMm: null })).toBe('27 mm');
  });

  // Wood Handbook, chapter 13: reliable from about 6 to 30 % MC, over 30 % only qualitative.
  test.each([
    [30.1, 'Over 30%: rough'],
    [30, 'Likely 11.6–13.2%'],
    [6, 'Likely 11.6–13.2%'],
    [5.9, 'Under 6%: rough'],
  ])('at %f %% MC, where pin meters are or are not reliable: %s', (averagePct, interval) => {
    expect(exactnessOf({ averagePct })).toBe(interval);
  });
});

describe('a label reads as its person reads everything else', () => {
  const thicknessIn = (thickness: { thicknessMm: number; quarters: number | null }) =>
    (['metric', 'imperial'] as const).map(
      (units) => byField({ ...aLabel, thickness }, wordsIn(units), ['code', 'thickness']).thickness,
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

  test('every size is in inches and feet where those are chosen', () => {
    expect(byField(aLabel, wordsIn('imperial')).size).toBe('1 1/16 in × 7 1/16 in × 7 ft 10 in');
  });

  test('8/4 stays 8/4', () => {
    expect(thicknessIn({ thicknessMm: 50.8, quarters: 8 })).toEqual(['8/4', '8/4']);
  });

  test('day and decimal mark are those of the region', () => {
    const { day, likely } = byField(aLabel, wordsIn('metric', 'en-DE'));
    expect([day, likely]).toEqual(['12 Mar 2026', 'Likely 11,6–13,2\u00a0%']);
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
