import type { StackPlan as Plan } from '../../../shared-core/probing/plan/stack-plan.ts';
import { CallBadge } from '../../parts/CallBadge.tsx';
import { Choice } from '../../parts/Choice.tsx';
import { pctWords } from '../../parts/McValue.tsx';
import { hrefOf } from '../../stores/navigation.ts';
import { useWords } from '../../words.ts';
import './stack-plan.css';

const CERTAINTIES = ['0.8', '0.9', '0.95'] as const;

/** What to do with a stack: its call, how many boards to probe for a wanted certainty, and which ones next. */
export function StackPlan({ plan, onCertainty }: { plan: Plan; onCertainty: (certainty: number) => void }) {
  const { say } = useWords();
  const { call, reasons, next, boards, probed, toKnowReady, toKnowMean } = plan;
  return (
    <div className="stack-plan">
      <p>
        <CallBadge call={call} size="large" />
      </p>
      <ol className="plan-reasons">
        {reasons
          .map((reason) => say(reason))
          .map((sentence) => (
            <li key={sentence}>{sentence}</li>
          ))}
      </ol>
      <Choice
        label="Certainty wanted"
        value={String(plan.certainty)}
        options={CERTAINTIES.map((value) => ({ value: value as string, label: `${Number(value) * 100} %` }))}
        onValue={(value) => onCertainty(Number(value))}
      />
      <dl className="plan-figures">
        <div>
          <dt>To call the stack ready</dt>
          <dd>
            {toKnowReady} of {boards} <span>boards found ready, so that at most one in ten is not</span>
          </dd>
        </div>
        <div>
          <dt>To know its average within {toKnowMean.marginPct} %</dt>
          <dd>
            {toKnowMean.boards} of {boards}{' '}
            <span>boards, as they differ by {pctWords(toKnowMean.spreadPct)} % (one standard deviation)</span>
          </dd>
        </div>
        <div>
          <dt>Probed so far</dt>
          <dd>
            {probed} of {boards}
          </dd>
        </div>
      </dl>
      {next.length === 0 ? (
        <p>
          {probed === 0
            ? 'Nothing is known of its boards yet.'
            : 'No board is so near to a limit that probing it today would tell more.'}
        </p>
      ) : (
        <section className="plan-next" aria-label="Probe next">
          <h3>Probe next</h3>
          <ol>
            {next.map(({ boardId, code, why }) => (
              <li key={boardId}>
                <a href={hrefOf({ name: 'board', id: boardId })}>{code}</a> <span>{say(why)}</span>
              </li>
            ))}
          </ol>
        </section>
      )}
    </div>
  );
}
