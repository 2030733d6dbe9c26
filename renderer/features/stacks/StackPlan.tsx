import { ONE_IN, type StackCall } from '../../../shared-core/probing/plan/stack-call.ts';
import type { StackPlan as Plan } from '../../../shared-core/probing/plan/stack-plan.ts';
import { Choice } from '../../form/Choice.tsx';
import { hrefOf } from '../../stores/navigation.ts';
import { CallBadge } from '../../ui/CallBadge.tsx';
import { useWords } from '../../words.ts';
import './stack-plan.css';

const CERTAINTIES = ['0.8', '0.9', '0.95'] as const;

/** What to do with a stack: its call, how many boards to probe to be that sure, and which ones next. */
export function StackPlan({
  call: { call, reasons },
  plan,
  onCertainty,
}: {
  call: StackCall;
  plan: Plan;
  onCertainty: (certainty: number) => void;
}) {
  const { say, formats } = useWords();
  const { next, certainty, boards: all, probed, toKnowReady, toKnowMean } = plan;
  return (
    <div className="stack-plan">
      {call && (
        <p>
          <CallBadge call={call} size="large" />
        </p>
      )}
      <ol className="plan-reasons">
        {reasons
          .map((reason) => say(reason))
          .map((sentence) => (
            <li key={sentence}>{sentence}</li>
          ))}
      </ol>
      <Choice
        label={say('stack-plan.certainty')}
        value={String(certainty)}
        options={CERTAINTIES.map((value) => ({
          value: value as string,
          label: formats.percent(100 * Number(value)),
        }))}
        onValue={(value) => onCertainty(Number(value))}
      />
      <dl className="plan-figures">
        <div>
          <dt>{say('stack-plan.to-call-ready')}</dt>
          <dd>
            {say('stack-plan.boards-of', { boards: toKnowReady, all })}{' '}
            <span>{say('stack-plan.if-all-ready', { certaintyPct: 100 * certainty, oneIn: ONE_IN })}</span>
          </dd>
        </div>
        <div>
          <dt>{say('stack-plan.to-know-average', { marginPoints: toKnowMean.marginPct })}</dt>
          <dd>
            {say('stack-plan.boards-of', { boards: toKnowMean.boards, all })}{' '}
            <span>{say('stack-plan.boards-differ', { spreadPoints: toKnowMean.spreadPct })}</span>
          </dd>
        </div>
        <div>
          <dt>{say('stack-plan.probed-so-far')}</dt>
          <dd>{say('stack-plan.boards-of', { boards: probed, all })}</dd>
        </div>
      </dl>
      {next.length === 0 ? (
        <p>{say(probed === 0 ? 'call.no-readings' : 'stack-plan.next.none')}</p>
      ) : (
        <section className="plan-next" aria-label={say('stack-plan.next')}>
          <h3>{say('stack-plan.next')}</h3>
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
