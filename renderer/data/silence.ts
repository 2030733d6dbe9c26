/** Where nothing was heard for so long, a question is sent that takes the machine no time, ms. */
const ASKS_AFTER_MS = 2000;
/** Where nothing was heard for so long since then, the machine does not answer, ms. */
const SILENT_AFTER_MS = 5000;

/**
 * Notices a machine that is there and does nothing, as one that was stopped. Long work is no silence: the machine
 * answers questions meanwhile.
 * @param ask   sends that question
 * @param tell  called when the machine falls silent, and when it is heard again
 */
export function watchSilence(ask: () => void, tell: (isSilent: boolean) => void) {
  let timer: ReturnType<typeof setTimeout> | undefined;
  let isSilent = false;

  function wait(): void {
    ask();
    timer = setTimeout(() => {
      isSilent = true;
      tell(true);
    }, SILENT_AFTER_MS);
  }
  return {
    /** Anything came from the machine. */
    heard: (): void => {
      clearTimeout(timer);
      timer = setTimeout(wait, ASKS_AFTER_MS);
      if (!isSilent) return;
      isSilent = false;
      tell(false);
    },
    /** The machine is away, and the person hears of that. */
    stop: (): void => {
      clearTimeout(timer);
      isSilent = false;
    },
  };
}
