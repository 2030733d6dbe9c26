import { useRef, useState } from 'react';
import type { StackRow } from '../../../shared-core/contract/yard.ts';
import type { StackPlan as Plan } from '../../../shared-core/probing/plan/stack-plan.ts';
import { useQuery } from '../../data/useQuery.ts';
import { Failed, Loading, Sheet } from '../../ui/Screen.tsx';
import { useWords } from '../../words.ts';
import { StackDrawing } from './StackDrawing.tsx';
import { StackPlan } from './StackPlan.tsx';
import './stack-plan.css';

/** As many boards as the machine hands over at once, and more than a person can look over. */
const MOST_DRAWN = 500;

/** What to do with a stack, and its drawing. */
export function StackOverview({ stack: { id: stackId, topCover, call } }: { stack: StackRow }) {
  const [certainty, setCertainty] = useState(0.9);
  const plan = useQuery('stacks.plan', { id: stackId, certainty });
  const boards = useQuery('boards.list', { stackId, search: '', offset: 0, limit: MOST_DRAWN });
  const { say } = useWords();
  // The last plan stays while one of another certainty is made.
  const last = useRef<Plan | null>(null);
  if (plan.output) last.current = plan.output;
  const shown = plan.output ?? (plan.loading ? last.current : null);
  return (
    <div className="stack-overview">
      <Sheet title={say('stack-plan.title')}>
        {plan.error && <Failed sentence={plan.error} again={plan.again} />}
        {shown === null && plan.loading && <Loading />}
        {call && shown && <StackPlan call={call} plan={shown} onCertainty={setCertainty} />}
      </Sheet>
      <Sheet title={say('stacks.drawing')}>
        {boards.error && <Failed sentence={boards.error} again={boards.again} />}
        {boards.output && (
          <>
            <StackDrawing
              boards={boards.output.rows}
              probeNext={new Set(shown?.next.map(({ boardId }) => boardId))}
            />
            {topCover === 'sun' && <p className="stack-hint">{say('stacks.top-in-sun')}</p>}
            {boards.output.total > MOST_DRAWN && (
              <p className="stack-hint">
                {say('stacks.drawn-only', { drawn: MOST_DRAWN, boards: boards.output.total })}
              </p>
            )}
          </>
        )}
      </Sheet>
    </div>
  );
}
