import { isShownAbove } from '../../wood/moisture/shown-points.ts';
import type { EndUse } from '../../wood/species/end-use.ts';

/** A shell–core difference does harm from so far above its limit, points of MC. Common practice, no source. */
export const UNEVEN_BY_POINTS = 1;

interface Found {
  averagePct: number;
  shellPct: number | null;
  corePct: number | null;
}

/** Whether a shell–core difference that would do harm is only what drying brings: the board is too wet, and its core wetter. */
export const isGradientOfDrying = (
  { averagePct, shellPct, corePct }: Found,
  { maxPct, maxShellCorePct }: Pick<EndUse, 'maxPct' | 'maxShellCorePct'>,
): boolean =>
  maxShellCorePct !== null &&
  shellPct !== null &&
  corePct !== null &&
  isShownAbove(averagePct, maxPct) &&
  corePct - shellPct > maxShellCorePct + UNEVEN_BY_POINTS;
