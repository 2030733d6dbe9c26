import type { MeterState } from '../../../shared-core/contract/meter.ts';
import { pctWords, rawWords } from '../../parts/McValue.tsx';
import { PhaseMark } from '../../parts/PhaseMark.tsx';
import { Sheet } from '../../parts/Screen.tsx';
import { Trace } from '../../parts/Trace.tsx';
import { TRACE_LENGTH, useMeter } from '../../stores/meter.ts';

/** What the meter sends now, and that every notification is accounted for. */
export function LiveSheet({ state }: { state: MeterState }) {
  return (
    <Sheet title="Live">
      <LiveValue />
      <dl className="meter-facts">
        <Fact name="Received" value={state.counts.received.toLocaleString('en')} />
        <Fact name="Decoded" value={state.counts.decoded.toLocaleString('en')} />
        <Fact name="No reading (pins out)" value={state.counts.noReading.toLocaleString('en')} />
        <Fact name="Refused" value={state.counts.refused.toLocaleString('en')} />
        <Fact
          name="Battery"
          value={state.batteryPct === null ? 'not told' : `${Math.round(state.batteryPct)} %`}
        />
      </dl>
      {state.counts.lastRefusal && <p>Last refused: {state.counts.lastRefusal}</p>}
    </Sheet>
  );
}

function LiveValue() {
  const live = useMeter((meter) => meter.live);
  const trace = useMeter((meter) => meter.trace);
  const unit = live?.unit ?? 'pct';
  return (
    <div className="meter-live">
      <PhaseMark phase={live?.phase ?? 'pins-out'} />
      <p className="meter-live-value">
        <strong>{rawWords(live?.raw ?? null, unit)}</strong> <span>raw, as the meter shows</span>
      </p>
      {live?.spread !== null && live?.spread !== undefined && (
        <p>
          Spread over the last moments:{' '}
          {unit === 'pct' ? `${pctWords(live.spread)} %` : rawWords(live.spread, unit)}
        </p>
      )}
      {live?.corrected && (
        <p>
          Corrected for the board of the round: <strong>{pctWords(live.corrected.mcPct)} % MC</strong>
        </p>
      )}
      <Trace values={trace} unit={unit} slots={TRACE_LENGTH} />
    </div>
  );
}

function Fact({ name, value }: { name: string; value: string }) {
  return (
    <div>
      <dt>{name}</dt>
      <dd className="tabular">{value}</dd>
    </div>
  );
}
