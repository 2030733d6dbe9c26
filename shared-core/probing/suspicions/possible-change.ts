import { DAY_S } from '../../time.ts';
import { transverseDiffusivityM2S } from '../../wood/drying/diffusivity.ts';
import type { BoardEvidence, PlaceFacts } from '../readings/evidence.ts';
import type { Depth } from '../readings/reading.ts';

/** Nowhere does lumber stand in air warmer than this, so nowhere does moisture move faster than at it, °C. */
const WARMEST_C = 40;
/** Assumed where the specific gravity is not known: as light a species as is commonly sawn. */
const LIGHTEST = 0.3;

/** Wood does not get drier than this in any air that lumber dries in (10 % relative humidity), % MC. */
const DRIEST_PCT = 2.5;

/**
 * Siau's diffusivity at its largest over moisture content, in the warmest air. Real boards dry several times slower
 * (`wood/drying/diffusivity.ts`), which makes the bound below one that no sound board passes.
 */
function largestDiffusivityM2S(basicSpecificGravity: number): number {
  return Math.max(
    ...[20, 25, 30].map((mcPct) => transverseDiffusivityM2S(mcPct, WARMEST_C, basicSpecificGravity)),
  );
}

/**
 * The largest part of the way to a new boundary value that wood can have gone since the surface last changed, as a
 * fraction 0 to 1, by Fourier number Fo = D t / l² with l half the thickness and both faces held at the new value.
 *
 * Core: the center of the sheet has gone at most 2 erfc(1 / (2 √Fo)) of the way, the leading term of Crank's series
 * for small times, whose next term takes away; erfc(x) is at most exp(-x²), which is used for it. Shell: 1, the
 * surface follows at once. Average: at most 2 √(Fo / π), the first term of the series for small times (eq. 4.20), whose
 * next terms take away.
 *
 * @param thicknessMm board thickness, mm, above 0
 * @param days        time passed, days, 0 or more
 * @param basicSpecificGravity of the species; null where not known
 * Source: J. Crank, The Mathematics of Diffusion (1975), eqs. 4.18 and 4.20 (from memory).
 */
export function largestResponse(
  depth: Depth,
  thicknessMm: number,
  days: number,
  basicSpecificGravity: number | null,
): number {
  if (depth === 'shell') return 1;
  const half = thicknessMm / 2000;
  const diffusivity = largestDiffusivityM2S(basicSpecificGravity ?? LIGHTEST);
  const fourier = (diffusivity * days * DAY_S) / (half * half);
  if (depth === 'average') return Math.min(1, 2 * Math.sqrt(fourier / Math.PI));
  return Math.min(1, 2 * Math.exp(-1 / (4 * fourier)));
}

/**
 * Lowest and highest MC that a sound board can show now at one depth, given what it showed last time, % MC.
 *
 * Upwards it can go to fiber saturation in the rain (30 %, outdoors), to what damp spells allow under a roof (6 %
 * over the place's EMC) and to little above the place's EMC indoors (3 %); those margins are common practice, no
 * source. Without a known EMC under a roof 24 % at most is assumed, a shop for 16 %, a heated room for 12 %.
 *
 * @param beforePct   MC at that depth in the last round, %
 * @param thicknessMm board thickness, mm, above 0
 * @param days        time since then, days, 0 or more
 */
export function possibleRange(
  depth: Depth,
  beforePct: number,
  thicknessMm: number,
  days: number,
  { place, species }: Pick<BoardEvidence, 'place' | 'species'>,
): { lowPct: number; highPct: number } {
  const response = largestResponse(depth, thicknessMm, days, species.basicSpecificGravity);
  const wettest = wettestPct(place);
  return {
    lowPct: beforePct - response * Math.max(0, beforePct - DRIEST_PCT),
    highPct: beforePct + response * Math.max(0, wettest - beforePct),
  };
}

function wettestPct({ kind, emcPct }: PlaceFacts): number {
  switch (kind) {
    case 'outdoors':
      return 30;
    case 'open-shed':
      return emcPct === null ? 24 : emcPct + 6;
    case 'shop':
      return emcPct === null ? 16 : emcPct + 3;
    case 'heated-room':
      return emcPct === null ? 12 : emcPct + 3;
  }
}
