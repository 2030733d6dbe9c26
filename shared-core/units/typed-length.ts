import type { DisplayUnits } from './length.ts';

const MM_PER_INCH = 25.4;

/**
 * A thickness or width as a person types it, in mm: "27" in their own units, "27 mm", "2.7 cm", "1.25 in", "1 1/16".
 * A fraction is of an inch whatever the units, so that a rough board's quarter name is understood: "5/4" is 1 1/4 in.
 *
 * @returns null for an empty text, NaN for what is not a length
 * @example typedLengthMm('5/4', 'metric') // 31.75
 */
export function typedLengthMm(text: string, units: DisplayUnits): number | null {
  const typed = text.trim().toLowerCase().replace(',', '.');
  if (typed === '') return null;
  const parts = /^(?:(?<whole>\d+)[ -]+)?(?<over>\d+)\/(?<under>[1-9]\d*)\s*(?:in|inch|inches|"|″|)$/.exec(
    typed,
  )?.groups;
  if (parts) {
    return (Number(parts.whole ?? 0) + Number(parts.over) / Number(parts.under)) * MM_PER_INCH;
  }
  const plain = /^(?<number>\d+\.?\d*|\.\d+)\s*(?<unit>mm|cm|in|inch|inches|"|″|)$/.exec(typed)?.groups;
  if (!plain) return Number.NaN;
  const unit = plain.unit || (units === 'metric' ? 'mm' : 'in');
  const mmPerUnit = unit === 'mm' ? 1 : unit === 'cm' ? 10 : MM_PER_INCH;
  return Number(plain.number) * mmPerUnit;
}
