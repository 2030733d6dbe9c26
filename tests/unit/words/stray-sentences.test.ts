import { expect, test } from 'vitest';
import { code, findings, oldPhrasesIn, searched, sentencesIn } from './strays.ts';

test('no sentence is outside the catalog', () => {
  expect(findings(code, sentencesIn)).toEqual([]);
});

test('no phrase that our English has outgrown comes back', () => {
  expect(findings(searched, oldPhrasesIn)).toEqual([]);
});

const tsx = (source: string): string[] => sentencesIn(source, 'renderer/a.tsx');

test('a sentence is a string, a template or JSX text', () => {
  expect(tsx(`const a = 'Bring it in.'`)).toEqual(['Bring it in.']);
  expect(tsx('const a = `$' + '{n} boards are ready`')).toEqual(['{} boards are ready']);
  expect(tsx('const a = <p>Bring it in <b>{n}</b> now</p>')).toEqual(['Bring it in', 'now']);
  expect(tsx(`const a = <Field label="Length" />`)).toEqual(['Length']);
  expect(tsx(`const a = { label: 'Last probed' }`)).toEqual(['Last probed']);
});

test.each([
  `import a from 'two words'`,
  `const a = db.prepare('SELECT id FROM board')`,
  `const a = <p className="one two" />`,
  `const a = <path d="M 0 0 L 1 1" />`,
  `throw new RangeError('RH must lie between 0 and 1')`,
  `reportFault('the radio stopped', error)`,
  `console.log('listening on it')`,
  `const a = /two words/`,
  `type A = 'two words'`,
  `const a = 'ASTM D4442'`,
  'const a = `@page { size: $' + '{width}mm; margin: 0 }`',
  `const a = "default-src 'self'; img-src data:"`,
])('no sentence: %s', (source) => {
  expect(tsx(source)).toEqual([]);
});

test('an outgrown phrase is found across the lines of a comment', () => {
  expect(oldPhrasesIn('/**\n * Nobody\n * said when.\n */', 'renderer/a.ts')).toHaveLength(1);
});
