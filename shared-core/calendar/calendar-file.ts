/** An event that takes a whole day. */
export interface DayEvent {
  /** The same for the same thing in every file, so that a calendar changes it and adds no other. */
  uid: string;
  /** Local ISO day. */
  on: string;
  summary: string;
  description: string;
}

/** A line has at most so many octets, its end left out (RFC 5545, 3.1). */
const MOST_OCTETS = 75;

/** Text as a property has it (RFC 5545, 3.3.11). Other control characters are in no text. */
const escaped = (text: string): string =>
  text
    .replaceAll(/\r\n?/g, '\n')
    // biome-ignore lint/suspicious/noControlCharactersInRegex: these are what is taken out.
    .replaceAll(/[\u0000-\u0009\u000b-\u001f\u007f]/g, ' ')
    .replaceAll(/[\\;,]/g, '\\$&')
    .replaceAll('\n', '\\n');

const octetsOf = (character: string): number => {
  const code = character.codePointAt(0)!;
  return code < 0x80 ? 1 : code < 0x800 ? 2 : code < 0x10000 ? 3 : 4;
};

/** A line in parts of at most 75 octets; each after the first begins with a space. No character is cut. */
function folded(line: string): string {
  let made = '';
  let octets = 0;
  for (const character of line) {
    const size = octetsOf(character);
    if (octets + size > MOST_OCTETS) {
      made += '\r\n ';
      octets = 1;
    }
    made += character;
    octets += size;
  }
  return made;
}

const compact = (day: string): string => day.replaceAll('-', '');

/** The day after one; days are counted in UTC, which has no summer time. */
function dayAfter(day: string): string {
  const next = new Date(`${day}T00:00:00.000Z`);
  next.setUTCDate(next.getUTCDate() + 1);
  return next.toISOString().slice(0, 10);
}

/**
 * Events as a file for any calendar: iCalendar, RFC 5545 (September 2009).
 *
 * @param madeAt  UTC instant, ISO 8601
 */
export function calendarFile(events: readonly DayEvent[], madeAt: string): string {
  const stamp = `${compact(madeAt.slice(0, 10))}T${madeAt.slice(11, 19).replaceAll(':', '')}Z`;
  const lines = [
    'BEGIN:VCALENDAR',
    'VERSION:2.0',
    'PRODID:-//Pintally//Pintally//EN',
    'CALSCALE:GREGORIAN',
    ...events.flatMap(({ uid, on, summary, description }) => [
      'BEGIN:VEVENT',
      `UID:${uid}`,
      `DTSTAMP:${stamp}`,
      `DTSTART;VALUE=DATE:${compact(on)}`,
      // The day that it no longer takes (3.6.1).
      `DTEND;VALUE=DATE:${compact(dayAfter(on))}`,
      `SUMMARY:${escaped(summary)}`,
      ...(description === '' ? [] : [`DESCRIPTION:${escaped(description)}`]),
      // Nobody is busy because of it.
      'TRANSP:TRANSPARENT',
      'END:VEVENT',
    ]),
    'END:VCALENDAR',
  ];
  return `${lines.map(folded).join('\r\n')}\r\n`;
}
