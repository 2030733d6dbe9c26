import { readFileSync } from 'node:fs';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { expect, test } from 'vitest';
import {
  meterFileOf,
  meterFileText,
  meterJsonSchema,
  readMeterFile,
} from '../../../shared-core/contract/meter-file.ts';
import { NO_FIELDS, plainDescription } from '../../../shared-core/gatt/meter-description.ts';
import { unknownProfile } from '../../../shared-core/probing/readings/meter-profile.ts';
import { say } from '../app/a-window.ts';
import { meterSchemaFile } from './make-schema.ts';

const plain = { exponent: 0, scale: 1, offset: 0 };
/** Of our own invention, with every part that a description can have. */
const description = {
  ...plainDescription({
    source: { kind: 'read', serviceUuid: 'aa00', characteristicUuid: 'aa01', everyMs: 500 },
    value: { kind: 'text', byteOffset: 2, nth: 1, ...plain },
    unit: 'pct',
    range: { min: 5, max: 60 },
    origin: 'mapped-by-hand',
  }),
  start: { serviceUuid: 'aa00', characteristicUuid: 'aa02', bytesHex: '0a0b', withResponse: true },
  match: {
    layout: { kind: 'bits' as const, firstBit: 0, bits: 4, signed: false, ...plain },
    equals: 1,
  },
  fields: {
    ...NO_FIELDS,
    hold: { word: 'H' },
    batteryPct: { kind: 'number' as const, format: 4, byteOffset: 9, ...plain },
    species: { at: { kind: 'letters' as const, byteOffset: 10, octets: 2 }, expected: 'A1' },
  },
};
const identity = {
  presentationFormatHex: null,
  userDescription: 'Shed',
  validRangeHex: null,
  serviceUuids: ['aa00'],
};
const file = meterFileOf({ ...description, identity }, unknownProfile);
const text = meterFileText(file);
const problemOf = (given: string) => {
  const read = readMeterFile(given);
  return read.ok ? null : say(read.problem);
};

test('what is written is read as the same, without what the device said of itself', () => {
  expect(readMeterFile(text)).toEqual({ ok: true, value: file });
  expect(text).not.toContain('Shed');
  const { version: _, ...described } = description;
  expect(file.description).toEqual(described);
});

test.each([
  ['a number', '12.6', 'not a meter file'],
  ['no JSON', text.slice(0, 100), 'not a meter file'],
  ['an export of a yard', '{"format":"pintally-yard","version":1}', 'not a meter file'],
  ['a later version', text.replace('"version": 2', '"version": 3'), 'version is 3'],
  ['reads too often', text.replace('"everyMs": 500', '"everyMs": 5'), 'description.source'],
  ['a word for a number', text.replace('"nth": 1', '"nth": "first"'), 'description.value.nth'],
  ['no unit', text.replace('"unit": "pct",', ''), 'description.unit'],
  ['an entry more', text.replace('"nth": 1', '"nth": 1, "color": "red"'), 'description.value.color'],
])('a file with %s is refused with what is wrong', (_, given, words) => {
  expect(problemOf(given)).toContain(words);
});

// Ajv, a validator of JSON Schema that we did not write, as the other side.
test('the published JSON Schema is that of the program, and takes what the program takes', () => {
  const published = JSON.parse(readFileSync(meterSchemaFile, 'utf8'));
  expect(published).toEqual(JSON.parse(JSON.stringify(meterJsonSchema())));
  const validate = new Ajv2020({ strict: false, validateFormats: false }).compile(published);
  expect(validate(JSON.parse(text))).toBe(true);
  expect(validate(JSON.parse(text.replace('"nth": 1', '"nth": 1, "color": "red"')))).toBe(false);
  expect(validate(JSON.parse(text.replace('"version": 2', '"version": 3')))).toBe(false);
});
