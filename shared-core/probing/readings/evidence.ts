import type { MeterScale } from '../../wood/moisture/corrected.ts';
import type { OwnCalibration } from '../../wood/moisture/correction.ts';
import type { LearnedBias } from '../../wood/moisture/meter-bias.ts';
import type { Sawing } from '../../wood/movement/shrinkage.ts';
import type { EndUse } from '../../wood/species/end-use.ts';
import type { Species } from '../../wood/species/species.ts';
import type { Estimate } from './estimate.ts';
import type { Pins } from './pins.ts';
import type { DriestAir, PriorNow } from './prior-now.ts';
import type { HistoryProfile } from './profile-posterior.ts';
import type { Depth, Reading } from './reading.ts';

/** What must be known of a meter to judge its readings; null where not known. */
export type MeterFacts = {
  /** What a shown % means. */
  scale: MeterScale;
  /** It shows a % that is corrected for temperature already; left out or null where that is not known. */
  compensatesTemp?: boolean | null;
  /** Left out or null where unknown. */
  pins?: Pins | null;
  /** Its standard uncertainty from one board to the next, % MC; left out or null: the usual one. */
  meterSdPct?: number | null;
  /** What a check found it to be off by, points or decades of ohms; left out: 0. */
  meterOff?: number;
  /** Smallest and largest value that its scale shows, in its unit. */
  range: { min: number; max: number } | null;
  /** The person's own oven-dry checks of the board's species with this meter; left out where they are not to be used. */
  ownCalibration?: OwnCalibration | null;
  /** What boards of known moisture content taught of this meter on the board's species; left out or null: nothing. */
  learned?: LearnedBias | null;
};

/** Where the board is now. */
export type PlaceFacts = {
  name: string;
  kind: 'outdoors' | 'open-shed' | 'shop' | 'heated-room';
  /** EMC of the air there in that month, % MC; null where the air is not known. */
  emcPct: number | null;
  /** 1 to 12. */
  month: number;
  /** Temperature of that air, °C; left out or null where it is not known. */
  airTempC?: number | null;
  /** A person measured it then; left out: it is the mean of the month. */
  isAirMeasured?: boolean;
  /** The board came here from damper air within the last two months; left out or null where that is not known. */
  isNewHere?: boolean | null;
};

/** What an earlier round found, and when its last reading was taken (UTC, ISO 8601). */
export type EarlierRound = {
  estimate: Estimate;
  takenAt: string;
  /** Whether it was elsewhere since; left out where that is not known, which counts as yes. */
  moved?: boolean;
  /** Whether its readings alone called the board ready; left out where that is not known. */
  isReady?: boolean;
};

/** Everything that one board's call for one round is made from. */
export type BoardEvidence = {
  board: {
    thicknessMm: number;
    /** 8 where it was given as 8/4; left out or null where it was not given in quarters. */
    thicknessQuarters?: number | null;
    lengthMm: number | null;
    /** Left out or null, and left out or `unknown`, where that is not known. */
    widthMm?: number | null;
    sawing?: Sawing | 'unknown';
    /** A person confirmed its species; left out where not confirmed. */
    isSpeciesConfirmed?: boolean;
  };
  species: Species;
  endUse: EndUse;
  /** How many spots of each depth are planned; left out: two pairs of shell and core, or one on a short board. */
  plan?: Record<Depth, number>;
  /** What its last forecast, made before these readings, has for this day; left out or null where there is none. */
  profile?: HistoryProfile | null;
  place: PlaceFacts;
  /** All readings of this board in this round, excluded ones too. */
  readings: Reading[];
  /** By the reading's `meterProfileId`. */
  meters: Readonly<Record<number, MeterFacts>>;
  /** Holds for readings that were typed before a meter was chosen. */
  typedBasis: MeterFacts;
  /** What it can be expected to have before any reading; left out or null where that is not known, or an earlier round was believed. */
  prior?: PriorNow | null;
  /** Of the places where it has been as far as is known; left out or null likewise. */
  driestAir?: DriestAir | null;
  /** The last round before this one; null on a board's first round. */
  previous: EarlierRound | null;
  /** The last one before this that read every spot it needed; left out or null where none did. */
  fullRound?: EarlierRound | null;
};
