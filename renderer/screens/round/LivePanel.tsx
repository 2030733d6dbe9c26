import type { CorrectionWarning } from '../../../shared-core/wood/moisture/corrected.ts';
import { McValue } from '../../parts/McValue.tsx';
import { PhaseMark } from '../../parts/PhaseMark.tsx';
import { Trace } from '../../parts/Trace.tsx';
import { useMeter } from '../../stores/meter.ts';
import { useRound } from '../../stores/round.ts';
import { newestInsertion } from './insertion.ts';
import { depthName, isQuestionableReading } from './suspicion-words.ts';

/** Said while the pins are still in, when something can still be done about it. */
const warningWords: Partial<Record<CorrectionWarning, string>> = {
  'no-species-correction': 'No correction is known for this wood: corrected for temperature only.',
  'temperature-unknown': 'Wood temperature not known: not corrected for it.',
  'temperature-out-of-range': 'Wood temperature outside the formula’s range.',
  frozen: 'Frozen wood: no pin reading is valid.',
  'below-meter-range': 'Drier than a pin meter can tell.',
  'above-fiber-saturation': 'Above fibre saturation: a rough idea only.',
  'outside-curve': 'Beyond the published figures for this wood: extended.',
  'not-a-reading': 'This cannot be a moisture content.',
};

/** So many values fill the picture at least: a lively meter's first seconds. */
const LEAST_SLOTS = 40;

/**
 * The live value: corrected and raw, what the pins are doing, and how it got there. With the pins out, the board's
 * last kept reading stays in sight, named as such.
 */
export function LivePanel({ boardId }: { boardId: number }) {
  const live = useMeter((meter) => meter.live);
  const trace = useMeter((meter) => meter.trace);
  const saved = useRound((store) => store.saved);
  const phase = live?.phase ?? 'pins-out';
  const shown = phase === 'pins-out' && saved?.board.boardId === boardId ? saved.reading : null;
  const unit = shown?.unit ?? live?.unit ?? 'pct';
  const warning = live?.corrected?.warnings.map((each) => warningWords[each]).find(Boolean);
  return (
    <div className="live-panel">
      <p className="live-phase">
        <PhaseMark phase={phase} />
        {shown && (
          <span
            className={isQuestionableReading(shown) ? 'live-saved live-saved-questionable' : 'live-saved'}
          >
            {shown.counts ? `✓ ${depthName(shown)} kept:` : `✕ ${depthName(shown)} not counted:`}
          </span>
        )}
        {warning && <span className="live-warning">{warning}</span>}
      </p>
      <div className={shown && !isQuestionableReading(shown) ? 'live-value live-value-saved' : 'live-value'}>
        <McValue
          mcPct={shown ? shown.corrected.mcPct : (live?.corrected?.mcPct ?? null)}
          raw={shown ? shown.raw : (live?.raw ?? null)}
          unit={unit}
          size="huge"
        />
      </div>
      <Trace values={newestInsertion(trace)} unit={unit} slots={LEAST_SLOTS} />
    </div>
  );
}
