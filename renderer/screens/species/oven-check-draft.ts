import type { NewOvenCheck } from '../../../shared-core/contract/oven-checks.ts';
import type { DisplayUnits } from '../../../shared-core/units/length.ts';
import { parseDecimal } from '../../parts/decimal.ts';

/** A check as it stands in the form's fields; the wood's temperature is asked for by a field of its own. */
export interface OvenCheckDraft {
  piece: string;
  /** Null: typed. */
  meterId: number | null;
  unit: NewOvenCheck['unit'];
  /** Parted by spaces. */
  readings: string;
  wetGrams: number | null;
  balanceGrams: number | null;
  rule: NewOvenCheck['rule'];
  note: string;
}

/** A new check, its mark continuing those there are. */
export function emptyOvenCheck(pieces: readonly string[], units: DisplayUnits): OvenCheckDraft {
  let number = pieces.length + 1;
  while (pieces.includes(String(number))) number++;
  return {
    piece: String(number),
    meterId: null,
    unit: 'pct',
    readings: '',
    wetGrams: null,
    balanceGrams: 0.1,
    rule: units === 'imperial' ? 'ASTM D4442' : 'EN 13183-1',
    note: '',
  };
}

/**
 * Readings as a person types them in a row, "12.4 12,6; 13": each may have a decimal comma.
 *
 * @returns NaN for a word that is not a number
 */
export function typedReadings(text: string): number[] {
  return text
    .split(/[\s;]+/)
    .map((word) => word.replace(/,$/, ''))
    .filter((word) => word !== '')
    .map((word) => parseDecimal(word) ?? Number.NaN);
}

export type OvenCheckProblems = Partial<Record<keyof OvenCheckDraft, string>>;

/** What is wrong with the draft, by field, as sentences; empty when it can be saved. */
export function ovenCheckProblems(draft: OvenCheckDraft): OvenCheckProblems {
  const problems: OvenCheckProblems = {};
  const readings = typedReadings(draft.readings);
  if (draft.piece.trim() === '') problems.piece = 'Give the piece a mark, like A1.';
  if (readings.length === 0) problems.readings = 'Give at least one reading of the piece.';
  else if (readings.some(Number.isNaN)) {
    problems.readings = 'Numbers with spaces between them, like 12.4 12.6.';
  }
  if (draft.wetGrams === null || !(draft.wetGrams > 0)) problems.wetGrams = 'Type a mass above 0 g.';
  if (draft.balanceGrams === null || !(draft.balanceGrams >= 0.0001 && draft.balanceGrams <= 100)) {
    problems.balanceGrams = 'The last digit that the balance shows, like 0.1 g.';
  }
  return problems;
}

/** The check that a draft without problems says. */
export function ovenCheckOf(
  draft: OvenCheckDraft,
  speciesId: string,
  woodTempC: number | null,
): NewOvenCheck {
  return {
    speciesId,
    meterId: draft.meterId,
    piece: draft.piece.trim(),
    readings: typedReadings(draft.readings),
    unit: draft.unit,
    woodTempC,
    wetGrams: draft.wetGrams ?? Number.NaN,
    balanceGrams: draft.balanceGrams ?? Number.NaN,
    rule: draft.rule,
    note: draft.note.trim(),
  };
}
