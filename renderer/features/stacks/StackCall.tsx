import type { StackRow } from '../../../shared-core/contract/yard.ts';
import { CallShape, groundOf, inkOf } from '../../ui/CallBadge.tsx';
import { ReadyCautions } from '../../ui/ReadyCautions.tsx';
import { Sheet } from '../../ui/Screen.tsx';
import { useWords } from '../../words.ts';
import { readyDay, readyFacts } from './ready-words.ts';
import css from './stack-screen.module.css';

/** What to do with a stack, in a sentence; then why, and the figures behind it. */
export function StackCall({
  stack: { call: called, due, isForecasting, nextReady, lastReady, endUseId },
}: {
  stack: StackRow;
}) {
  const words = useWords();
  const { say, formats } = words;
  if (!called) return null;
  const { call, reasons } = called;
  const [what, ...figures] = reasons.map((reason) => say(reason));
  const [why, ...more] = due ? [say(due.why), ...figures] : figures;
  const isSpread = nextReady && lastReady && lastReady.when.likely !== nextReady.when.likely;
  const rest = [
    ...more,
    isForecasting && say('stacks.forecasting'),
    nextReady &&
      !isForecasting &&
      nextReady.when.likely > formats.localDay(new Date()) &&
      say('stacks.next-ready', readyFacts(nextReady, words)),
    isSpread && !isForecasting && say('stacks.last-ready', readyDay(lastReady.when, formats)),
  ].filter(Boolean);
  return (
    <Sheet>
      <p
        className={`marked ${css.what} ${call ? '' : css.notProbed}`}
        style={call ? { ...inkOf(call), ...groundOf(call) } : undefined}
      >
        {call && <CallShape call={call} />}
        {what}
      </p>
      {(why || call === 'ready' || rest.length > 0) && (
        <div className={css.reasons}>
          {why && <p className={css.why}>{why}</p>}
          {call === 'ready' && <ReadyCautions useId={endUseId} />}
          {rest.length > 0 && <p className="soft">{rest.join(' ')}</p>}
        </div>
      )}
    </Sheet>
  );
}
