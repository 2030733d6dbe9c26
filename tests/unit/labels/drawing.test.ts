import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { printableText, textWidthMm } from '../../../shared-core/drawing/fitted-text.ts';
import type { Operation, TextOperation } from '../../../shared-core/drawing/page.ts';
import { callMarks } from '../../../shared-core/labels/call-mark.ts';
import { drawLabels } from '../../../shared-core/labels/drawing.ts';
import type { LabelContent } from '../../../shared-core/labels/label.ts';
import {
  a4SheetLayout,
  type LabelLayout,
  labelLayoutSchema,
  labelPositions,
  letterSheetLayout,
  printableArea,
  rollLayout,
} from '../../../shared-core/labels/sheet.ts';
import { english } from '../../../shared-core/words/en/index.ts';
import { pseudoOf } from '../../../shared-core/words/pseudo.ts';
import { createWords, type Say, type Words } from '../../../shared-core/words/words.ts';
import { aFinding, aLabel, paperOf, wordsIn } from './a-label.ts';
import { decoded } from './decoded.ts';
import { anyLayout } from './layouts.ts';
import { polygons, rasterise } from './raster.ts';

const words = wordsIn('metric');
const calls = ['ready', 'bring-in', 'keep-drying', 'probe-again'] as const;

function size(widthMm: number, heightMm: number) {
  return {
    pageWidthMm: widthMm,
    pageHeightMm: heightMm,
    labelWidthMm: widthMm,
    labelHeightMm: heightMm,
  };
}

const smallestLabel: LabelLayout = { ...rollLayout, ...size(25, 13) };

function texts(operations: readonly Operation[]): TextOperation[] {
  return operations.filter((operation) => operation.kind === 'text');
}

function pageOf(content: LabelContent, layout: LabelLayout) {
  const [page] = drawLabels([content], paperOf(layout), words);
  if (page === undefined) throw new Error('One label makes one page.');
  return page;
}

const textsOn = (measures: ReturnType<typeof size>, content = aLabel): string[] =>
  texts(pageOf(content, { ...rollLayout, ...measures }).operations).map(({ text }) => text);

/** The dark modules' rectangles of the only QR code on a page. */
function qrRectangles(operations: readonly Operation[]) {
  const codes = operations.filter(({ kind }) => kind === 'modules');
  expect(codes).toHaveLength(1);
  return codes.flatMap(polygons);
}

describe('a label', () => {
  test('shows everything of its board where there is room', () => {
    expect(textsOn(size(105, 74))).toEqual([
      'OAK-07',
      'Bring in',
      '12.4%',
      'Mar 12, 2026',
      'Northern red oak',
      '27 mm × 180 mm × 2.4 m',
      'Furniture and cabinets, heated rooms',
      'Likely 11.6–13.2%',
      'Shell 11.2%, core 13.1%',
    ]);
  });

  test('its ID, call and MC with its day are larger than all else', () => {
    const drawn = texts(pageOf(aLabel, rollLayout).operations);
    const heads = ['OAK-07', 'Bring in', '12.4%', 'Mar 12, 2026'];
    const sizesOf = (isHead: boolean) =>
      drawn.filter(({ text }) => heads.includes(text) === isHead).map(({ sizePt }) => sizePt);
    expect(sizesOf(true)).toHaveLength(4);
    expect(Math.min(...sizesOf(true))).toBeGreaterThan(1.15 * Math.max(...sizesOf(false)));
  });

  test('a single label of 60 × 30 mm uses its width and height', () => {
    const corners = pageOf(aLabel, rollLayout).operations.flatMap(polygons).flat();
    const [xs, ys] = [corners.map(([x]) => x), corners.map(([, y]) => y)];
    expect([rollLayout.labelWidthMm, rollLayout.labelHeightMm]).toEqual([60, 30]);
    // The QR code's own white ends it on the right.
    expect(Math.max(...xs) - Math.min(...xs)).toBeGreaterThan(52);
    expect(Math.max(...ys) - Math.min(...ys)).toBeGreaterThan(24);
  });

  test('has a shape and a word for each call, and only "ready" is filled', () => {
    const marks = calls.map((call) => [
      callMarks[call].shape,
      callMarks[call].filled,
      words.say(`call.${call}`),
    ]);
    expect(marks).toEqual([
      ['disc', true, 'Ready'],
      ['house', false, 'Bring in'],
      ['drop', false, 'Keep drying'],
      ['triangle', false, 'Probe again'],
    ]);
  });

  test('of a board without a call shows none', () => {
    const { operations } = pageOf({ ...aLabel, latest: null }, letterSheetLayout);
    const shown = texts(operations).map(({ text }) => text);
    expect(shown).toEqual([
      'OAK-07',
      'No readings yet',
      'Northern red oak',
      '27 mm × 180 mm × 2.4 m',
      'Furniture and cabinets',
    ]);
    expect(operations.filter(({ kind }) => kind === 'modules')).toHaveLength(1);
    expect(operations.filter(({ kind }) => kind === 'path')).toEqual([]);
  });

  test('of a board whose ID is too long for a code says so, instead of a code that cannot be read', () => {
    const { operations } = pageOf({ ...aLabel, code: 'ł'.repeat(80) }, { ...rollLayout, ...size(60, 18) });
    expect(texts(operations).map(({ text }) => text)).toContain('No room for a QR code');
    expect(operations.filter(({ kind }) => kind === 'modules')).toEqual([]);
  });
});

describe('as a label shrinks', () => {
  const anySize = fc.record({
    widthMm: fc.double({ min: 25, max: 105, noNaN: true }),
    heightMm: fc.double({ min: 13, max: 150, noNaN: true }),
  });

  // 8 pt at arm's length: common practice, no source.
  test('no text is ever under 8 pt from 25 × 13 to 105 × 150 mm, but an ID, which is whole in one line or two', () => {
    fc.assert(
      fc.property(
        anySize,
        fc.constantFrom(null, ...calls.map((call) => ({ ...aFinding, call }))),
        fc.stringMatching(/^[A-Z0-9][A-Z0-9-]{0,15}$/),
        ({ widthMm, heightMm }, latest, code) => {
          const { operations } = pageOf(
            { ...aLabel, code, latest },
            { ...rollLayout, ...size(widthMm, heightMm) },
          );
          const [first, second, ...others] = texts(operations);
          const idLines = first?.text === code ? 1 : 2;
          if (idLines === 2) expect(`${first?.text}${second?.text}`).toBe(code);
          expect(first?.sizePt).toBeGreaterThanOrEqual(5);
          const sizes = [...(idLines === 1 && second ? [second] : []), ...others].map(({ sizePt }) => sizePt);
          expect(Math.min(8, ...sizes)).toBe(8);
        },
      ),
      { numRuns: 300 },
    );
  });

  test('the call is whole, by its letter, or left out, and never cut; so are the MC and the day', () => {
    fc.assert(
      fc.property(anySize, fc.constantFrom(...calls), ({ widthMm, heightMm }, call) => {
        const [id, ...shown] = textsOn(size(widthMm, heightMm), { ...aLabel, latest: { ...aFinding, call } });
        const isRoomy = widthMm >= 44 && heightMm >= 18;
        expect(id).toBe('OAK-07');
        if (isRoomy)
          expect(shown).toEqual(expect.arrayContaining([words.say(`call.${call}`), 'Mar 12, 2026']));
        const heads = [words.say(`call.${call}`), words.say(`call.letter-${call}`), '12.4%', 'Mar 12, 2026'];
        expect(shown.slice(0, 2).filter((text) => !heads.includes(text) && !/^Northern/.test(text))).toEqual(
          [],
        );
      }),
      { numRuns: 300 },
    );
  });

  test('lines go in order: shell and core first, then the interval, the use, the size, the species, the MC', () => {
    const lines = [/^12\.4%$/, /^Northern/, /^27 mm/, /^Furniture/, /^Likely/, /^Shell/];
    const counts = new Set<number>();
    for (let heightMm = 74; heightMm >= 14; heightMm -= 0.5) {
      const shown = textsOn(size(60, heightMm));
      const areThere = lines.map((line) => shown.some((text) => line.test(text)));
      const count = areThere.filter((isThere) => isThere).length;
      expect(areThere).toEqual(lines.map((_, index) => index < count));
      counts.add(count);
    }
    expect([...counts]).toEqual([6, 5, 4, 3, 2, 1]);
  });

  test('two short lines share a row before one is left out', () => {
    const short = { ...aLabel, speciesName: 'Ash', endUseName: 'Firewood', widthMm: null, lengthMm: null };
    const { operations } = pageOf(short, { ...rollLayout, ...size(60, 22) });
    const baselines = texts(operations)
      .filter(({ text }) => ['Ash', '27 mm', 'Firewood'].includes(text))
      .map(({ baselineMm }) => baselineMm);
    expect(baselines).toHaveLength(3);
    expect(new Set(baselines).size).toBe(1);
  });

  test('the length goes before the thickness and width do', () => {
    expect(textsOn(size(44, 30), aLabel)).toContain('27 mm × 180 mm');
  });
});

describe('the QR code', () => {
  test.each([
    ['US Letter', letterSheetLayout],
    ['A4', a4SheetLayout],
    ['single', rollLayout],
    ['smallest', smallestLabel],
  ])('on a %s label is read back, all other ink beside it', (_, layout) => {
    expect(labelLayoutSchema.safeParse(layout).success).toBe(true);
    expect(decoded(rasterise(pageOf(aLabel, layout), 6))).toBe('OAK-07');
  });

  // Quiet zone of 4 modules: ISO/IEC 18004 (from memory). 0.33 mm: common practice, no source.
  test('on every accepted layout has modules of at least 0.33 mm and 4 modules of white on all sides', () => {
    fc.assert(
      fc.property(anyLayout, fc.stringMatching(/^[A-Z0-9][A-Z0-9-]{0,15}$/), (layout, id) => {
        const { operations } = pageOf({ ...aLabel, code: id }, layout);
        const corners = qrRectangles(operations).flat();
        const xs = corners.map(([x]) => x);
        const ys = corners.map(([, y]) => y);
        const [left, right] = [Math.min(...xs), Math.max(...xs)];
        const [top, bottom] = [Math.min(...ys), Math.max(...ys)];
        const moduleMm = (right - left) / 21;
        const near = 1e-3;
        expect(moduleMm).toBeGreaterThanOrEqual(0.33 - near);
        expect(bottom - top).toBeCloseTo(right - left, 2);

        const quietMm = 4 * moduleMm - near;
        expect(left - quietMm).toBeGreaterThanOrEqual(layout.leftMm);
        expect(top - quietMm).toBeGreaterThanOrEqual(layout.topMm);
        expect(right + quietMm).toBeLessThanOrEqual(layout.leftMm + layout.labelWidthMm);
        expect(bottom + quietMm).toBeLessThanOrEqual(layout.topMm + layout.labelHeightMm);
        for (const text of texts(operations)) {
          const box = polygons(text).flat();
          const clear =
            Math.max(...box.map(([x]) => x)) <= left - quietMm ||
            Math.max(...box.map(([, y]) => y)) <= top - quietMm;
          expect(clear).toBe(true);
        }
      }),
      { numRuns: 60 },
    );
  });
});

const hostile = fc.oneof(
  fc.string({ unit: 'binary', maxLength: 500 }),
  fc.string({ unit: 'grapheme', maxLength: 500 }),
  fc.constantFrom(
    'W'.repeat(500),
    '\u202Eשלום עולם\u202C',
    'خشب'.repeat(100),
    '\u0000\u001B[31m',
    'Z\u0301\u0302\u0303'.repeat(50),
    '',
  ),
);

const constant = {
  targetRange: fc.constant(aLabel.targetRange),
  stackName: fc.constant(aLabel.stackName),
  log: fc.constantFrom('', 'B'),
  sawnOn: fc.constantFrom(null, '2024-05-02'),
};

/** Words of which each is the same text, as a careless translation may be. */
const saying = (text: string): Words => {
  const say = (() => text) as Say;
  const formats = { ...words.formats, mc: () => text, thickness: () => text, day: () => text };
  return { say, formats };
};

describe('whatever the texts are', () => {
  test('all that is printed stays on its label, in characters that the fonts have', () => {
    fc.assert(
      fc.property(
        anyLayout,
        fc.record({
          ...constant,
          code: hostile,
          speciesName: hostile,
          placeName: hostile,
          thickness: fc.constant(aLabel.thickness),
          widthMm: fc.constantFrom(null, 180),
          lengthMm: fc.constantFrom(null, 2400),
          endUseName: hostile,
          latest: fc.constantFrom(null, ...calls.map((call) => ({ ...aFinding, call }))),
        }),
        fc.oneof(fc.constant(words), hostile.map(saying)),
        fc.integer({ min: 0, max: 200 }),
        (layout, content, anyWords, count) => {
          const used = count % (layout.columns * layout.rows);
          const [page] = drawLabels([content], paperOf(layout), anyWords, used);
          const [position] = labelPositions(1, layout, used);
          const operations = page?.operations ?? [];
          if (printableText(content.code) !== '') expect(operations.length).toBeGreaterThan(0);
          for (const operation of operations) {
            if (operation.kind === 'text') {
              // Throws for a character that the fonts lack.
              expect(textWidthMm(operation.text, operation.face, operation.sizePt)).toBe(operation.widthMm);
            }
            const { xMm, yMm } = position!;
            const outside = polygons(operation)
              .flat()
              .filter(
                ([x, y]) =>
                  !(
                    x >= xMm &&
                    x <= xMm + layout.labelWidthMm &&
                    y >= yMm &&
                    y <= yMm + layout.labelHeightMm
                  ),
              );
            expect(outside).toEqual([]);
          }
        },
      ),
      { numRuns: 100 },
    );
  });

  test.each([letterSheetLayout, { ...rollLayout, ...size(200, 150) }])(
    'accents on capitals stay on the label too, however large they are',
    (layout) => {
      const { operations } = pageOf({ ...aLabel, code: 'ÉÅĖ' }, layout);
      const [[[, topMm = Number.NaN] = []] = []] = polygons(texts(operations)[0] as TextOperation);
      expect(topMm).toBeGreaterThanOrEqual(layout.topMm + 1.5);
    },
  );

  test.each([
    ['metric', 'en-US', ['112.4%', 'Sep 22, 2026']],
    ['imperial', 'en-US', ['112.4%', 'Sep 22, 2026']],
    ['metric', 'en-DE', ['112,4 %', '22 Sept 2026']],
  ] as const)(
    'the ID, the MC with its day and the call are whole on every layout with room for them, %s in %s',
    (units, locale, parts) => {
      const person = wordsIn(units, locale);
      fc.assert(
        fc.property(
          anyLayout,
          fc.stringMatching(/^[A-Z0-9][A-Z0-9-]{0,7}$/),
          fc.constantFrom(...calls),
          (layout, code, call) => {
            const { widthMm, heightMm } = printableArea(layout);
            fc.pre(widthMm >= 40 && heightMm >= 14);
            const latest = { ...aFinding, at: '2026-09-22T17:30:00Z', averagePct: 112.4, call };
            const [page] = drawLabels([{ ...aLabel, code, latest }], paperOf(layout), person);
            const shown = texts(page!.operations).map(({ text }) => text);
            for (const whole of [code, ...parts, person.say(`call.${call}`)]) expect(shown).toContain(whole);
          },
        ),
        { numRuns: 60 },
      );
    },
  );

  test('in the language that nobody speaks, every letter is one that the fonts have', () => {
    const pseudo = createWords({
      catalog: pseudoOf(english),
      locale: 'en-US',
      timeZone: 'America/Chicago',
      units: 'metric',
      today: null,
    });
    const [page] = drawLabels([aLabel, { ...aLabel, latest: null }], paperOf(a4SheetLayout), pseudo);
    expect(texts(page!.operations).filter(({ text }) => text.includes('□'))).toEqual([]);
  });
});

test('31 boards from the third place on take two pages of 30', () => {
  const pages = drawLabels(
    Array.from({ length: 31 }, (_, index) => ({ ...aLabel, code: `OAK-${index + 1}` })),
    paperOf(letterSheetLayout),
    words,
    2,
  );
  const ids = pages.map((page) => texts(page.operations).filter(({ text }) => /^OAK-/.test(text)).length);
  expect(ids).toEqual([28, 3]);
});

test('no boards make no page', () => {
  expect(drawLabels([], paperOf(letterSheetLayout), words)).toEqual([]);
});
