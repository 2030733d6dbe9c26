/** What the place of a board that is too wet adds to its call: dry on there, or bring it in. */
import { z } from 'zod';
import { isShownAbove } from '../../wood/moisture/shown-points.ts';
import { type Message, message, type PctRange } from '../../words/message.ts';
import type { AverageIs } from '../readings/estimate.ts';
import type { ReasonedCall, SpotsRead } from './assessment.ts';

/** The lowest EMC of a place: one number wherever it is shown. */
export const lowestEmcSchema = z.object({
  placeName: z.string(),
  emcPct: z.number(),
  /** 1 to 12; null where it is the same all year. */
  month: z.number().int().nullable(),
  /** By the readings of boards there, which differ from its months. */
  isByReadings: z.boolean(),
  /** Its months are the average of its region, or what is usual in such a room. */
  isRough: z.boolean(),
});
export type LowestEmc = z.infer<typeof lowestEmcSchema>;

/** What a round found by its readings alone. */
export interface Found extends ReasonedCall {
  /** UTC, ISO 8601. */
  at: string;
  /** Null where no reading counts. */
  averagePct: number | null;
  averageIs: AverageIs;
  corePct: number | null;
  /** The average rests on questionable readings. */
  isQuestionable: boolean;
  /** Null where there is a call. */
  spotsRead: SpotsRead | null;
}

/** Whether its readings put its average above the target: only then does the place decide. */
export const isTooWet = (
  { call, averagePct }: Pick<Found, 'call' | 'averagePct'>,
  { maxPct }: PctRange,
): boolean => call === 'keep-drying' && averagePct !== null && isShownAbove(averagePct, maxPct);

/** Wetter boards dry outdoors first, % MC: in a heated room they may check. Common practice, no source. */
export const DRY_ENOUGH_FOR_INDOORS_PCT = 20;
/**
 * Nor is one brought in whose core is wetter than this, % MC: "after being air seasoned to a moisture content of 20 to 25
 * percent, lumber can be kiln dried … without much danger of additional checking" (O. W. Torgeson, FPL Report 1684, 1956).
 */
export const DRY_ENOUGH_CORE_PCT = 25;

export const isTooWetForIndoors = (averagePct: number, corePct: number | null): boolean =>
  averagePct > DRY_ENOUGH_FOR_INDOORS_PCT || (corePct ?? 0) > DRY_ENOUGH_CORE_PCT;

/** As sentences name them. */
export const limitsForIndoors = {
  dryEnoughLimitPct: DRY_ENOUGH_FOR_INDOORS_PCT,
  coreLimitPct: DRY_ENOUGH_CORE_PCT,
};

/** Why a board that is too wet is to be brought in, beside what its place does to it. */
export const dryEnoughToBringIn = message('call.dry-enough-to-bring-in', limitsForIndoors);

export interface Here {
  placeName: string;
  /** Null where its air is not known. */
  lowestEmc: LowestEmc | null;
  target: PctRange;
  /** Today, % MC; the core is null where nothing is known of it. */
  averagePct: number;
  corePct: number | null;
  /** Whether the forecast has it get there; null without one. */
  getsThere: boolean | null;
}

/**
 * The call that readings alone make, with what the place decides. Only boards too wet for their use are to be brought in:
 * one that is dry enough on average and uneven through its thickness equalizes where it is. Its number comes first, then
 * what the place does to it.
 */
export function callHere(found: Found, here: Here): ReasonedCall {
  const { call, reasons } = found;
  const [first, ...more] = reasons;
  const { placeName, lowestEmc, target, averagePct, corePct, getsThere } = here;
  if (!isTooWet(found, target)) return { call, reasons };
  if (lowestEmc === null && getsThere === null)
    return { call, reasons: [...reasons, message('call.air-unknown', { placeName })] };
  const isDryEnough = lowestEmc === null || lowestEmc.emcPct <= target.maxPct;
  if (getsThere ?? isDryEnough)
    return lowestEmc === null || getsThere
      ? { call, reasons }
      : { call, reasons: [first, driesTo(lowestEmc), ...more, ...basis(lowestEmc)] };
  const why =
    lowestEmc !== null && !isDryEnough
      ? tooDamp(lowestEmc)
      : message('call.place-too-slow', { placeName, targetRange: target });
  const rough = lowestEmc === null ? [] : basis(lowestEmc);
  const rule = ruleForIndoors(found, averagePct, corePct);
  return {
    call: rule === dryEnoughToBringIn ? 'bring-in' : call,
    reasons: [first, why, rule, ...more, ...rough],
  };
}

/** Whether it may be brought in: of a shell alone, and without a forecast, nobody knows whether the core would check. */
function ruleForIndoors({ averageIs }: Found, averagePct: number, corePct: number | null): Message {
  if (isTooWetForIndoors(averagePct, corePct)) return message('call.too-wet-to-bring-in', limitsForIndoors);
  return averageIs === 'unknown' && corePct === null
    ? message('call.core-unread-to-bring-in', { coreLimitPct: DRY_ENOUGH_CORE_PCT })
    : dryEnoughToBringIn;
}

/** Only a forecast can promise it: the air may be so dry for too short a time. */
const driesTo = ({ placeName, emcPct, month }: LowestEmc): Message =>
  month === null
    ? message('call.place-dries-to-all-year', { placeName, emcPct })
    : message('call.place-dries-to', { placeName, emcPct, airMonth: month });

const tooDamp = ({ placeName, emcPct, month }: LowestEmc): Message =>
  month === null
    ? message('call.place-too-damp-all-year', { placeName, emcPct })
    : message('call.place-too-damp', { placeName, emcPct, airMonth: month });

/** What the lowest EMC is based on, where that is not months that a person gave. */
const basis = ({ isRough, isByReadings, placeName }: LowestEmc): Message[] => [
  ...(isRough ? [message('call.rough-air', { placeName })] : []),
  ...(isByReadings ? [message('call.emc-by-readings', { placeName })] : []),
];
