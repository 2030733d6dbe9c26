/** Moisture content as the sentences of the core say it: "12.6 %". */
export function pct(mcPct: number): string {
  return `${mcPct
    .toFixed(1)
    .replace(/^-0\.0$/, '0.0')
    .replace('-', '−')} %`;
}

/** A count with its noun: "1 board", "3 boards". */
export function counted(count: number, noun: string): string {
  return `${count} ${noun}${count === 1 ? '' : 's'}`;
}

/** The range that a use wants: "6.0 % to 8.0 %", "20.0 % or less". */
export function rangeOf(endUse: { minPct: number; maxPct: number }): string {
  return endUse.minPct === 0
    ? `${pct(endUse.maxPct)} or less`
    : `${pct(endUse.minPct)} to ${pct(endUse.maxPct)}`;
}
