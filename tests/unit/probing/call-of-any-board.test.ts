/** Calls of every use and species, and of boards made at random: what no board may break, whatever it is. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { assessmentSchema } from '../../../shared-core/probing/calls/assessment.ts';
import { judgeBoard } from '../../../shared-core/probing/calls/call.ts';
import type { BoardEvidence } from '../../../shared-core/probing/readings/evidence.ts';
import type { MeterScale } from '../../../shared-core/wood/moisture/corrected.ts';
import { correctReading } from '../../../shared-core/wood/moisture/correction.ts';
import { isShownAbove } from '../../../shared-core/wood/moisture/shown-points.ts';
import { builtInEndUses, builtInSpecies } from '../../../shared-core/wood/species/built-in.ts';
import type { Species } from '../../../shared-core/wood/species/species.ts';
import { expectWhole, inEnglish } from '../words/in-english.ts';
import { evidence, interior, lastRound, plainSpecies, readings } from './a-board.ts';

describe('every use and species', () => {
  const usual: MeterScale = { kind: 'usual' };
  /** What the meter shows where the board has that MC. */
  const shownAt = (mcPct: number, species: Species): number => {
    let [low, high] = [0.1, 60];
    for (let pass = 0; pass < 60; pass += 1) {
      const value = (low + high) / 2;
      const { mcPct: found } = correctReading({ value, unit: 'pct', woodTempC: 20, species, scale: usual });
      if (found !== null && found < mcPct) low = value;
      else high = value;
    }
    return low;
  };

  test.each(builtInEndUses.map((endUse) => [endUse.name, endUse] as const))(
    'four perfect readings in the middle of the target are ready: %s',
    (_name, endUse) => {
      const middlePct = (endUse.minPct + endUse.maxPct) / 2;
      const notReady = builtInSpecies.filter((species) => {
        const shown = shownAt(middlePct, species);
        const given = evidence(readings([shown, shown], [shown, shown]), {
          species,
          endUse,
          place: { name: 'the shop', kind: 'shop', emcPct: middlePct, month: 5 },
          typedBasis: { scale: usual, range: null, meterSdPct: 0.85 },
        });
        return judgeBoard(given).call !== 'ready';
      });
      expect(notReady.map(({ name }) => name)).toEqual([]);
    },
  );
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
    basicSpecificGravity: fc.option(fc.double({ min: 0.05, max: 1.4, noNaN: true })),
    before: fc.option(fc.double({ min: 0, max: 150, noNaN: true })),
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
    basicSpecificGravity,
    before,
  }: typeof anyEvidence extends fc.Arbitrary<infer T> ? T : never): BoardEvidence =>
    evidence(readings(shell, core, { woodTempC }), {
      place: { name: 'there', kind: kind as 'shop', emcPct, month: 5 },
      board: { thicknessMm: 27, lengthMm },
      endUse: { ...interior, minPct, maxPct: minPct + width },
      species: { ...plainSpecies, basicSpecificGravity },
      previous:
        before === null ? null : { ...lastRound(before, before + 3, '2026-05-01T10:00:00Z'), moved: false },
    });

  test('there is a call, its first reason has a number, and every sentence is whole', () => {
    fc.assert(
      fc.property(anyEvidence, (given) => {
        const assessment = judgeBoard(build(given));
        assessmentSchema.parse(assessment);
        const { reasons, readings } = assessment;
        if (given.shell.length + given.core.length > 0) expect(inEnglish(reasons[0])).toMatch(/\d/);
        const suspicions = readings.flatMap((each) => each.suspicions);
        expectWhole([...reasons, ...suspicions.flatMap(({ why, whatToDo }) => [why, whatToDo])]);
      }),
    );
  });

  test('ready is never called outside the target, on fewer than two sound readings of either depth, or on questionable ones', () => {
    fc.assert(
      fc.property(anyEvidence, fc.double({ min: 4, max: 16, noNaN: true }), (given, about) => {
        const near = (values: number[]) => values.map((value) => about + value / 200);
        const judged = judgeBoard(build({ ...given, shell: near(given.shell), core: near(given.core) }));
        if (judged.call !== 'ready') return;
        const firm = judged.readings.filter(
          (each) => each.counts && each.suspicions.every((suspicion) => suspicion.severity === 'note'),
        );
        const least = given.lengthMm !== null && given.lengthMm < 750 ? 1 : 2;
        expect(firm.filter((each) => each.spot.depth === 'shell').length).toBeGreaterThanOrEqual(least);
        expect(firm.filter((each) => each.spot.depth === 'core').length).toBeGreaterThanOrEqual(least);
        const { averagePct } = judged.estimate!;
        expect(isShownAbove(given.minPct, averagePct)).toBe(false);
        expect(isShownAbove(averagePct, given.minPct + given.width)).toBe(false);
      }),
    );
  });

  test('the same evidence gives the same call, in any order of the readings', () => {
    fc.assert(
      fc.property(anyEvidence, (given) => {
        const there = build(given);
        const back = { ...there, readings: [...there.readings].reverse() };
        expect(judgeBoard(back).call).toBe(judgeBoard(there).call);
      }),
    );
  });
});
