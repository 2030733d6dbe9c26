import type { NewOvenCheck } from '../../../shared-core/contract/oven-checks.ts';
import { parseDecimal } from '../../../shared-core/units/decimal.ts';
import type { DisplayUnits } from '../../../shared-core/units/length.ts';
import { type Message, message } from '../../../shared-core/words/message.ts';

/** A check as typed; the wood's temperature has a field elsewhere. */
export interface OvenCheckDraft {
  piece: string;
  /** Null: typed. */
  meterId: number | null;
  unit: NewOvenCheck['unit'];
  /** Separated by spaces. */
  readings: string;
  wetGrams: number | null;
  balanceGrams: number | null;
  rule: NewOvenCheck['rule'];
  note: string;
}

/** Of a balance that is fine enough (common practice, no source). */
const USUAL_STEP_GRAMS = 0.1;

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
    balanceGrams: USUAL_STEP_GRAMS,
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

export type OvenCheckProblems = Partial<Record<keyof OvenCheckDraft, Message>>;

/** What is wrong with the draft, by field; empty when it can be saved. */
export function ovenCheckProblems(draft: OvenCheckDraft): OvenCheckProblems {
  const problems: OvenCheckProblems = {};
  const readings = typedReadings(draft.readings);
  if (draft.piece.trim() === '') problems.piece = message('oven.mark-missing');
  if (readings.length === 0) problems.readings = message('oven.readings-missing');
  else if (readings.some(Number.isNaN)) {
    problems.readings = message('oven.readings-not-numbers', { rawFirst: 12.4, rawSecond: 12.6 });
  }
  if (draft.wetGrams === null || !(draft.wetGrams > 0)) problems.wetGrams = message('oven.wet-missing');
  if (draft.balanceGrams === null || !(draft.balanceGrams >= 0.0001 && draft.balanceGrams <= 100)) {
    problems.balanceGrams = message('oven.balance-missing', { stepGrams: USUAL_STEP_GRAMS });
  }
  return problems;
}

/** The check of a draft without problems. */
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
