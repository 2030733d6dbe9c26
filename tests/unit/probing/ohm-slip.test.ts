import { describe, expect, test } from 'vitest';
import { judgeBoard } from '../../../shared-core/probing/calls/call.ts';
import type { Reading } from '../../../shared-core/probing/readings/reading.ts';
import { meantBy } from '../../../shared-core/probing/readings/typing-slip.ts';
import { log10OhmsAt } from '../../../shared-core/wood/moisture/resistance.ts';
import { resistanceCurves } from '../../../shared-core/wood/moisture/resistance-curves.ts';
import { message } from '../../../shared-core/words/message.ts';
import { evidence, lastRound, reading, rules } from './a-board.ts';

const judge = (...[of, more]: Parameters<typeof evidence>) =>
  judgeBoard(evidence(of, { typedBasis: { scale: { kind: 'ohms' }, range: null }, ...more })).readings;

/** The resistance of Douglas-fir of that MC at the temperature of the published curve (James 1988, Table 1). */
const ohmsAt = (mcPct: number): number =>
  Math.round(10 ** log10OhmsAt(resistanceCurves.get('douglas-fir-coast')!, mcPct).log10Ohms);
const typed = (id: number, depth: 'shell' | 'core', raw: number, more: Partial<Reading> = {}) =>
  reading(id, depth, raw, { unit: 'ohm', woodTempC: 26.7, ...more });

describe('a typed resistance', () => {
  test('ten times too small beside two others of its depth is questionable, and the right one is offered', () => {
    const odd = ohmsAt(10) / 10;
    const judged = judge([
      typed(1, 'shell', odd),
      typed(2, 'shell', ohmsAt(10)),
      typed(3, 'shell', ohmsAt(10.2)),
    ]);
    expect(judged[0]!.suspicions.filter(({ severity }) => severity !== 'note')).toMatchObject([
      {
        rule: 'typing-slip',
        severity: 'questionable',
        why: message('suspicion.typing-slip.ohm', { rawOhm: odd, rawMeantOhm: ohmsAt(10) }),
        whatToDo: message('suspicion.typing-slip.ohm.do', { rawMeantOhm: ohmsAt(10) }),
      },
    ]);
    expect(meantBy(judged[0]!)).toBe(ohmsAt(10));
    expect(rules(judged).slice(1).flat()).not.toContain('typing-slip');
  });

  test('with a wrong prefix, a thousand times too large, is told by the others', () => {
    const odd = ohmsAt(12) * 1000;
    const judged = judge([
      typed(1, 'shell', odd),
      typed(2, 'shell', ohmsAt(12)),
      typed(3, 'shell', ohmsAt(12.3)),
    ]);
    expect(meantBy(judged[0]!)).toBe(ohmsAt(12));
  });

  // A point missed, two digits dropped, or a wrong prefix: common practice, no source.
  test.each([1, -1, 2, -2, 3, -3, 6, -6])('10 to the %d too large is told by the others', (power) => {
    const odd = Number((ohmsAt(10) * 10 ** power).toPrecision(12));
    const others = [typed(2, 'shell', ohmsAt(10)), typed(3, 'shell', ohmsAt(10.2))];
    const [judged] = judge([typed(1, 'shell', odd), ...others]);
    expect(meantBy(judged!)).toBe(ohmsAt(10));
    expect(rules(judge(others)).flat()).not.toContain('typing-slip');
  });

  test('as far from the others as sound readings are is none, even if a tenth fits better', () => {
    // 8.2 % is about a point above them; ten times as many ohms are 6.7 %.
    const judged = judge([
      typed(1, 'shell', ohmsAt(8.2)),
      typed(2, 'shell', ohmsAt(7)),
      typed(3, 'shell', ohmsAt(7.1)),
    ]);
    expect(rules(judged).flat()).not.toContain('typing-slip');
  });

  test('alone, of wood that can be so, is none: neither an excluded reading, nor one of another depth tells', () => {
    const odd = typed(1, 'core', ohmsAt(10) / 10);
    const others = [typed(2, 'core', ohmsAt(10)), typed(3, 'core', ohmsAt(10.2))];
    expect(rules(judge([odd]))[0]).not.toContain('typing-slip');
    const excluded = others.map((each) => ({ ...each, excluded: { code: 'defect' } as const }));
    expect(rules(judge([odd, ...excluded]))[0]).not.toContain('typing-slip');
    const shells = [typed(2, 'shell', ohmsAt(10)), typed(3, 'shell', ohmsAt(10.2))];
    expect(rules(judge([odd, ...shells]))[0]).not.toContain('typing-slip');
    const previous = lastRound(10, 10, '2026-05-19T10:00:00Z');
    expect(rules(judge([odd], { previous }))[0]).not.toContain('typing-slip');
  });

  // At 2.3 TΩ wood would be at 4 %: drier than lumber is. A thousandth of that is 8.7 %, a millionth 19.8 %.
  test('that no lumber reads is told by any other reading, else by the last round, else by what lumber reads', () => {
    const odd = typed(1, 'shell', 2.31e12);
    expect(meantBy(judge([odd])[0]!)).toBe(2.31e11);
    const wet = { previous: lastRound(19, 20.5, '2026-05-19T10:00:00Z') };
    expect(meantBy(judge([odd], wet)[0]!)).toBe(2.31e6);
    const beside = [typed(2, 'core', ohmsAt(10.2)), typed(3, 'core', ohmsAt(10.4))];
    const [judged] = judge([odd, ...beside], wet);
    expect(meantBy(judged!)).toBe(2.31e9);
    expect(judged!.suspicions).toMatchObject([{ rule: 'typing-slip', severity: 'refused' }]);
    const none = { previous: lastRound(29, 31, '2026-05-19T10:00:00Z') };
    expect(rules(judge([odd], none))[0]).not.toContain('typing-slip');
  });

  test('that no lumber reads, with nothing else known, is meant as what lumber ordinarily reads', () => {
    // A hundred times as much would be some 48 %, a thousand times 39 %.
    const [judged] = judge([typed(1, 'shell', ohmsAt(39) / 1000)]);
    expect(meantBy(judged!)).toBe(ohmsAt(39));
  });

  test('that jumped since the last round too is asked about for both, and not as an odd one', () => {
    const previous = lastRound(10, 10, '2026-05-20T10:00:00Z');
    const judged = judge(
      [typed(1, 'core', ohmsAt(10) / 1000), typed(2, 'core', ohmsAt(10)), typed(3, 'core', ohmsAt(10.2))],
      { previous },
    );
    expect(rules(judged)[0]).toContain('typing-slip');
    expect(rules(judged)[0]).toContain('jump-since-last-round');
    expect(rules(judged)[0]).not.toContain('outlier-on-board');
  });

  test('beside one other is a note on the one typed later: either may be the slip', () => {
    const judged = judge([typed(1, 'shell', ohmsAt(10)), typed(2, 'shell', ohmsAt(10) / 10)]);
    expect(rules(judged)[0]).not.toContain('typing-slip');
    expect(judged[1]!.suspicions.find(({ rule }) => rule === 'typing-slip')).toMatchObject({
      severity: 'note',
    });
  });

  test('beside others that disagree is none: the odd one is asked about, and no sound one', () => {
    const judged = judge([
      typed(1, 'shell', ohmsAt(17.3)),
      typed(2, 'shell', ohmsAt(19.2)),
      typed(3, 'shell', ohmsAt(13)),
    ]);
    expect(rules(judged).map((found) => found.includes('typing-slip'))).toEqual([false, false, true]);
  });

  test('of the core is not measured by the shell: a drying board is wetter inside', () => {
    const judged = judge([
      typed(1, 'shell', ohmsAt(12)),
      typed(2, 'shell', ohmsAt(12.2)),
      typed(3, 'core', ohmsAt(17)),
      typed(4, 'core', ohmsAt(17.3)),
    ]);
    expect(rules(judged).flat()).not.toContain('typing-slip');
  });

  test('that no lumber reads is refused, and what lumber reads is offered', () => {
    // 12 typed with no prefix in mind, as ohms: 12 Ω are the pins on metal.
    const [judged] = judge([typed(1, 'shell', 12)]);
    expect(judged!.suspicions[0]).toMatchObject({ rule: 'typing-slip', severity: 'refused' });
    expect(judged!.counts).toBe(false);
  });

  test('of a meter that sends it is no slip of the hand', () => {
    const live = { how: 'settled', settled: true } as const;
    const others = [typed(2, 'shell', ohmsAt(10)), typed(3, 'shell', ohmsAt(10.2))];
    expect(rules(judge([typed(1, 'shell', ohmsAt(10) / 10, live), ...others]))[0]).not.toContain(
      'typing-slip',
    );
  });

  test('changed a lot since the last round is judged by its MC', () => {
    const previous = lastRound(16, 17, '2026-05-19T10:00:00Z');
    const at = (shellPct: number) =>
      judge([typed(1, 'shell', ohmsAt(shellPct)), typed(2, 'shell', ohmsAt(shellPct + 0.2))], { previous });
    // 10 and 16 % are two decades of ohms apart; 15.5 and 16 % are a fifth of one.
    expect(rules(at(15.5)).flat()).not.toContain('jump-since-last-round');
    expect(rules(at(27)).flat()).toContain('jump-since-last-round');
  });
});
