import { useState } from 'react';
import { Conflict } from '../../shared-core/contract/answer.ts';

/**
 * What a form showed of a record, for a command that is refused where another window saved something else meanwhile.
 * Saving once more saves over it.
 */
export function useMeanwhile<S>(start: S) {
  const [shown, setShown] = useState(start);
  const [isConflict, setConflict] = useState(false);
  return {
    /** What the record was when the form last came to know of it. */
    shown,
    /** What was saved meanwhile; null as long as nothing was. */
    theirs: isConflict ? shown : null,
    /** To be given what the command threw, which is thrown on. */
    thrown(error: unknown): never {
      if (error instanceof Conflict) {
        setShown(error.current as S);
        setConflict(true);
      }
      throw error;
    },
    /**
     * What the form offers then; null as long as nothing was saved meanwhile.
     * @param refill  fills the form with that
     */
    conflict: (refill: (theirs: S) => void) =>
      isConflict
        ? {
            takeTheirs(): void {
              setConflict(false);
              refill(shown);
            },
          }
        : null,
  };
}
