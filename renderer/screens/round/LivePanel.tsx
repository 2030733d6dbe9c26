import type { CorrectionWarning } from '../../../shared-core/wood/corrected.ts';
import { McValue } from '../../parts/McValue.tsx';
import { PhaseMark } from '../../parts/PhaseMark.tsx';
import { Trace } from '../../parts/Trace.tsx';
import { useMeter } from '../../stores/meter.ts';

/** Said while the pins are still in, when something can still be done about it. */
const warningWords: Partial<Record<CorrectionWarning, string>> = {
  'no-species-correction': 'No correction is known for this wood: corrected for temperature only.',
  'temperature-unknown': 'Wood temperature not known: not corrected for it.',
  'temperature-out-of-range': 'Wood temperature outside the formula’s range.',
  frozen: 'Frozen wood: no pin reading is valid.',
  'below-meter-range': 'Drier than a pin meter can tell.',
  'above-fibre-saturation': 'Above fibre saturation: a rough idea only.',
  'outside-curve': 'Beyond the published figures for this wood: extended.',
  'not-a-reading': 'This cannot be a moisture content.',
};

/** The live value: corrected and raw, what the pins are doing, and how it got there. */
export function LivePanel() {
  const live = useMeter((meter) => meter.live);
  const trace = useMeter((meter) => meter.trace);
  const unit = live?.unit ?? 'pct';
  const warning = live?.corrected?.warnings.map((each) => warningWords[each]).find(Boolean);
  return (
    <div className="live-panel">
      <PhaseMark phase={live?.phase ?? 'pins-out'} />
      <McValue mcPct={live?.corrected?.mcPct ?? null} raw={live?.raw ?? null} unit={unit} size="huge" />
      {warning && <p className="live-warning">{warning}</p>}
      <Trace values={trace} unit={unit} />
    </div>
  );
}
