import { averageText, mcOrDash, rawText, shownText } from '../../shared-core/record-words/reading-texts.ts';
import type { Corrected } from '../../shared-core/wood/moisture/corrected.ts';
import { useWords } from '../words.ts';
import css from './mc-value.module.css';

export { averageText, mcOrDash, rawText, shownText };

/** One reading: the MC big, the raw value beside it, both labeled; in a line, a raw value without an MC is alone. */
export function McValue({
  corrected,
  raw,
  unit,
  isAbove = false,
  size = 'text',
  struck = false,
}: {
  corrected: Pick<Corrected, 'mcPct' | 'steps' | 'warnings'> | null;
  raw: number | null;
  unit: 'pct' | 'ohm';
  /** The meter showed only that it is more than `raw`. */
  isAbove?: boolean | undefined;
  size?: 'text' | 'huge';
  /** Not used: still readable. */
  struck?: boolean;
}) {
  const words = useWords();
  const { say, formats } = words;
  const { mcPct, steps, warnings } = corrected ?? { mcPct: null, steps: [], warnings: [] };
  const isRawAlone = mcPct === null && raw !== null && size === 'text';
  const how =
    mcPct !== null && warnings.includes('temperature-unknown')
      ? steps.length > 0
        ? 'species'
        : 'none'
      : 'all';
  return (
    <span className={struck ? `${css.value} ${css.struck}` : css.value} data-size={size}>
      {!isRawAlone && (
        <span className={css.corrected}>
          <span className={css.number}>{mcOrDash(mcPct, formats)}</span>
          <span className={css.unit}> {say('reading.mc')}</span>
          <span className={`soft ${css.label}`}>{say('reading.corrected', { how })}</span>
        </span>
      )}
      <span className={isRawAlone ? css.corrected : css.raw}>
        <span className={css.rawNumber}>{raw === null ? '–' : shownText({ raw, unit, isAbove }, words)}</span>
        <span className={`soft ${css.label}`}>
          {say(size === 'text' ? 'reading.raw' : 'reading.raw-as-shown')}
        </span>
      </span>
    </span>
  );
}
