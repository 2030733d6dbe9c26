import { useRef, useState } from 'react';
import { ONE_IN } from '../../../shared-core/probing/plan/stack-call.ts';
import type { StackPlan as Plan } from '../../../shared-core/probing/plan/stack-plan.ts';
import { useQuery } from '../../data/useQuery.ts';
import { Choice } from '../../form/Choice.tsx';
import { hrefOf } from '../../stores/navigation.ts';
import { Await } from '../../ui/Await.tsx';
import { Facts } from '../../ui/Facts.tsx';
import { Unfold } from '../../ui/Unfold.tsx';
import { useWords } from '../../words.ts';
import css from './stack-plan.module.css';

const CERTAINTIES = ['0.8', '0.9', '0.95'] as const;

/** Behind its title: how many boards to probe to be how sure, and which ones next with why. */
export function StackPlan({ stackId }: { stackId: number }) {
  const [certainty, setCertainty] = useState(0.9);
  const plan = useQuery('stacks.plan', { id: stackId, certainty });
  // The last plan stays while one of another certainty is made.
  const last = useRef<Plan | null>(null);
  last.current = plan.output ?? last.current;
  const { say } = useWords();
  return (
    <Unfold words={say('stack-plan.title')}>
      <Await of={[{ ...plan, output: last.current }]}>
        {(made) => <Figures plan={{ ...made, certainty }} onCertainty={setCertainty} />}
      </Await>
    </Unfold>
  );
}

function Figures({ plan, onCertainty }: { plan: Plan; onCertainty: (certainty: number) => void }) {
  const { say, formats } = useWords();
  const { next, whyNone, allProbed, certainty, boards: all, probed, toKnowReady, toKnowMean } = plan;
  return (
    <div className={`column ${css.plan}`}>
      {allProbed ? (
        <p>{say(allProbed)}</p>
      ) : (
        <>
          <Choice
            label={say('stack-plan.certainty')}
            value={String(certainty)}
            options={CERTAINTIES.map((value) => ({
              value: value as string,
              label: formats.percent(100 * Number(value)),
            }))}
            onValue={(value) => onCertainty(Number(value))}
          />
          <Facts
            of={[
              [
                say('stack-plan.to-call-ready'),
                <>
                  {say('stack-plan.boards-of', { boards: toKnowReady, all })}{' '}
                  {toKnowReady < all && (
                    <small>
                      {say('stack-plan.if-all-ready', { certaintyPct: 100 * certainty, oneIn: ONE_IN })}
                    </small>
                  )}
                </>,
              ],
              [
                say('stack-plan.to-know-average', { marginPoints: toKnowMean.marginPct }),
                <>
                  {say('stack-plan.boards-of', { boards: toKnowMean.boards, all })}{' '}
                  <small>{say('stack-plan.boards-differ', { spreadPoints: toKnowMean.spreadPct })}</small>
                </>,
              ],
              [say('stack-plan.probed-so-far'), say('stack-plan.boards-of', { boards: probed, all })],
            ]}
          />
        </>
      )}
      {next.length === 0 ? (
        <p>{say(whyNone)}</p>
      ) : (
        <section aria-label={say('stack-plan.next')}>
          <h3>{say('stack-plan.next')}</h3>
          <ol className="list">
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
