import { median } from '../../wood/maths/robust.ts';
import { spotScatterPct } from '../../wood/moisture/spot-scatter.ts';
import { message } from '../../words/message.ts';
import { correctedIn } from '../readings/corrected-reading.ts';
import type { BoardEvidence } from '../readings/evidence.ts';
import type { Reading, Suspicion } from '../readings/reading.ts';
import { isOrdinaryByNature } from '../readings/typing-slip.ts';
import { DIFFERENCE_SCORE } from './difference-score.ts';

/** The factors of a mistyped resistance, as powers of ten: a decimal point missed, or a wrong prefix. */
const SLIPS = [1, -1, 2, -2, 3, -3, 6, -6];
/** Where no other reading tells, the intended value is looked for up to here, % MC. */
const MOST_ORDINARY_PCT = 40;

const timesTen = (raw: number, power: number): number => Number((raw * 10 ** power).toPrecision(12));
const isOrdinary = (mcPct: number | null): mcPct is number => mcPct !== null && isOrdinaryByNature(mcPct);

/**
 * A typed resistance ten or a thousand times too large or too small. Ten times is only two to five points of moisture
 * content, so it is judged on that: by the readings of its depth on the board, or, where no lumber reads like it, by
 * whatever else is known. A value that lumber may read is questionable at most, and a note beside one other reading:
 * either may be the slip.
 */
export function ohmSlip(reading: Reading, evidence: BoardEvidence): Suspicion | null {
  if (reading.how !== 'typed' || reading.unit !== 'ohm') return null;
  const mcOf = (raw: number): number | null => correctedIn({ ...reading, raw }, evidence).mcPct;
  const mcPct = mcOf(reading.raw);
  const others = evidence.readings.filter(({ id, excluded }) => id !== reading.id && excluded === null);
  const alike = others.filter(({ spot }) => spot.depth === reading.spot.depth);
  const mcsOf = (of: readonly Reading[]): number[] =>
    of.flatMap((each) => correctedIn(each, evidence).mcPct ?? []);

  const isPossible = isOrdinary(mcPct);
  const beside = mcsOf(isPossible ? alike : others);
  if (isPossible && beside.length === 0) return null;
  const before = evidence.previous === null ? [] : [evidence.previous.estimate.averagePct];
  const reference = beside.length > 0 ? beside : before;
  const aboutPct = reference.length > 0 ? median(reference) : null;
  const spreadPct =
    aboutPct === null ? 0 : DIFFERENCE_SCORE * spotScatterPct(aboutPct) * Math.sqrt(1 + 1 / reference.length);
  const offPct = (of: number): number => Math.abs(of - (aboutPct ?? of));
  if (isPossible && offPct(mcPct!) <= spreadPct) return null;
  // Where the others disagree, nobody knows which one to go by.
  if (isPossible && Math.max(...beside) - Math.min(...beside) > spreadPct) return null;
  // Of a single other one, the reading typed later is asked about.
  if (isPossible && beside.length === 1 && alike[0]!.id > reading.id) return null;

  const rawMeantOhm = SLIPS.map((power) => timesTen(reading.raw, power)).find((raw) => {
    const meantPct = mcOf(raw);
    if (!isOrdinary(meantPct)) return false;
    return aboutPct === null
      ? meantPct <= MOST_ORDINARY_PCT
      : offPct(meantPct) <= (isPossible ? spreadPct / 2 : spreadPct);
  });
  if (rawMeantOhm === undefined) return null;
  return {
    rule: 'typing-slip',
    severity: !isPossible ? 'refused' : beside.length === 1 ? 'note' : 'questionable',
    why: message('suspicion.typing-slip.ohm', { rawOhm: reading.raw, rawMeantOhm }),
    whatToDo: message('suspicion.typing-slip.ohm.do', { rawMeantOhm }),
  };
}
