import type { Live } from '../../shared-core/contract/round.ts';
import { useWords } from '../words.ts';
import css from './phase-mark.module.css';

const inks = { 'pins-out': 'var(--ink-soft)', drifting: 'var(--keep-drying)', settled: 'var(--ready)' };

/** What the pins are doing: open ring, wave, filled square with a tick; always with the word. */
export function PhaseMark({ phase }: { phase: Live['phase'] }) {
  const { say } = useWords();
  return (
    <span className={`marked ${css.phase}`} style={{ color: inks[phase] }}>
      <svg viewBox="0 0 24 24" aria-hidden="true">
        {phase === 'pins-out' && <circle cx="12" cy="12" r="9" strokeDasharray="4 3.5" />}
        {phase === 'drifting' && <path d="M1 12c3.5-9 7.5-9 11 0s7.5 9 11 0" />}
        {phase === 'settled' && (
          <>
            <rect x="1.5" y="1.5" width="21" height="21" rx="3" fill="currentColor" />
            <path d="M6.5 12.5l4 4 7-8" stroke="var(--sheet)" />
          </>
        )}
      </svg>
      <span className={css.words}>{say(`pins.${phase}`)}</span>
    </span>
  );
}
