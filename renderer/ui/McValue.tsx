import type { Formats } from '../../shared-core/words/formats.ts';
import { useWords } from '../words.ts';
import css from './mc-value.module.css';

/** A moisture content, and a dash where there is none. */
export const mcOrDash = (pct: number | null, formats: Formats): string =>
  pct === null ? '–' : formats.mc(pct);

/** What the meter showed, in its own unit, as it was typed or sent. */
export const rawText = (raw: number, unit: 'pct' | 'ohm', formats: Formats): string =>
  unit === 'pct' ? formats.rawPercent(raw) : formats.rawOhms(raw);

/** One reading: the corrected MC big, the raw value beside it, both labeled. */
export function McValue({
  mcPct,
  raw,
  unit,
  size = 'text',
  struck = false,
}: {
  mcPct: number | null;
  raw: number | null;
  unit: 'pct' | 'ohm';
  size?: 'text' | 'huge';
  /** Not used: still readable. */
  struck?: boolean;
}) {
  const { say, formats } = useWords();
  return (
    <span className={struck ? `${css.value} ${css.struck}` : css.value} data-size={size}>
      <span className={css.corrected}>
        <span className={css.number}>{mcOrDash(mcPct, formats)}</span>
        <span className={css.unit}> {say('reading.mc')}</span>
        <span className={`soft ${css.label}`}>{say('reading.corrected')}</span>
      </span>
      <span className={css.raw}>
        <span className={css.rawNumber}>{raw === null ? '–' : rawText(raw, unit, formats)}</span>
        <span className={`soft ${css.label}`}>
          {say(size === 'text' ? 'reading.raw' : 'reading.raw-as-shown')}
        </span>
      </span>
    </span>
  );
}
