import { describe, expect, test } from 'vitest';
import { emcPct } from '../../../shared-core/wood/climate/emc.ts';
import { epwYear } from '../../../shared-core/wood/climate/epw.ts';
import { epwText } from '../../reference/epw-text.ts';

const steady = Array.from({ length: 8760 }, () => [20, 50] as const);
const text = epwText(steady, 'Anywhere', '-');

describe('A weather file', () => {
  test('of the same air every hour has that air every month, and no swing', () => {
    const read = epwYear(text);
    if (!read.ok) throw new Error(read.problem.code);
    expect(read.value.siteName).toBe('Anywhere');
    for (const air of read.value.air) {
      expect(air.tempC).toBeCloseTo(20, 9);
      expect(air.rh).toBeCloseTo(0.5, 9);
      expect(air.emcPct).toBeCloseTo(emcPct(20, 0.5), 9);
    }
    expect(read.value.days.sdPct).toBeCloseTo(0, 9);
  });

  // 99.9 °C and 999 % stand for what was not measured (EnergyPlus weather format, from memory).
  test('leaves out hours that were not measured', () => {
    const gaps = steady.map((hour, at) => (at % 4 === 0 ? ([99.9, 999] as const) : hour));
    const read = epwYear(epwText(gaps, 'Anywhere', '-'));
    expect(read.ok && read.value.air[6]?.rh).toBeCloseTo(0.5, 9);
  });

  test('with blank cells is no air of 0 °C and 0%', () => {
    const blank = text.replaceAll(/,20,([^,]*),50,/g, ',,$1,,');
    expect(blank).not.toBe(text);
    expect(epwYear(blank)).toMatchObject({ ok: false, problem: { code: 'epw.month-missing' } });
  });

  test('in humid hours weighs the warm ones more: they carry more vapor', () => {
    const humidNights = steady.map((_, at) => (at % 2 === 0 ? ([10, 95] as const) : ([25, 50] as const)));
    const read = epwYear(epwText(humidNights, 'Anywhere', '-'));
    const plain = (emcPct(10, 0.95) + emcPct(25, 0.5)) / 2;
    expect(read.ok && read.value.air[0]?.emcPct).toBeLessThan(plain - 2);
  });

  test.each([
    ['a page of the web', '<html><body>Not found</body></html>', 'epw.not-epw'],
    ['nothing', '', 'epw.not-epw'],
    ['a header alone', 'LOCATION,Here,NC,USA', 'epw.month-missing'],
    ['half a year', text.slice(0, text.length / 2), 'epw.month-missing'],
  ])('that is %s is refused with a reason', (_, wrong, code) => {
    const read = epwYear(wrong);
    expect(read.ok ? null : read.problem.code).toBe(code);
  });
});
