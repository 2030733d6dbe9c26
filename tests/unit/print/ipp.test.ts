import { expect, test } from 'vitest';
import { ippAnswer, ippRequest, operations } from '../../../electron/print/ipp.ts';
import { mediaFor } from '../../../electron/print/media.ts';

const bytes = (hex: string) => Buffer.from(hex.replaceAll(/\s/g, ''), 'hex');
const text = (value: string) =>
  `${value.length.toString(16).padStart(4, '0')}${Buffer.from(value).toString('hex')}`;

test('a request is the bytes of RFC 8010, section 3.1 (from memory)', () => {
  const made = ippRequest(
    operations.printJob,
    [['uri', 'printer-uri', 'ipp://localhost/printers/tags']],
    [['keyword', 'sides', 'one-sided', 'two-sided-long-edge']],
  );
  expect(made.toString('hex')).toBe(
    [
      '0200 0002 00000001 01',
      `47 ${text('attributes-charset')} ${text('utf-8')}`,
      `48 ${text('attributes-natural-language')} ${text('en')}`,
      `45 ${text('printer-uri')} ${text('ipp://localhost/printers/tags')}`,
      `02 44 ${text('sides')} ${text('one-sided')} 44 0000 ${text('two-sided-long-edge')}`,
      '03',
    ]
      .join('')
      .replaceAll(' ', ''),
  );
});

test('an answer gives each group its attributes, in every kind of text', () => {
  const { status, groups } = ippAnswer(
    bytes(
      [
        '0200 0000 00000001',
        `01 47 ${text('attributes-charset')} ${text('utf-8')}`,
        `04 42 ${text('printer-name')} ${text('tags')} 23 ${text('printer-state')} 0004 00000005`,
        `22 ${text('printer-is-accepting-jobs')} 0001 00`,
        `44 ${text('media-supported')} ${text('iso_a4_210x297mm')} 44 0000 ${text('na_letter_8.5x11in')}`,
        `04 36 ${text('printer-name')} 000a 0002 6465 0004 ${Buffer.from('Büro').subarray(0, 4).toString('hex')}`,
        '03 ff',
      ].join(''),
    ),
  );
  expect(status).toBe(0);
  expect(groups.map((group) => Object.fromEntries(group))).toEqual([
    {
      'printer-name': ['tags'],
      'printer-state': [5],
      'printer-is-accepting-jobs': [false],
      'media-supported': ['iso_a4_210x297mm', 'na_letter_8.5x11in'],
    },
    { 'printer-name': ['Bür'] },
  ]);
});

test('bytes that are no answer are refused', () => {
  expect(() => ippAnswer(Buffer.from('no IPP at all'))).toThrow(RangeError);
  expect(() => ippAnswer(bytes('0200 0000 00000001 04 42 00ff'))).toThrow(RangeError);
});

test('a printer is told a paper by its own name, or by its size where it takes any', () => {
  const letterOnly = ['na_letter_8.5x11in', 'iso_a6_105x148mm'];
  const anySize = [...letterOnly, 'custom_min_10.58x10.58mm', 'custom_max_176.39x352.78mm'];
  expect(mediaFor(letterOnly, 215.9, 279.4)).toBe('na_letter_8.5x11in');
  expect(mediaFor(letterOnly, 60, 30)).toBeNull();
  // 60 mm is 170.08 points, and 30 mm 85.04.
  expect(mediaFor(anySize, 60, 30)).toBe('Custom.170.2x85.2');
  expect(mediaFor(anySize, 200, 30)).toBeNull();
  expect(mediaFor([], 60, 30)).toBe('Custom.170.2x85.2');
});
