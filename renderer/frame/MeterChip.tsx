import type { MeterState } from '../../shared-core/contract/meter.ts';
import { useMeter } from '../stores/meter.ts';
import { hrefOf } from '../stores/navigation.ts';

const phaseWords: Record<MeterState['phase'], string> = {
  idle: 'No meter',
  scanning: 'Looking for meters',
  connecting: 'Connecting',
  discovering: 'Asking what it offers',
  'needs-description': 'Needs describing',
  live: 'Live',
  reconnecting: 'Lost, trying again',
  failed: 'Failed',
};

/** How the meter is, in words and by shape; leads to the meter's page. */
export function MeterChip() {
  const state = useMeter((meter) => meter.state);
  if (!state) return null;
  const look =
    state.phase === 'live'
      ? 'live'
      : state.phase === 'failed'
        ? 'failed'
        : state.phase === 'idle'
          ? 'idle'
          : 'busy';
  return (
    <a className={`meter-chip meter-chip-${look}`} href={hrefOf({ name: 'meter' })} title={state.sentence}>
      <svg viewBox="0 0 12 12" aria-hidden="true">
        {look === 'live' && <circle cx="6" cy="6" r="5.5" fill="currentColor" />}
        {look === 'busy' && <path d="M6 0 12 6 6 12 0 6z" fill="currentColor" />}
        {look === 'failed' && <path d="M1 1l10 10M11 1 1 11" stroke="currentColor" strokeWidth="3" />}
        {look === 'idle' && (
          <circle cx="6" cy="6" r="4.5" fill="none" stroke="currentColor" strokeWidth="2" />
        )}
      </svg>
      <span>
        <span className="spoken-only">Meter:</span>{' '}
        {state.kind === 'simulated' && state.phase === 'live'
          ? 'Simulated meter live'
          : phaseWords[state.phase]}
        {/* No-break spaces: the number stays with its sign where the chip takes two lines. */}
        {state.batteryPct !== null && ` · battery\u00a0${Math.round(state.batteryPct)}\u00a0%`}
      </span>
    </a>
  );
}
