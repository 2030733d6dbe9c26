import { describe, expect, test } from 'vitest';
import { judgeBoard } from '../../../shared-core/probing/calls/call.ts';
import type { BoardEvidence } from '../../../shared-core/probing/readings/evidence.ts';
import type { Reading } from '../../../shared-core/probing/readings/reading.ts';
import { meantBy } from '../../../shared-core/probing/readings/typing-slip.ts';
import { priorNow } from '../../../shared-core/probing/suspicions/first-round.ts';
import { builtInEndUses, builtInSpecies } from '../../../shared-core/wood/species/built-in.ts';
import { expectWhole, inEnglish } from '../words/in-english.ts';
import { evidence, lastRound, readings, rules } from './a-board.ts';

/** A shed in summer; months of the middle United States. */
const summer = (days: number) => ({ days, airs: [{ days, emcPct: 12.6, tempC: 20 }] });
const gravityOf = (id: string): number =>
  builtInSpecies.find((each) => each.id === id)!.basicSpecificGravity!;
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
  const oak = priorNow(54, gravityOf('oak-white'), summer(60))!;
  const flat = readings([14, 14], [14.5, 14.5]);

  // The board: 54 mm white oak, sawn 60 days ago, with 14 and 14.5 % in shell and core.
  test('54 mm white oak, sawn 60 days ago: no such board is at 14% through', () => {
    expect(oak.core.pct).toBeGreaterThan(32);
    const { call, reasons, readings: judged } = judge(flat, 54, { prior: oak });
    expect(call).toBe('probe-again');
    expect(rules(judged).flat()).toContain('dry-too-soon');
    const said = reasons.map((each) => inEnglish(each)).join(' ');
    for (const reason of ['short pins', 'sawing date', 'species', 'fresh crosscut'])
      expect(said.toLowerCase()).toContain(reason);
    expectWhole(reasons);
    // Without the check the same round is ready.
    expect(judge(flat, 54, {}).call).toBe('ready');
  });

  test('the same board after two years is believed', () => {
    const { call } = judge(flat, 54, { prior: priorNow(54, gravityOf('oak-white'), summer(730)) });
    expect(call).toBe('ready');
  });

  test('thin boards of a light wood dry so far in a summer', () => {
    const prior = priorNow(25, gravityOf('pine-eastern-white'), summer(90));
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

  test('air that is known roughly gives it the benefit of that doubt', () => {
    const dry = readings([7.5, 7.6], [7.6, 7.7]);
    const rulesAt = (sdPct: number) => rules(judge(dry, 27, { driestAir: { emcPct: 11.2, sdPct } }).readings);
    expect(rulesAt(0.5).flat()).toContain('drier-than-its-air');
    expect(rulesAt(1.5).flat()).toEqual([]);
  });

  test('a round before that was not believed does not make it likelier', () => {
    const later = judge(flat, 54, { prior: oak }, lastRound(14, 14.4, '2026-05-01T10:00:00Z'));
    expect(rules(later.readings).flat()).toContain('dry-too-soon');
  });
});

describe('what a board should have before any reading', () => {
  test('falls with the days, and is unknown without air, specific gravity or a day of sawing not long ago', () => {
    const at = (days: number) => priorNow(27, 0.5, summer(days))!.average.pct;
    expect(at(200)).toBeLessThan(at(30));
    expect(priorNow(27, null, summer(30))).toBeNull();
    expect(priorNow(27, 0.5, { days: 30, airs: [] })).toBeNull();
    expect(priorNow(27, 0.5, summer(2000))).toBeNull();
  });
});

// Common practice, no source: lumber that was under a roof for a year is not wet through, and a decimal point is soon lost.
describe('a first round typed without the decimal point, where no board can be so wet', () => {
  const inches = 25.4;
  const slipped = readings([98, 101], [112, 99]);
  const dried = priorNow(inches, gravityOf('walnut-black'), summer(400))!;

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
    ['sawn a week ago', priorNow(inches, gravityOf('walnut-black'), summer(7))],
    ['8/4 white oak after two months', priorNow(54, gravityOf('oak-white'), summer(60))],
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
