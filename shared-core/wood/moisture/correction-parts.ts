import type { Corrected, CorrectionStep, ReadingUnit } from './corrected.ts';

/** What each part of a correction did to a value, points; null for a part that did nothing because there was no reason or no way. */
export interface CorrectionParts {
  /** What the ohms are on the curve they were read on, before anything else; null for a value in %. */
  fromOhmsPct: number | null;
  meterCheck: number | null;
  scale: number | null;
  temperature: number | null;
  species: number | null;
  ownChecks: number | null;
}

const PART_OF: Record<CorrectionStep, Exclude<keyof CorrectionParts, 'fromOhmsPct'>> = {
  'meter-check': 'meterCheck',
  'scale-curve': 'scale',
  'usual-scale': 'scale',
  temperature: 'temperature',
  'species-curve': 'species',
  'species-linear': 'species',
  'own-calibration': 'ownChecks',
  'own-checks': 'ownChecks',
};

/**
 * The effects of a correction by what caused them. Their sum, and the raw value or `fromOhmsPct`, is the corrected value.
 */
export function correctionParts({
  raw,
  unit,
  corrected: { steps },
}: {
  raw: number;
  unit: ReadingUnit;
  corrected: Pick<Corrected, 'steps'>;
}): CorrectionParts {
  const [first, ...others] = steps;
  // Ohms have no % before their first step.
  const fromOhmsPct = unit === 'ohm' ? (first?.pct ?? null) : null;
  const parts: CorrectionParts = {
    fromOhmsPct,
    meterCheck: null,
    scale: null,
    temperature: null,
    species: null,
    ownChecks: null,
  };
  let before = fromOhmsPct ?? raw;
  for (const { step, pct } of unit === 'ohm' ? others : steps) {
    const part = PART_OF[step];
    parts[part] = (parts[part] ?? 0) + pct - before;
    before = pct;
  }
  return parts;
}
