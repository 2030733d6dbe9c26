import { describe, expect, test } from 'vitest';
import { pastedMonths } from '../../../shared-core/units/pasted-months.ts';

const twelve = <T>(make: (month: number) => T): T[] => Array.from({ length: 12 }, (_, month) => make(month));

describe('Twelve months pasted from a spreadsheet', () => {
  const months = twelve((month) => ({ tempC: month - 4, rhPct: 60.5 + month }));

  test('as twelve lines of temperature and humidity', () => {
    const text = months.map(({ tempC, rhPct }) => `${tempC}\t${rhPct}`).join('\r\n');
    expect(pastedMonths(`${text}\n`, 'metric')).toEqual(months);
  });

  test('with decimal commas and units', () => {
    const text = months
      .map(({ tempC, rhPct }) => `${tempC}°C; ${String(rhPct).replace('.', ',')}%`)
      .join('\n');
    expect(pastedMonths(text, 'metric')).toEqual(months);
  });

  test('as a line of temperatures and a line of humidities', () => {
    const text = [months.map(({ tempC }) => tempC), months.map(({ rhPct }) => rhPct)]
      .map((row) => row.join('\t'))
      .join('\n');
    expect(pastedMonths(text, 'metric')).toEqual(months);
  });

  test('in Fahrenheit, where that is what is typed', () => {
    // 68 °F is 20 °C by definition of the scale.
    const text = twelve(() => '68 45').join('\n');
    expect(pastedMonths(text, 'imperial')).toEqual(twelve(() => ({ tempC: 20, rhPct: 45 })));
  });

  test.each([
    '',
    '12',
    '1\t2\n3\t4',
    'a\tb',
    twelve(() => '1').join('\n'),
    `${twelve(() => '1').join(' ')}\n${twelve(() => '50').join(' ')} 50`,
  ])('anything else goes to the field as it is: %j', (text) => {
    expect(pastedMonths(text, 'metric')).toBeNull();
  });
});
