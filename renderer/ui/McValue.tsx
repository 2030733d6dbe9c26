import type { Formats } from '../../shared-core/words/formats.ts';
import { useWords } from '../words.ts';
import './mc-value.css';

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
  size?: 'text' | 'large' | 'huge';
  /** Not used: still readable. */
  struck?: boolean;
}) {
  const { say, formats } = useWords();
  return (
    <span className={`mc-value mc-value-${size} ${struck ? 'mc-value-struck' : ''}`}>
      <span className="mc-corrected">
        <span className="mc-number">{mcOrDash(mcPct, formats)}</span>
        <span className="mc-unit"> {say('reading.mc')}</span>
        <span className="mc-label">{say('reading.corrected')}</span>
      </span>
      <span className="mc-raw">
        <span className="mc-raw-number">{raw === null ? '–' : rawText(raw, unit, formats)}</span>
        <span className="mc-label">{say(size === 'text' ? 'reading.raw' : 'reading.raw-as-shown')}</span>
      </span>
    </span>
  );
}
