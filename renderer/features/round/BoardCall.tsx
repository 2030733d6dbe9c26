import type { RoundBoard, RoundFinding } from '../../../shared-core/contract/round.ts';
import type { Message } from '../../../shared-core/words/message.ts';
import { CallBadge } from '../../ui/CallBadge.tsx';
import { mcOrDash } from '../../ui/McValue.tsx';
import { useWords } from '../../words.ts';

/** The call on the board so far, its estimates and its reasons. */
export function BoardCall({
  board: { isRead, finding },
  reasons,
  endUseName,
}: {
  board: RoundBoard;
  /** All of them; while they are on their way the one that decides is shown. */
  reasons: readonly Message[] | undefined;
  endUseName: string;
}) {
  const { say } = useWords();
  return (
    // Scrolls by itself where the reasons are many, so the keyboard must be able to reach it.
    // biome-ignore lint/a11y/noNoninteractiveTabindex: see above.
    <section className="board-call" aria-label={say('board-call.title')} tabIndex={0}>
      {finding === null ? (
        <p className="board-call-none">{say(isRead ? 'board-call.being-judged' : 'call.no-readings')}</p>
      ) : (
        <>
          <p className="board-call-call">
            <CallBadge call={finding.call} size="large" />
            <span className="board-call-use">{say('board-call.for-use', { endUseName })}</span>
          </p>
          <Estimate finding={finding} />
          <ul className="reasons">
            {(reasons ?? [finding.reason])
              .map((reason) => say(reason))
              .map((sentence) => (
                <li key={sentence}>{sentence}</li>
              ))}
          </ul>
        </>
      )}
    </section>
  );
}

/** The likely average with its interval, the shell and the core; nothing where too little was read for one. */
function Estimate({
  finding: { averagePct, lowPct, highPct, shellPct, corePct },
}: {
  finding: RoundFinding;
}) {
  const { say, formats } = useWords();
  if (averagePct === null) return null;
  return (
    <dl className="estimate">
      <div>
        <dt>{say('board-call.average')}</dt>
        <dd>
          {formats.mc(averagePct)}{' '}
          {lowPct !== null && highPct !== null && (
            <small>{formats.mcInterval({ minPct: lowPct, maxPct: highPct })}</small>
          )}
        </dd>
      </div>
      <div>
        <dt>{say('board-call.shell')}</dt>
        <dd>{mcOrDash(shellPct, formats)}</dd>
      </div>
      <div>
        <dt>{say('board-call.core')}</dt>
        <dd>{mcOrDash(corePct, formats)}</dd>
      </div>
    </dl>
  );
}
