import type { MeterState } from '../../../shared-core/contract/meter.ts';
import { TRACE_LENGTH } from '../../../shared-core/contract/round.ts';
import { Trace } from '../../chart/Trace.tsx';
import { useMeter } from '../../stores/meter.ts';
import { rawText } from '../../ui/McValue.tsx';
import { PhaseMark } from '../../ui/PhaseMark.tsx';
import { Sheet } from '../../ui/Screen.tsx';
import { useWords } from '../../words.ts';
import { MeterElsewhere } from './MeterElsewhere.tsx';
import { SpeciesSetting } from './SpeciesSetting.tsx';

/** What the meter sends now. */
export function LiveSheet({ state }: { state: MeterState }) {
  const { say } = useWords();
  return (
    <Sheet title={say('meter.live.title')}>
      {state.heldBy === 'this-window' ? <LiveValue /> : <MeterElsewhere />}
      <SpeciesSetting state={state} />
      {state.batteryPct !== null && <p>{say('meter.live.battery-at', { batteryPct: state.batteryPct })}</p>}
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
  return (
    <>
      <PhaseMark phase={live?.phase ?? 'pins-out'} />
      <p className="meter-live-value">
        <strong>{raw === null ? '–' : rawText(raw, unit, formats)}</strong>{' '}
        <span className="soft">{say('meter.live.raw')}</span>
      </p>
      {spread !== null && (
        <p>
          {unit === 'pct'
            ? say('meter.live.spread-pct', { spreadPoints: spread })
            : say('meter.live.spread-ohm', { spreadOhm: spread })}
        </p>
      )}
      {live?.tempC != null && <p>{say('meter.live.temp', { woodTempC: live.tempC })}</p>}
      <Trace values={trace} unit={unit} slots={TRACE_LENGTH} />
    </>
  );
}
