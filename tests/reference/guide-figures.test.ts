/** The figures of the user's guide, found again: by the app's own corrections, or in the table or paper named. */
import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { expect, test } from 'vitest';
import seeds from '../../seeds/weather-stations.json' with { type: 'json' };
import { stationListOf } from '../../shared-core/wood/climate/station.ts';
import { correctReading } from '../../shared-core/wood/moisture/correction.ts';
import { builtInSpecies } from '../../shared-core/wood/species/built-in.ts';
import { german } from '../../shared-core/words/de/index.ts';

const chapter = (id: string, language: 'en' | 'de' = 'en'): string =>
  readFileSync(
    resolve(import.meta.dirname, `../../renderer/help/guide/${language}/${id}.md`),
    'utf8',
  ).replaceAll(/\s+/g, ' ');

/** Of what a meter set to Douglas-fir shows, % MC. */
const corrected = (id: string, value: number, woodTempF: number): number =>
  correctReading({
    value,
    unit: 'pct',
    woodTempC: (woodTempF - 32) / 1.8,
    species: builtInSpecies.find((each) => each.id === id)!,
    scale: { kind: 'usual' },
  }).mcPct!;

test('walnut at 40 °F that reads 12% has about 14%', () => {
  expect(chapter('corrected')).toContain(
    'black walnut at 40 °F (4 °C) reads 12%, on a meter set to Douglas-fir. Corrected, that is about 14%.',
  );
  expect(chapter('corrected', 'de')).toContain(
    'Amerikanischer Nussbaum, 4 °C (40 °F) kalt: Ein Messgerät, das auf Douglasie eingestellt ist, zeigt 12 %. ' +
      'Korrigiert sind das etwa 14 %.',
  );
  expect(german['name:Black walnut']).toBe('Amerikanischer Nussbaum');
  expect(corrected('walnut-black', 12, 40)).toBeCloseTo(14, 0);
});

test('20 °F is worth one to two points', () => {
  expect(chapter('trust')).toContain('About 20 °F (11 °C) is worth one to two points.');
  expect(chapter('trust', 'de')).toContain('Etwa 11 °C (20 °F) machen ein bis zwei Prozentpunkte aus.');
  for (const shownPct of [10, 14, 18, 22]) {
    for (const woodTempF of [40, 60]) {
      const points =
        corrected('douglas-fir-coast', shownPct, woodTempF) -
        corrected('douglas-fir-coast', shownPct, woodTempF + 20);
      expect(points).toBeGreaterThan(0.7);
      expect(points).toBeLessThan(2);
    }
  }
});

test('a fresh board of oak weighs about 70 lb', () => {
  expect(chapter('cautions')).toContain(
    'Fresh oak of 2 × 10 in (51 × 254 mm), 8 ft (2.4 m) long: about 70 lb (32 kg).',
  );
  expect(chapter('cautions', 'de')).toContain(
    'Frische Eiche von 51 × 254 mm (2 × 10 in), 2,4 m (8 ft) lang: etwa 32 kg (70 lb).',
  );
  // Wood Handbook (FPL-GTR-282), as transcribed: Table 5-3a, red oak 0.56 green; Table 4-1, 80 % heart, 69 % sap.
  const volumeM3 = 0.0508 * 0.254 * 2.4384;
  for (const greenMc of [0.8, 0.69]) {
    expect(Math.abs(volumeM3 * 0.56 * 1000 * (1 + greenMc) - 32)).toBeLessThan(2.5);
  }
});

test('the air over wet table salt has about 75%', () => {
  // Wexler and Hasegawa 1954, J. Res. NBS 53(1), abstract: from 74.9 % at 0 °C to 75.6 % at 30 °C.
  for (const shown of [
    chapter('air').match(/wet table salt\. It should then show about (\d+)%/),
    chapter('air', 'de').match(/nassem Kochsalz\. Es sollte dann etwa (\d+) %/),
  ]) {
    expect(Number(shown?.[1])).toBeGreaterThanOrEqual(74.9);
    expect(Number(shown?.[1])).toBeLessThanOrEqual(75.6);
  }
});

test('outdoor air dries wood to 10–13% in much of the US, and far lower in the dry West', () => {
  expect(chapter('calls')).toContain(
    'In much of the US, outdoor air dries wood only to 10–13%. In the dry West it goes far lower.',
  );
  expect(chapter('calls', 'de')).toContain(
    'In weiten Teilen der USA trocknet Außenluft Holz nur auf 10–13 %, im trockenen Westen viel weiter.',
  );
  const lowest = stationListOf(seeds).years.map(({ station: { state }, air }) => ({
    state,
    emcPct: Math.min(...air.map(({ emcPct }) => emcPct!)),
  }));
  const shareOf = (all: typeof lowest, isSo: (emcPct: number) => boolean): number =>
    all.filter(({ emcPct }) => isSo(emcPct)).length / all.length;
  expect(shareOf(lowest, (emcPct) => emcPct >= 9.5 && emcPct < 13.5)).toBeGreaterThan(0.6);
  const dryWest = lowest.filter(({ state }) =>
    ['AZ', 'CO', 'ID', 'MT', 'NV', 'NM', 'UT', 'WY'].includes(state),
  );
  expect(shareOf(dryWest, (emcPct) => emcPct < 9)).toBeGreaterThan(0.9);
});
