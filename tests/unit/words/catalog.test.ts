import { type MessageFormatElement, parse, TYPE } from '@formatjs/icu-messageformat-parser';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { german } from '../../../shared-core/words/de/index.ts';
import { areas, type Catalog, type Code, english } from '../../../shared-core/words/en/index.ts';
import type { Facts, Message } from '../../../shared-core/words/message.ts';
import { pseudoOf } from '../../../shared-core/words/pseudo.ts';
import { createWords } from '../../../shared-core/words/words.ts';

const display = { locale: 'en-US', timeZone: 'America/Chicago', today: '2027-05-01' } as const;
const codes = Object.keys(english) as Code[];

/** The names in a sentence, each with whether it is a number that chooses a plural, a word, or shown. */
function argumentsOf(icu: string): Map<string, 'plain' | 'plural' | readonly string[]> {
  const found = new Map<string, 'plain' | 'plural' | readonly string[]>();
  const walk = (elements: MessageFormatElement[]): void => {
    for (const element of elements) {
      if (element.type === TYPE.literal || element.type === TYPE.pound) continue;
      if (element.type === TYPE.argument) {
        if (!found.has(element.value)) found.set(element.value, 'plain');
      } else if (element.type === TYPE.plural || element.type === TYPE.select) {
        found.set(element.value, element.type === TYPE.plural ? 'plural' : Object.keys(element.options));
        for (const option of Object.values(element.options)) walk(option.value);
      } else {
        throw new Error(`A fact is shown by the end of its name, not by a format: ${icu}`);
      }
    }
  };
  walk(parse(icu, { ignoreTag: true }));
  return found;
}

const number = fc.double({ min: 0, max: 5000, noNaN: true });
const isoDay = fc
  .date({ min: new Date('2000-01-01'), max: new Date('2060-01-01'), noInvalidDate: true })
  .map((date) => date.toISOString());

const dayRange = fc
  .record({ from: isoDay, to: isoDay })
  .map(({ from, to }) => (from < to ? { from, to } : { from: to, to: from }));

/** Any facts that a sentence could have, by the ends of their names. */
function factsFor(code: Code): fc.Arbitrary<Facts> {
  const record = Object.fromEntries(
    [...argumentsOf(english[code])].map(([name, kind]) => {
      if (kind === 'plural') return [name, fc.nat(1000)];
      if (kind !== 'plain') return [name, fc.constantFrom(...kind)];
      if (
        /^raw($|[A-Z])|(Pct|Points|Mm|TempC|StepK|Kg|Grams|M3|BoardFeet|Ohm)$|^mm$|^pct$|^points$/.test(name)
      )
        return [name, number];
      if (/[mM]onthsRange$/.test(name)) return [name, dayRange];
      if (/[rR]ange$/.test(name))
        return [name, fc.oneof(fc.record({ minPct: number, maxPct: number }), dayRange)];
      if (/[iI]nterval$/.test(name)) return [name, fc.record({ minPct: number, maxPct: number })];
      if (/[tT]hickness$/.test(name))
        return [name, fc.record({ thicknessMm: number, quarters: fc.constantFrom(null, 4, 8) })];
      if (/[mM]onth$/.test(name)) return [name, fc.integer({ min: 1, max: 12 })];
      if (/(On|At)$/.test(name)) return [name, isoDay];
      if (/[wW]hen$/.test(name))
        return [
          name,
          fc.tuple(isoDay, isoDay, isoDay, fc.boolean()).map(([a, b, c, open]) => {
            const [from, likely, to] = [a, b, c].sort() as [string, string, string];
            return { from, likely, to: open ? null : to };
          }),
        ];
      return [name, fc.constantFrom('OAK-07', 'Pole shed')];
    }),
  );
  return fc.record(record) as fc.Arbitrary<Facts>;
}

/** A catalog's sentences in both units, made ready once: that costs far more than one sentence. */
function sayingOf(
  catalog: Catalog,
  locale: string = display.locale,
): Record<'metric' | 'imperial', (message: Message) => string> {
  const say = (units: 'metric' | 'imperial') => createWords({ catalog, units, ...display, locale }).say;
  return { metric: say('metric'), imperial: say('imperial') };
}
const inEnglish = sayingOf(english);
const inGerman = sayingOf(german, 'de-DE');
const inPseudo = sayingOf(pseudoOf(english));

test('no code is in two areas', () => {
  const all = Object.values(areas).flatMap((area) => Object.keys(area));
  expect(all.filter((code, index) => all.indexOf(code) !== index)).toEqual([]);
});

test('every code is an area and a name, in small letters', () => {
  expect(codes.filter((code) => !/^[a-z]+(-[a-z]+)*(\.[a-z0-9]+(-[a-z0-9]+)*)+$/.test(code))).toEqual([]);
});

// The compiler reads the facts from the braces (`facts-of.ts`).
test('no sentence quotes a brace, and its plurals are written with ", "', () => {
  expect(codes.filter((code) => /'[{}]|\{\w+,\S|\{\w+ ,/.test(english[code]))).toEqual([]);
});

test.each(codes)('%s is made whole, in English, in German and in the pseudo-locale', (code) => {
  fc.assert(
    fc.property(factsFor(code), fc.constantFrom('metric', 'imperial'), (facts, units) => {
      const sentence = inEnglish[units]({ code, facts });
      for (const made of [sentence, inGerman[units]({ code, facts })]) {
        expect(made).not.toMatch(/[{}]|undefined|NaN|object|Text (missing|fehlt): [a-z]+\./);
        expect(made.trim()).not.toBe('');
      }
      expect(inPseudo[units]({ code, facts })).toMatch(/^\[.+\]$/su);
    }),
    { numRuns: 8 },
  );
});

test('in inch mode no sentence has a metric unit, but the grams of a balance', () => {
  for (const code of codes) {
    const gram = /Grams\}/.test(english[code]) ? '' : 'g|';
    const metricUnit = new RegExp(`\\d ?(mm|cm|m|km|${gram}kg|m³|°C)(?![\\p{L}\\d])`, 'u');
    fc.assert(
      fc.property(factsFor(code), (facts) => {
        expect(inEnglish.imperial({ code, facts })).not.toMatch(metricUnit);
      }),
      { numRuns: 8 },
    );
  }
});

describe('the pseudo-locale', () => {
  const pseudo = pseudoOf(english);

  test('is the same sentence, accented and in brackets', () => {
    expect(pseudo['common.save']).toBe('[Šààvéé]');
  });

  test('is about 40% longer in all', () => {
    const length = (catalog: Catalog): number =>
      codes.map((code) => catalog[code].replace(/\{[^}]*\}|[[\]]/g, '')).join('').length;
    const ratio = length(pseudo) / length(english);
    expect(ratio).toBeGreaterThan(1.2);
    expect(ratio).toBeLessThan(1.5);
  });

  test('leaves facts and plurals as they are', () => {
    const { say } = createWords({ catalog: pseudo, units: 'metric', ...display });
    expect(say('call.would-change', { questionable: 1 })).toMatch(/^\[1 /);
    expect(say('call.too-wet', { averagePct: 14.9, targetRange: { minPct: 6, maxPct: 8 } })).toMatch(
      /14\.9%.*6–8%/,
    );
  });
});
