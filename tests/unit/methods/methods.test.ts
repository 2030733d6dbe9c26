import { globSync, readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { describe, expect, test } from 'vitest';
import { methodNumbers } from '../../../shared-core/methods/method-numbers.ts';
import type { MethodPart } from '../../../shared-core/methods/method-part.ts';
import { methodParts } from '../../../shared-core/methods/methods.ts';
import { resistanceCurves } from '../../../shared-core/wood/moisture/resistance-curves.ts';
import { builtInEndUses, builtInSpecies } from '../../../shared-core/wood/species/built-in.ts';
import { english } from '../../../shared-core/words/en/index.ts';
import { type Message, message } from '../../../shared-core/words/message.ts';

const parts = methodParts(builtInSpecies, builtInEndUses);
const partOf = (id: string): MethodPart => parts.find((part) => part.id === id)!;
const cells = parts.flatMap(({ tables }) => tables.flatMap(({ rows }) => rows.flat()));

describe('The methods page', () => {
  test('has each part once, and no empty one', () => {
    expect(new Set(parts.map(({ id }) => id)).size).toBe(parts.length);
    for (const { says, id } of parts) expect(says.length, id).toBeGreaterThan(0);
  });

  test('lists the source of every species, curve and use of the seeds', () => {
    for (const { source } of [...builtInSpecies, ...resistanceCurves.values(), ...builtInEndUses])
      expect(cells).toContain(source);
  });

  test('lists every figure that is marked as from memory, with what has it', () => {
    const memory = JSON.stringify(partOf('memory'));
    for (const { name, source } of [...builtInSpecies, ...resistanceCurves.values(), ...builtInEndUses])
      if (source.includes('from memory')) expect(memory, name).toContain(name);
    // Its shrinkage, its gravity and its coefficients were all seen, and it has no curve.
    expect(memory).not.toContain('Black cherry');
    // Its source has an initial, which ends no sentence.
    expect(memory).toContain('R. Wagenführ, Holzatlas');
  });

  test('shows the three temperature corrections side by side, which agree only at the temperature of the scale', () => {
    const [table] = partOf('correction').tables;
    expect(table!.heads).toHaveLength(4);
    const row = (tempC: number) =>
      table!.rows.find(([first]) => (first as Message).facts?.cellTempC === tempC)!.slice(1) as number[];
    for (const points of row(21)) expect(Math.abs(points)).toBeLessThan(0.05);
    const [james, pfaff, vtt] = row(0);
    // `temperature-correction` of James's Figure 5: +4.3 at 0 °C and 16 %; by the formula +2.8; 0.125 points a degree.
    expect(james).toBeCloseTo(4.3, 0);
    expect(pfaff).toBeCloseTo(2.8, 0);
    expect(vtt).toBeCloseTo(21.1 * 0.125, 1);
  });
});

/** What is exported as a number, or as a few of them, and is neither a prior nor a limit of a method. */
const NO_METHOD = [
  // Versions, files and tables of the program.
  'RULES_VERSION',
  'MOST_EPW_BYTES',
  'DEPTHS',
  'DAMAGED',
  'MOST_TYPED',
  'PAIRS',
  'EXTRA_SPOTS',
  'NEVER_OFF',
  // Mathematics.
  'Z_90',
  'MOST_MC_PCT',
  'SAME_EMC_PCT',
  // Shown in the sentences and tables of their parts.
  'ABOVE_MEANS',
  'AVERAGE_AT',
  'BOARD_SCORE',
  'CERTAINTY',
  'CHANGE_SCORE',
  'COLD_PER_K',
  'COOLED_RH',
  'COVERAGE',
  'DIFFERENCE_SCORE',
  'ENOUGH',
  'EXPONENTS',
  'FEWEST_BOARDS',
  'FEWEST_MATES',
  'LEAST_CHECKS',
  'LEAST_DRIFT_PCT',
  'LEAST_FALL',
  'LEAST_SHIFT_PCT',
  'LEAST_SPREAD_PCT',
  'LONGEST_DAYS',
  'MEAN_MARGIN_PCT',
  'MIDDLE_FROM',
  'MODEL_SCORE',
  'MOISTURE_GAIN',
  'MOST_COLD_PCT',
  'MOST_EXTRA',
  'OTHER_SPREAD',
  'OUTLIER_SCORE',
  'PART_HEATED_C',
  'pointCount',
  'PRIOR_BOARDS',
  'RING_ANGLE_DEG',
  'ROOM_SD',
  'ROOM_TEMP_C',
  'ROUND_SCORE',
  'SEASON_SHARE',
  'SHED_SD_PCT',
  'SLIP_ABOVE_PCT',
  'SLIP_BELOW_PCT',
  'STEADY_PCT',
  'SURE',
  'UNSURE_PCT',
  'USUAL_SCALE',
  'USUAL_TEMP_RANGE_C',
  'USUAL_SPREAD_PCT',
  'WINDOW_MS',
  'WORTH_MOVING_DAYS',
  'YOUNG_DAYS',
];

describe('The numbers used', () => {
  // A new prior or limit of the core goes to `method-numbers.ts`, with words for it.
  test('are all priors and limits that the core exports', () => {
    const root = resolve(import.meta.dirname, '../../..');
    const declared = globSync('shared-core/{wood,probing}/**/*.ts', { cwd: root }).flatMap((file) => [
      ...readFileSync(resolve(root, file), 'utf8').matchAll(
        /^export const (\w+)(?:: [^=]+)? = (-?[\d.]|\{|\[)/gm,
      ),
    ]);
    const exported = declared.map(([, name]) => name as string);
    // An object in small letters is a table or a record, not a number of a method.
    const numbers = declared
      .filter(([, name = '', begins = '']) => /^[A-Z]/.test(name) || /[\d.]/.test(begins))
      .map(([, name]) => name as string);
    expect(exported.length).toBeGreaterThan(25);
    const listed = methodNumbers.map(({ constant }) => constant);
    expect(numbers.filter((name) => !listed.includes(name) && !NO_METHOD.includes(name))).toEqual([]);
    expect(listed.filter((name) => !exported.includes(name))).toEqual([]);
  });

  test('have each its own words', () => {
    const words = methodNumbers.map(({ means }) => english[means.code]);
    expect(words.filter((each, at) => words.indexOf(each) !== at)).toEqual([]);
  });

  // 0.35 times the root of 2, as one constant has it.
  test('have three figures at most, and lengths and temperatures in the person’s own unit', () => {
    for (const { value } of methodNumbers)
      if (typeof value === 'number' && !Number.isInteger(value))
        expect(Number(value.toPrecision(3))).toBe(value);
    const shownOf = (name: string) => methodNumbers.find(({ constant }) => constant === name)!.value;
    expect(shownOf('COLDEST_C')).toEqual(message('methods.temperature', { cellTempC: expect.any(Number) }));
    expect(shownOf('ASSUMED_PIN_MM')).toEqual(message('methods.length', { cellMm: 8 }));
    expect(JSON.stringify(methodNumbers)).not.toMatch(/\d{1}\.\d{5}/);
  });

  test('are on the page with their values', () => {
    const rows = partOf('numbers').tables[0]!.rows;
    expect(rows.map(([, value]) => value)).toEqual(methodNumbers.map(({ value }) => value));
  });
});
