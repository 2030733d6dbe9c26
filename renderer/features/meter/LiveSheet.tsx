import type { MeterState } from '../../../shared-core/contract/meter.ts';
import { Trace } from '../../chart/Trace.tsx';
import { TRACE_LENGTH, useMeter } from '../../stores/meter.ts';
import { rawText } from '../../ui/McValue.tsx';
import { PhaseMark } from '../../ui/PhaseMark.tsx';
import { Sheet } from '../../ui/Screen.tsx';
import { useWords } from '../../words.ts';
import { Fact } from './Fact.tsx';
import { MeterElsewhere } from './MeterElsewhere.tsx';

/** What the meter sends now, and that every notification is accounted for. */
export function LiveSheet({ state }: { state: MeterState }) {
  const { say, formats } = useWords();
  const { counts, batteryPct } = state;
  return (
    <Sheet title={say('meter.live.title')}>
      {state.heldBy === 'this-window' ? <LiveValue /> : <MeterElsewhere />}
      <dl className="meter-facts">
        <Fact name={say('meter.live.received')}>{formats.number(counts.received)}</Fact>
        <Fact name={say('meter.live.decoded')}>{formats.number(counts.decoded)}</Fact>
        <Fact name={say('meter.live.no-reading')}>{formats.number(counts.noReading)}</Fact>
        <Fact name={say('meter.live.refused')}>{formats.number(counts.refused)}</Fact>
        <Fact name={say('meter.live.battery')}>
          {batteryPct === null ? say('meter.live.battery-unknown') : formats.wholePercent(batteryPct)}
        </Fact>
      </dl>
      {counts.lastRefusal && <p>{say('meter.live.last-refused', { why: counts.lastRefusal })}</p>}
    </Sheet>
  );
}

function LiveValue() {
  const live = useMeter((meter) => meter.live);
  const trace = useMeter((meter) => meter.trace);
  const { say, formats } = useWords();
  const unit = live?.unit ?? 'pct';
  const raw = live?.raw ?? null;
  const spread = live?.spread ?? null;
  const correctedPct = live?.corrected?.mcPct ?? null;
  return (
    <div className="meter-live">
      <PhaseMark phase={live?.phase ?? 'pins-out'} />
      <p className="meter-live-value">
        <strong>{raw === null ? '–' : rawText(raw, unit, formats)}</strong>{' '}
        <span>{say('meter.live.raw')}</span>
      </p>
      {spread !== null && (
        <p>
          {unit === 'pct'
            ? say('meter.live.spread-pct', { spreadPoints: spread })
            : say('meter.live.spread-ohm', { spreadOhm: spread })}
        </p>
      )}
      {correctedPct !== null && <p>{say('meter.live.corrected', { correctedPct })}</p>}
      <Trace values={trace} unit={unit} slots={TRACE_LENGTH} />
    </div>
  );
}
