/** The average that weight and size follow from: as it was read last, or as the forecast has it today. */
export interface KnownAverage {
  averagePct: number;
  /** UTC, ISO 8601; null where it is the forecast's, for today. */
  readOn: string | null;
}

/**
 * What was read last, if that can be relied on; else the forecast for today.
 * @param latest       of its newest round; null where it was never probed
 * @param forecastPct  null without a forecast
 * @returns            null where neither is known
 */
export function knownAverage(
  latest: { at: string; averagePct: number | null; isQuestionable: boolean } | null,
  forecastPct: number | null,
): KnownAverage | null {
  if (latest && latest.averagePct !== null && !latest.isQuestionable)
    return { averagePct: latest.averagePct, readOn: latest.at };
  return forecastPct === null ? null : { averagePct: forecastPct, readOn: null };
}
