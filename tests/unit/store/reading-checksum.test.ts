import { expect, test } from 'vitest';
import { type ReadingAsTaken, readingChecksum } from '../../../electron/store/reading-checksum.ts';

const reading: ReadingAsTaken = {
  uuid: '69a0df34-3c15-5dda-ae82-be64008f1a3d',
  roundId: 5,
  boardId: 6,
  spotIndex: 1,
  spot: '{"depth":"core","depthMm":27,"fromEndMm":700,"face":"face"}',
  raw: 12.6,
  unit: 'pct',
  how: 'settled',
  settled: 1,
  woodTempC: null,
  meterProfileId: 3,
  takenAt: '2026-02-02T13:58:01.400Z',
};

// CRC-32 as in PNG (ISO/IEC 15948, annex D), worked out by Python's zlib.crc32 over the same bytes.
test('the checksum of a reading is CRC-32 over its fields as a JSON array', () => {
  expect(readingChecksum(reading)).toBe(3860825396);
});

test.each(Object.keys(reading) as (keyof ReadingAsTaken)[])('another %s gives another checksum', (field) => {
  const other = typeof reading[field] === 'string' ? `${reading[field]}!` : Number(reading[field]) + 1;
  expect(readingChecksum({ ...reading, [field]: other })).not.toBe(readingChecksum(reading));
});
