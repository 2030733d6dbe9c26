import type { LatestFinding } from '../../../shared-core/contract/yard.ts';
import type { Message } from '../../../shared-core/words/message.ts';
import { CallBadge } from '../../ui/CallBadge.tsx';
import { useWords } from '../../words.ts';

/** The newest round's call on the board, the figures under it, and why. */
export function CallOfBoard({
  latest,
  reasons,
  endUseName,
}: {
  latest: LatestFinding;
  reasons: readonly Message[];
  endUseName: string | null;
}) {
  const { say, formats } = useWords();
  const { averagePct, lowPct, highPct, shellPct, corePct } = latest;
  return (
    <>
      <p className="call-of-board">
        <CallBadge call={latest.call} size="large" />
        {endUseName && <span>{say('board.use', { useName: endUseName })}</span>}
      </p>
      <p className="board-when">{say('board.probed-at', { probedAt: latest.at })}</p>
      {averagePct !== null && (
        <dl className="board-figures">
          <div>
            <dt>{say('board.average')}</dt>
            <dd>{formats.mc(averagePct)}</dd>
            {lowPct !== null && highPct !== null && (
              <dd className="board-figure-note">
                {say('board.likely', { likelyInterval: { minPct: lowPct, maxPct: highPct } })}
              </dd>
            )}
          </div>
          <div>
            <dt>{say('board.shell')}</dt>
            <dd>{shellPct === null ? '–' : formats.mc(shellPct)}</dd>
          </div>
          <div>
            <dt>{say('board.core')}</dt>
            <dd>{corePct === null ? '–' : formats.mc(corePct)}</dd>
          </div>
          {shellPct !== null && corePct !== null && (
            <div>
              <dt>{say('board.difference')}</dt>
              <dd>{formats.points(corePct - shellPct)}</dd>
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
