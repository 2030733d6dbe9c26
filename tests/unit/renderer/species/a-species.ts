import type { JudgedOvenCheck, OwnFit } from '../../../../shared-core/contract/oven-checks.ts';
import { builtInSpecies } from '../../../../shared-core/wood/species/built-in.ts';
import type { Species } from '../../../../shared-core/wood/species/species.ts';
import { message } from '../../../../shared-core/words/message.ts';

/** A built-in species, and checks of it, for tests of the screens. */
export const oneBuiltInSpecies = (id: string): Species =>
  builtInSpecies.find((species) => species.id === id)!;

export const aCheck = (id: number, more: Partial<JudgedOvenCheck> = {}): JudgedOvenCheck => ({
  id,
  speciesId: 'walnut-black',
  meterId: null,
  piece: `A${id}`,
  readings: [10 + id, 10.2 + id],
  unit: 'pct',
  woodTempC: 20,
  wetGrams: 112.4,
  balanceGrams: 0.01,
  rule: 'EN 13183-1',
  note: '',
  at: new Date(2026, 4, 3, 9).toISOString(),
  weights: [
    { id: 10 * id, grams: 100.3, at: new Date(2026, 4, 4, 9).toISOString(), excluded: null },
    { id: 10 * id + 1, grams: 100.28, at: new Date(2026, 4, 4, 12).toISOString(), excluded: null },
  ],
  excluded: null,
  meterOff: 0,
  ovenDryMcPct: 11 + id,
  dry: true,
  status: message('oven-check.dry', {
    ovenDryPct: 11.7,
    hours: 2,
    changeGrams: 0.013,
    allowedGrams: 0.1,
    ruleName: 'EN 13183-1',
  }),
  readingPct: 10.1 + id,
  publishedMcPct: 11.8 + id,
  ...more,
});

/** Five dry pieces on the line reading = MC - 0.9, worth using. */
export const aFit = (more: Partial<OwnFit> = {}): OwnFit => {
  const checks = more.checks ?? [1, 2, 3, 4, 5].map((id) => aCheck(id));
  return {
    meterId: null,
    meterName: null,
    checks,
    fit: {
      a: 1,
      b: -0.9,
      model: 'offset',
      standardErrorPct: 0.3,
      publishedErrorPct: 0.8,
      worthUsing: true,
      leftOut: checks.map((check) => ({ checkId: check.id, errorPct: 0.1 * check.id - 0.3 })),
    },
    status: message('own-fit.better', { errorPoints: 0.3, publishedPoints: 0.8 }),
    inUse: false,
    applied: false,
    published: [
      { readingPct: 10, mcPct: 11.7 },
      { readingPct: 16, mcPct: 17.7 },
    ],
    ...more,
  };
};
