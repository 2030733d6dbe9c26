import { expect, test } from 'vitest';
import { instantSchema } from '../../../shared-core/time.ts';

// RFC 3339, section 5.6: the ways to write an instant.
test.each([
  '2026-01-01T08:00:00.000Z',
  '2026-01-01T08:00:00Z',
  '2026-01-01T10:00:00+02:00',
  '2025-12-31T20:30:00.000-11:30',
])('%s is the same instant, written in one way', (written) => {
  expect(instantSchema.parse(written)).toBe('2026-01-01T08:00:00.000Z');
});

test.each([
  ['is of no time zone', '2026-01-01T08:00:00'],
  ['is a day', '2026-01-01'],
  ['is no day of the calendar', '2026-02-30T08:00:00Z'],
  ['is before there were meters', '0026-01-01T08:00:00Z'],
  ['is of a year with five digits in UTC', '9999-12-31T23:59:59-01:00'],
  ['is no text', 1767254400000],
])('what %s is refused', (_, written) => {
  expect(instantSchema.safeParse(written).success).toBe(false);
});
