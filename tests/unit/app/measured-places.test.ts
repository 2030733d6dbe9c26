import { mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { measuredAt, readingMeasured } from '../../../electron/app/air/measured-places.ts';
import { openYard } from '../../../electron/store/yard.ts';
import { DAY_MS, HOUR_MS, isoOf } from '../../../shared-core/time.ts';

const START_MS = Date.UTC(2025, 0, 1);
const HOURS = 365 * 24;
const NOW = isoOf(START_MS + HOURS * HOUR_MS);

/** Hours of a year, with three days of a sensor that was stuck, and two in a truck. */
function airOf(hour: number): { tempC: number; rh: number } {
  const day = hour / 24;
  if (day > 100 && day < 103) return { tempC: 15, rh: 0.7 };
  const tempC = 12 - 10 * Math.cos((2 * Math.PI * day) / 365) - 4 * Math.cos((2 * Math.PI * hour) / 24);
  return { tempC: day > 200 && day < 202 ? tempC + 25 : tempC, rh: 0.6 + 0.2 * Math.cos(hour / 4) };
}

function yardWithLog() {
  const yard = openYard(join(mkdtempSync(join(tmpdir(), 'pintally-')), 'yard.sqlite'));
  const placeId = yard.places.add({
    name: 'Shed',
    kind: 'open-shed',
    air: Array.from({ length: 12 }, () => ({ tempC: 12, rh: 0.6 })),
    airSource: null,
    airMovement: null,
  });
  const log = (hour: number, air = airOf(hour)): void =>
    yard.airLogs.add({ placeId, sensorId: null, at: isoOf(START_MS + hour * HOUR_MS), ...air });
  yard.transaction(() => {
    for (let hour = 0; hour < HOURS; hour++) log(hour);
  });
  const place = yard.places.get(placeId)!;
  return { yard, place, log };
}

/** As it is read by a connection that has read nothing before. */
const readAfresh = ({ yard, place }: Pick<ReturnType<typeof yardWithLog>, 'yard' | 'place'>) =>
  measuredAt({ airLogs: { ...yard.airLogs } }, place, NOW);

test('a year of hours is read in slices, and comes to what all of it does at once', () => {
  const { yard, place } = yardWithLog();
  const read: number[] = [];
  let [since, most] = [0, 0];
  const airLogs: typeof yard.airLogs = {
    ...yard.airLogs,
    partAtPlace: (...asked) => {
      const part = yard.airLogs.partAtPlace(...asked);
      since += part.length;
      read.push(part.length);
      return part;
    },
  };
  let slices = 0;
  for (const _ of readingMeasured({ ...yard, airLogs }, NOW)) {
    slices++;
    most = Math.max(most, since);
    since = 0;
  }
  expect(read.reduce((sum, values) => sum + values, 0)).toBe(HOURS);
  // Some 5 ms a slice: a meter's values, and the window, have their turn in between.
  expect(most).toBeLessThanOrEqual(700);
  expect(slices).toBeGreaterThan(25);
  const before = read.length;
  const inSlices = measuredAt({ airLogs }, place, NOW);
  expect(read).toHaveLength(before);
  const atOnce = readAfresh({ yard, place });
  expect(inSlices.days).toEqual(atOnce.days);
  expect(inSlices.days).toHaveLength(365);
  const doubts = new Set(inSlices.days.map(({ doubt }) => doubt));
  for (const each of [null, 'stuck', 'jump']) expect(doubts).toContain(each);
  expect(inSlices.stretches).toEqual(atOnce.stretches);
  yard.close();
});

test('what came since is read as if all were read again, also where it makes a run of values long', () => {
  const { yard, place, log } = yardWithLog();
  const stuckFrom = HOURS - 30;
  measuredAt(yard, place, NOW);
  for (let hour = HOURS; hour < stuckFrom + 80; hour++) {
    log(hour, airOf(HOURS - 1));
    if (hour % 5 === 0) measuredAt(yard, place, NOW);
  }
  const until = isoOf(Date.parse(NOW) + 5 * DAY_MS);
  expect(measuredAt(yard, place, until).days).toEqual(
    measuredAt({ airLogs: { ...yard.airLogs } }, place, until).days,
  );
  expect(measuredAt(yard, place, until).days.at(-1)?.doubt).toBe('stuck');
  yard.close();
});
