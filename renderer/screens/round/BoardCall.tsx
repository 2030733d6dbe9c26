import type { RoundBoard } from '../../../shared-core/contract/round.ts';
import { pctWords } from '../../parts/McValue.tsx';
import { Said } from '../../parts/Said.tsx';
import { VerdictBadge } from '../../parts/VerdictBadge.tsx';

/** What the board's readings amount to so far: the call, the numbers under it, the reasons. */
export function BoardCall({ board, useName }: { board: RoundBoard; useName: string }) {
  const { assessment } = board;
  return (
    // Scrolls by itself where the reasons are many, so the keyboard must be able to reach it.
    // biome-ignore lint/a11y/noNoninteractiveTabindex: see above.
    <section className="board-call" aria-label="Call so far" tabIndex={0}>
      {assessment === null ? (
        <p className="board-call-none">No reading yet on this board ({board.woodName}).</p>
      ) : (
        <>
          <p className="board-call-verdict">
            <VerdictBadge verdict={assessment.call.verdict} size="large" />
            <span className="board-call-use">for {useName}</span>
          </p>
          {assessment.estimate && (
            <dl className="estimate">
              <div>
                <dt>Average</dt>
                <dd>
                  {pctWords(assessment.estimate.averagePct)} %
                  <small>
                    {' '}
                    {pctWords(assessment.estimate.lowPct)} to {pctWords(assessment.estimate.highPct)}
                  </small>
                </dd>
              </div>
              <div>
                <dt>Shell</dt>
                <dd>{pctWords(assessment.estimate.shellPct)} %</dd>
              </div>
              <div>
                <dt>Core</dt>
                <dd>{pctWords(assessment.estimate.corePct)} %</dd>
              </div>
            </dl>
          )}
          <ul className="reasons">
            {assessment.call.reasons.map((reason) => (
              <li key={reason}>
                <Said>{reason}</Said>
              </li>
            ))}
          </ul>
        </>
      )}
    </section>
  );
}
