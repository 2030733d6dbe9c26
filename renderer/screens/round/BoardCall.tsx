import type { RoundBoard } from '../../../shared-core/contract/round.ts';
import type { Message } from '../../../shared-core/words/message.ts';
import { CallBadge } from '../../parts/CallBadge.tsx';
import { pctWords } from '../../parts/McValue.tsx';
import { useWords } from '../../words.ts';

/** What the board's readings amount to so far: the call, the numbers under it, the reasons. */
export function BoardCall({
  board: { speciesName, isRead, finding },
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
    <section className="board-call" aria-label="Call so far" tabIndex={0}>
      {finding === null ? (
        <p className="board-call-none">
          {isRead ? 'Its readings are being judged …' : `No reading yet on this board (${speciesName}).`}
        </p>
      ) : (
        <>
          <p className="board-call-call">
            <CallBadge call={finding.call} size="large" />
            <span className="board-call-use">for {endUseName}</span>
          </p>
          {finding.averagePct !== null && (
            <dl className="estimate">
              <div>
                <dt>Average</dt>
                <dd>
                  {pctWords(finding.averagePct)} %
                  <small>
                    {' '}
                    {pctWords(finding.lowPct)} to {pctWords(finding.highPct)}
                  </small>
                </dd>
              </div>
              <div>
                <dt>Shell</dt>
                <dd>{pctWords(finding.shellPct)} %</dd>
              </div>
              <div>
                <dt>Core</dt>
                <dd>{pctWords(finding.corePct)} %</dd>
              </div>
            </dl>
          )}
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
