import { expect, test } from 'vitest';
import { type Catalog, english } from '../../../shared-core/words/en/index.ts';
import type { FactsOf } from '../../../shared-core/words/facts-of.ts';
import { type Message, message, messageSchema } from '../../../shared-core/words/message.ts';
import { createWords } from '../../../shared-core/words/words.ts';

const display = { locale: 'en-US', timeZone: 'America/Chicago', today: '2027-05-01' } as const;
const { say } = createWords({ catalog: english, units: 'imperial', ...display });
const targetRange = { minPct: 6, maxPct: 8 };

/** A catalog with sentences of the test's own in the place of some of ours. */
const sayWith = (
  sentences: Partial<Record<keyof Catalog, string>>,
  units: 'metric' | 'imperial',
  sent: Message,
) => createWords({ catalog: { ...english, ...sentences }, units, ...display }).say(sent);

test('a sentence from its code and facts', () => {
  expect(say('call.too-wet', { averagePct: 14.9, targetRange })).toBe('Too wet: 14.9%. Target 6–8%.');
  expect(say('call.would-change', { questionable: 1 })).toBe(
    '1 questionable reading would change this call.',
  );
  expect(say('call.would-change', { questionable: 2 })).toBe(
    '2 questionable readings would change this call.',
  );
});

test('choices are joined by “or”', () => {
  const nameChoices = ['Red oak', 'White oak', message('combobox.others', { others: 16 })];
  expect(say('combobox.which', { typedText: 'oak', nameChoices })).toBe(
    '“oak” could be Red oak, White oak, or one of 16 others. Choose one.',
  );
});

test('a message is the same sentence, after a way through JSON', () => {
  const sent = message('call.too-wet', { averagePct: 14.9, targetRange });
  const got = messageSchema.parse(JSON.parse(JSON.stringify(sent)));
  expect(got).toEqual(sent);
  expect(say(got)).toBe('Too wet: 14.9%. Target 6–8%.');
});

test('a fact may be a message, or a list', () => {
  const sentence = { 'common.save': '{parts}' };
  const sent = (parts: NonNullable<Message['facts']>[string]): Message => ({
    code: 'common.save',
    facts: { parts },
  });
  expect(sayWith(sentence, 'metric', sent({ code: 'call.ready' }))).toBe('Ready');
  expect(sayWith(sentence, 'metric', sent(['OAK-07', { code: 'call.ready' }, 3]))).toBe(
    'OAK-07, Ready, and 3',
  );
  expect(messageSchema.parse(sent(['OAK-07', { code: 'call.ready' }, 3]))).toEqual(
    sent(['OAK-07', { code: 'call.ready' }, 3]),
  );
});

test.each([
  ['averagePct', 14.9, '14.9%', '14.9%'],
  ['rhPct', 64.7, '65%', '65%'],
  ['certaintyPct', 99.9, '99.9%', '99.9%'],
  ['limitPct', 7.5, '7.5%', '7.5%'],
  ['likelyInterval', { minPct: 11.6, maxPct: 13 }, '11.6–13.0%', '11.6–13.0%'],
  ['rawPct', 14.25, '14.25%', '14.25%'],
  ['raw', 1.45, '1.45', '1.45'],
  ['rawOhm', 1_234_500, '1.2345 MΩ', '1.2345 MΩ'],
  ['stepPoints', 4.2, '4.2 points', '4.2 points'],
  ['likelyPointsInterval', { minPct: 1.1, maxPct: 2.3 }, '1.1–2.3 points', '1.1–2.3 points'],
  ['depthMm', 27, '27 mm', '1 1/16 in'],
  ['boardLengthMm', 2400, '2.4 m', '7 ft 10 in'],
  ['lengthMm', 2400, '2.4 m', '7 ft 10 in'],
  ['tempC', 17, '17°C', '63°F'],
  ['wetStepK', 10, '10°C', '18°F'],
  ['boardKg', 12.4, '12.4 kg', '27.3 lb'],
  ['wetGrams', 38.42, '38.42 g', '38.42 g'],
  ['stackM3', 0.236, '0.236 m³', '100 board feet'],
  ['sawnOn', '2027-03-04', 'Mar 4', 'Mar 4'],
  ['sawnOn', '2026-03-04', 'Mar 4, 2026', 'Mar 4, 2026'],
  ['takenAt', '2027-05-12T19:05:00Z', 'May 12, 2:05 PM', 'May 12, 2:05 PM'],
  ['likelyRange', { from: '2027-04-20', to: '2027-06-15' }, 'Apr 20 – Jun 15', 'Apr 20 – Jun 15'],
  [
    'readyWhen',
    { likely: '2027-05-12', from: '2027-04-20', to: '2027-06-15' },
    'May 12 (Apr 20 – Jun 15)',
    'May 12 (Apr 20 – Jun 15)',
  ],
  ['thickness', { thicknessMm: 50.8, quarters: 8 }, '8/4', '8/4'],
  ['thickness', { thicknessMm: 50.8, quarters: null }, '51 mm', '2 in'],
  ['probedOn', ['2027-03-04', '2027-03-05'], 'Mar 4 and Mar 5', 'Mar 4 and Mar 5'],
  ['boards', 1234, '1,234', '1,234'],
] as const)('the fact %s is shown by the end of its name', (name, fact, metric, imperial) => {
  const sentence = { 'common.save': `{${name}}` };
  const sent: Message = { code: 'common.save', facts: { [name]: fact } };
  expect(sayWith(sentence, 'metric', sent)).toBe(metric);
  expect(sayWith(sentence, 'imperial', sent)).toBe(imperial);
});

test('a sentence repeats only the beginning of a long text', () => {
  expect(say('validation.not-a-number', { typedText: '9'.repeat(400) })).toBe(
    `“${'9'.repeat(30)}…” is not a number. Type it in digits.`,
  );
});

test('a fact that chooses a branch may be shown as well', () => {
  const sentence = { 'common.save': '{boards, plural, one {one board} other {{boards} boards}}' };
  expect(sayWith(sentence, 'metric', { code: 'common.save', facts: { boards: 1200 } })).toBe('1,200 boards');
});

test('a sentence that ends with a short month has one stop', () => {
  const sayIn = createWords({
    catalog: { ...english, 'common.save': 'Am {dayOn}. Bis {untilOn}. Datei ../{rawText} …' },
    locale: 'de-DE',
    timeZone: 'Europe/Berlin',
    units: 'metric',
    today: '2027-05-01',
  }).say;
  expect(
    sayIn({
      code: 'common.save',
      facts: { dayOn: '2027-08-25', untilOn: '2027-06-02', rawText: 'a' },
    }),
  ).toBe('Am 25. Aug. Bis 2. Juni. Datei ../a …');
});

test('a message of another version leaves a gap that can be reported, not a broken page', () => {
  expect(say({ code: 'call.gone' } as unknown as Message)).toBe('Text missing: call.gone');
  expect(say({ code: 'call.too-wet', facts: { averagePct: 14.9 } })).toBe('Text missing: call.too-wet');
});

test('the compiler reads the facts from the sentence', () => {
  const facts: FactsOf<'{boards, plural, one {board of {placeName}} other {# boards}} at {averagePct}, {how, select, hot {h} other {o}}'> =
    {
      boards: 2,
      placeName: 'Pole shed',
      averagePct: 14.9,
      how: 'hot',
    };
  expect(Object.keys(facts)).toHaveLength(4);
  // @ts-expect-error a fact is missing
  say('call.too-wet', { averagePct: 14.9 });
  // @ts-expect-error a fact too many
  say('call.would-change', { questionable: 1, boards: 2 });
  // @ts-expect-error the wrong type
  expect(() => say('call.too-wet', { averagePct: '14.9', targetRange: null })).toThrow();
  // @ts-expect-error no such code
  say('call.too-wett');
  // @ts-expect-error no facts are asked for
  say('call.ready', { boards: 1 });
});
