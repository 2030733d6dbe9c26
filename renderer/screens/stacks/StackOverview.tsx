import { useRef, useState } from 'react';
import type { StackRow } from '../../../shared-core/contract/yard.ts';
import type { StackPlan as Plan } from '../../../shared-core/probing/plan/stack-plan.ts';
import { Failed, Loading, Sheet } from '../../parts/Screen.tsx';
import { useAnswer } from '../../useAnswer.ts';
import { StackDrawing } from './StackDrawing.tsx';
import { StackPlan } from './StackPlan.tsx';
import './stack-plan.css';

/** As many boards as the machine hands over at once, and more than a person can look over. */
const MOST_DRAWN = 500;

/** What to do with a stack, and its pile. */
export function StackOverview({ stack: { id: stackId, topCover } }: { stack: StackRow }) {
  const [certainty, setCertainty] = useState(0.9);
  const plan = useAnswer('stacks.plan', { id: stackId, certainty });
  const boards = useAnswer('boards.list', { stackId, search: '', offset: 0, limit: MOST_DRAWN });
  // The last plan stays while one of another certainty is made.
  const last = useRef<Plan | null>(null);
  if (plan.output) last.current = plan.output;
  const shown = plan.output ?? (plan.loading ? last.current : null);
  return (
    <div className="stack-overview">
      <Sheet title="What to do with it">
        {plan.error && <Failed sentence={plan.error} again={plan.again} />}
        {shown === null && plan.loading && <Loading />}
        {shown && <StackPlan plan={shown} onCertainty={setCertainty} />}
      </Sheet>
      <Sheet title="The pile">
        {boards.error && <Failed sentence={boards.error} again={boards.again} />}
        {boards.output && (
          <>
            <StackDrawing
              boards={boards.output.rows}
              probeNext={new Set(shown?.next.map(({ boardId }) => boardId))}
            />
            {topCover === 'sun' && (
              <p className="stack-hint">Nothing is over it: outdoors, the sun reaches its top course.</p>
            )}
            {boards.output.total > MOST_DRAWN && (
              <p className="stack-hint">
                Its first {MOST_DRAWN} boards are drawn; all {boards.output.total.toLocaleString('en')} are in
                the list below.
              </p>
            )}
          </>
        )}
      </Sheet>
    </div>
  );
}
