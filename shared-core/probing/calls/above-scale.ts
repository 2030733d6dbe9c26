/** A board of which a reading is above the scale of its meter: no more is known of its average than that it is higher. */
import { isShownAbove } from '../../wood/moisture/shown-points.ts';
import { type Message, message } from '../../words/message.ts';
import type { Estimate } from '../readings/estimate.ts';
import type { BoardEvidence } from '../readings/evidence.ts';
import type { JudgedReading } from '../readings/reading.ts';
import { isQuestionable } from '../suspicions/suspicion.ts';
import type { MadeCall } from './assessment.ts';

/** Whether a reading that is used says only that the wood is wetter. More ohms are drier wood. */
const isAboveScale = ({ counts, isAbove, unit, suspicions }: JudgedReading): boolean =>
  counts && isAbove === true && unit === 'pct' && !isQuestionable(suspicions);

export const isAnyAboveScale = (readings: readonly JudgedReading[]): boolean => readings.some(isAboveScale);

/** Reasons that hold of an average, and not of what is known only to be higher. */
const OF_AVERAGE = [
  'call.too-wet',
  'call.probably-too-wet',
  'call.may-be-too-wet',
  'call.too-close',
  'call.likely',
  'call.average-in-target',
];
const isOfAverage = ({ code }: Message): boolean => OF_AVERAGE.includes(code);

/** The call that the number gave, for an average that is higher: too wet is too wet, and nothing else is sure. */
export function callAboveScale(
  made: MadeCall,
  { averagePct }: Estimate,
  readings: readonly JudgedReading[],
  { endUse: { minPct, maxPct } }: Pick<BoardEvidence, 'endUse'>,
): MadeCall {
  const above = readings.find(isAboveScale)?.suspicions.find(({ rule }) => rule === 'outside-meter-range');
  if (above === undefined) return made;
  const [first, ...others] = made.reasons;
  if (made.call !== 'ready' && made.call !== 'too-dry' && !isOfAverage(first))
    return { call: made.call, reasons: [first, ...others.filter((each) => !isOfAverage(each))] };
  if (!isShownAbove(averagePct, maxPct)) return { call: 'probe-again', reasons: [above.why, above.whatToDo] };
  const targetRange = { minPct, maxPct };
  return { call: 'keep-drying', reasons: [message('call.above-scale', { averagePct, targetRange })] };
}
