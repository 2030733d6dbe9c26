import type { MeterState } from '../../shared-core/contract/meter.ts';
import { usePausedRound } from '../data/usePausedRound.ts';
import { isLinkLost, useLink } from '../stores/link.ts';
import { isLiveHere, useMeter } from '../stores/meter.ts';
import { hrefOf } from '../stores/navigation.ts';
import { useWords } from '../words.ts';
import css from './meter-chip.module.css';

type Chip =
  `meter.chip.${MeterState['phase'] | 'to-confirm' | 'simulated-live' | 'paused' | 'no-bluetooth' | 'unknown'}`;

function chipOf({ kind, phase, message, toConfirm }: MeterState, isPaused: boolean): Chip {
  if (phase === 'live' && toConfirm !== null) return 'meter.chip.to-confirm';
  if (isPaused) return 'meter.chip.paused';
  if (phase === 'live' && kind === 'simulated') return 'meter.chip.simulated-live';
  if (phase === 'failed' && message.code.startsWith('meter.adapter.')) return 'meter.chip.no-bluetooth';
  return `meter.chip.${phase}`;
}

/** How the meter is, in words and by shape, and whether its values are saved; leads to the meter's page. */
export function MeterChip() {
  const state = useMeter((meter) => meter.state);
  const isLost = useLink(isLinkLost);
  const isPaused = usePausedRound(useMeter(isLiveHere)) !== null;
  const { say } = useWords();
  if (!state) return null;
  const chip = isLost ? 'meter.chip.unknown' : chipOf(state, isPaused);
  return (
    <a
      className={`marked ${css.chip}`}
      href={hrefOf({ name: 'meter' })}
      title={isLost ? undefined : say(state.message)}
    >
      <svg viewBox="0 0 12 12" aria-hidden="true">
        {isLost ? (
          <path d="M2 2l8 8M10 2 2 10" stroke="currentColor" strokeWidth="2" />
        ) : chip === 'meter.chip.paused' ? (
          <path d="M3.5 1v10M8.5 1v10" stroke="currentColor" strokeWidth="3" />
        ) : state.phase === 'live' && state.toConfirm === null ? (
          <circle cx="6" cy="6" r="5.5" fill="var(--ready)" />
        ) : state.phase === 'failed' ? (
          <path d="M1 1l10 10M11 1 1 11" stroke="var(--problem)" strokeWidth="3" />
        ) : state.phase === 'idle' ? (
          <circle cx="6" cy="6" r="4.5" fill="none" stroke="currentColor" strokeWidth="2" />
        ) : (
          <path d="M6 0 12 6 6 12 0 6z" fill="var(--keep-drying)" />
        )}
      </svg>
      <span>
        <span className="spoken-only">{say('meter.chip.label')}</span> {say(chip)}
        {!isLost &&
          chip !== 'meter.chip.paused' &&
          state.batteryPct !== null &&
          ` · ${say('meter.chip.battery', { batteryPct: state.batteryPct })}`}
      </span>
    </a>
  );
}
