import type { LatestFinding } from '../../../shared-core/contract/yard.ts';
import { dayTimeWords } from '../../parts/days.ts';
import { pctWords } from '../../parts/McValue.tsx';
import { Said } from '../../parts/Said.tsx';
import { VerdictBadge } from '../../parts/VerdictBadge.tsx';

/** The newest round's verdict on the board, the figures under it, and why. */
export function CallOfBoard({
  latest,
  reasons,
  useName,
}: {
  latest: LatestFinding;
  reasons: readonly string[];
  useName: string | null;
}) {
  const { averagePct, lowPct, highPct, shellPct, corePct } = latest;
  const difference = shellPct !== null && corePct !== null ? corePct - shellPct : null;
  return (
    <>
      <p className="board-verdict">
        <VerdictBadge verdict={latest.verdict} size="large" />
        {useName && <span>for {useName}</span>}
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
        {reasons.map((reason) => (
          <li key={reason}>
            <Said>{reason}</Said>
          </li>
        ))}
      </ol>
    </>
  );
}
