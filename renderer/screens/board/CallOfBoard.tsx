import type { LatestFinding } from '../../../shared-core/contract/yard.ts';
import type { Message } from '../../../shared-core/words/message.ts';
import { CallBadge } from '../../parts/CallBadge.tsx';
import { dayTimeWords } from '../../parts/days.ts';
import { pctWords } from '../../parts/McValue.tsx';
import { useWords } from '../../words.ts';

/** The newest round's verdict on the board, the figures under it, and why. */
export function CallOfBoard({
  latest,
  reasons,
  endUseName,
}: {
  latest: LatestFinding;
  reasons: readonly Message[];
  endUseName: string | null;
}) {
  const { say } = useWords();
  const { averagePct, lowPct, highPct, shellPct, corePct } = latest;
  const difference = shellPct !== null && corePct !== null ? corePct - shellPct : null;
  return (
    <>
      <p className="board-call">
        <CallBadge call={latest.call} size="large" />
        {endUseName && <span>for {endUseName}</span>}
      </p>
      <p className="board-when">Probed {dayTimeWords(latest.at)}</p>
      {averagePct !== null && (
        <dl className="board-figures">
          <div>
            <dt>Average, corrected</dt>
            <dd>{pctWords(averagePct)} %</dd>
            <dd className="board-figure-note">
              likely {pctWords(lowPct)} to {pctWords(highPct)} %
            </dd>
          </div>
          <div>
            <dt>Shell</dt>
            <dd>{shellPct === null ? '–' : `${pctWords(shellPct)} %`}</dd>
          </div>
          <div>
            <dt>Core</dt>
            <dd>{corePct === null ? '–' : `${pctWords(corePct)} %`}</dd>
          </div>
          {difference !== null && (
            <div>
              <dt>Core over shell</dt>
              <dd>{pctWords(difference).replace('-', '−')} %</dd>
            </div>
          )}
        </dl>
      )}
      <ol className="board-reasons">
        {reasons
          .map((reason) => say(reason))
          .map((sentence) => (
            <li key={sentence}>{sentence}</li>
          ))}
      </ol>
    </>
  );
}
