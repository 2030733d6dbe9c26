import fc from 'fast-check';
import ICAL from 'ical.js';
import { describe, expect, test } from 'vitest';
import { calendarFile, type DayEvent } from '../../../shared-core/calendar/calendar-file.ts';

const madeAt = '2026-11-27T01:12:20.000Z';
const event: DayEvent = {
  uid: '8b0f8c2e-5a4e-4d4e-9d51-2f1f6f0d7c01-probe@pintally',
  on: '2026-12-31',
  summary: 'Probe Ridge oak',
  description: '',
};

/** As a library reads it that knows the standard. */
const read = (file: string) =>
  new ICAL.Component(ICAL.parse(file)).getAllSubcomponents('vevent').map((each) => new ICAL.Event(each));

/** Bytes between the line ends. */
const octets = (file: string) => file.split('\r\n').map((line) => Buffer.byteLength(line));

describe('a calendar file, read by ical.js', () => {
  test('has events that take the whole day, over the end of a year', () => {
    const [made] = read(calendarFile([event], madeAt));
    expect(made).toMatchObject({ uid: event.uid, summary: 'Probe Ridge oak' });
    expect(made!.startDate.isDate).toBe(true);
    expect(made!.startDate.toString()).toBe('2026-12-31');
    expect(made!.endDate.toString()).toBe('2027-01-01');
  });

  test('has what the standard requires of a calendar and of an event', () => {
    // RFC 5545, 3.4, 3.6 and 3.6.1.
    const file = calendarFile([event], madeAt);
    const calendar = new ICAL.Component(ICAL.parse(file));
    expect(calendar.getFirstPropertyValue('version')).toBe('2.0');
    expect(calendar.getFirstPropertyValue('prodid')).toBeTruthy();
    const vevent = calendar.getFirstSubcomponent('vevent')!;
    expect(String(vevent.getFirstPropertyValue('dtstamp'))).toBe('2026-11-27T01:12:20Z');
    expect(file.endsWith('END:VCALENDAR\r\n')).toBe(true);
    expect(file.replaceAll('\r\n', '')).not.toMatch(/[\r\n]/);
  });

  test('any text comes back as it was, in lines of at most 75 octets', () => {
    const text = fc.string({ unit: 'grapheme', maxLength: 300 }).map((words) =>
      // Controls and lone line ends are in no text of the app.
      words.replaceAll(/[\p{Cc}\u2028\u2029]/gu, ' '),
    );
    fc.assert(
      fc.property(text, text, fc.boolean(), (summary, more, isLong) => {
        const description = isLong ? `${more}\nline; with, marks\\` : more;
        const file = calendarFile([{ ...event, summary, description }], madeAt);
        const [made] = read(file);
        // RFC 5545, 3.1: 75 octets, without the line break.
        expect(Math.max(...octets(file))).toBeLessThanOrEqual(75);
        expect(made!.summary ?? '').toBe(summary);
        expect(made!.description ?? '').toBe(description);
      }),
      { numRuns: 300 },
    );
  });

  test('no character is cut by a fold', () => {
    const summary = '木'.repeat(80);
    const file = calendarFile([{ ...event, summary }], madeAt);
    expect(Buffer.from(file).toString('utf8')).toBe(file);
    expect(file).not.toContain('\uFFFD');
    expect(read(file)[0]!.summary).toBe(summary);
  });

  test('without events it is a calendar all the same', () => {
    expect(read(calendarFile([], madeAt))).toEqual([]);
  });
});
