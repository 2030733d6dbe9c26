import { useEffect, useRef } from 'react';
import { Refusal } from '../../../shared-core/contract/answer.ts';
import { type Burst, nextBurst, SCAN_MS } from '../../../shared-core/labels/scan.ts';
import { message } from '../../../shared-core/words/message.ts';
import { isDialogOpen } from '../../stores/dialogs.ts';
import { giveHeldKeys } from '../../stores/held-keys.ts';
import { sentenceOf } from '../../stores/notices.ts';
import { useRound } from '../../stores/round.ts';
import { useSettings } from '../../stores/settings.ts';
import { actionOf, isOfValue } from './round-keys.ts';
import type { Probing } from './useProbing.ts';

/** Who empties the field by Backspace means no reading yet: it undoes one only after a moment without it, ms. */
const ERASED_MS = 1000;

/**
 * The keys of a round, wherever the focus is but in a dialog or in another field: a glove on the table does not stop
 * it, and a digit goes to the value field.
 */
export function useRoundKeys(probing: Probing): void {
  const burst = useRef<Burst | null>(null);
  const beforeBurst = useRef(probing.draft);
  const waiting = useRef<ReturnType<typeof setTimeout>>(undefined);
  const newest = useRef(probing);
  const erasedMs = useRef(Number.NEGATIVE_INFINITY);
  useEffect(() => {
    newest.current = probing;
    const { field, typing, typedUnit, draft, act, type, restore, goToCode } = probing;
    const onKey = (event: KeyboardEvent) => {
      const { key, timeStamp } = event;
      const target = event.target as HTMLElement;
      const isElsewhere = target.closest('input, select, textarea') !== null && target !== field.current;
      if (isElsewhere || isDialogOpen() || event.ctrlKey || event.altKey || event.metaKey) return;
      const { burst: now, scanned } = nextBurst(burst.current, key, timeStamp);
      if (key !== 'Shift') clearTimeout(waiting.current);
      if (now !== burst.current && now?.text.length === 1) beforeBurst.current = draft;
      burst.current = now;
      if (scanned !== null) {
        event.preventDefault();
        restore(beforeBurst.current);
        goToCode(scanned);
        return;
      }
      const isWithinBurst = now !== null && now.text.length > 1;
      const isPress = key === 'Enter' || key === ' ';
      if (isPress && !isWithinBurst && target.closest('button, a, summary')) return;
      const { pedalKeys } = useSettings.getState().settings;
      const action =
        isWithinBurst && !/^\d$/.test(key) ? null : actionOf(event, typing, typedUnit, pedalKeys);
      if (key === 'Backspace' || key === 'Delete') {
        const isErasing = timeStamp - erasedMs.current < ERASED_MS;
        erasedMs.current = timeStamp;
        if (action !== null && isErasing) return;
      }
      if (action === null) {
        if (target === field.current) return;
        if (typing !== null && isOfValue(key, typing, typedUnit)) {
          // Not left to the browser, which would put it wherever the caret was.
          event.preventDefault();
          field.current?.focus();
          type(typing + key);
        } else if (key === ' ') event.preventDefault();
        return;
      }
      event.preventDefault();
      if (action === 'start-typing') type(key);
      // The first letter of a scan is a shortcut only if nothing comes right after it.
      else if (key.length === 1 && key !== ' ') {
        waiting.current = setTimeout(() => newest.current.act(action), SCAN_MS);
      } else act(action);
    };
    addEventListener('keydown', onKey);
    return () => removeEventListener('keydown', onKey);
  });
  useEffect(() => {
    // On its way down: a dialog keeps its keys to itself.
    addEventListener('keydown', keepWindow, true);
    return () => removeEventListener('keydown', keepWindow, true);
  }, []);
  useEffect(() => () => clearTimeout(waiting.current), []);
  useEffect(() => giveHeldKeys(sayNotUsed), []);
}

/** Presenters send F5, and the browser would load the window again. */
function keepWindow(event: KeyboardEvent): void {
  if (event.key === 'F5' && !event.ctrlKey) event.preventDefault();
}

function sayNotUsed(): void {
  useRound.setState({ trouble: sentenceOf(new Refusal(message('round.keys-not-used'))) });
}
