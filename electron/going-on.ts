/** So many faults within a minute are no single ones. */
const MAX_FAULTS = 20;
const WINDOW_MS = 60_000;

/**
 * Faults that nothing caught are written down, and the process goes on.
 *
 * It may: a request is one transaction, which a fault in the middle undoes, and every save is checked against the file
 * by board, spot and newest reading. So what is saved stays right, whatever the fault left in memory. Ending would
 * cost more: the meter, all windows, and what is typed in them. Where faults do not stop, the process ends after all,
 * rather than spin.
 */
export function goOnAfterFaults(report: (error: unknown) => void, end: () => void): void {
  let recent: number[] = [];
  function note(error: unknown): void {
    const now = performance.now();
    recent = [...recent.filter((at) => now - at < WINDOW_MS), now];
    report(error);
    if (recent.length > MAX_FAULTS) end();
  }
  process.on('uncaughtException', note);
  process.on('unhandledRejection', note);
}
