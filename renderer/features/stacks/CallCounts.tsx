import type { Call } from '../../../shared-core/probing/calls/assessment.ts';
import { CallShape, callsInOrder } from '../../ui/CallBadge.tsx';
import { useWords } from '../../words.ts';
import './call-counts.css';

/** How many boards have each call, as a bar of shares and in words with the call's shape. */
export function CallCounts({
  calls,
  boards,
  probed,
}: {
  calls: Record<Call, number>;
  boards: number;
  probed: number;
}) {
  const { say } = useWords();
  if (boards === 0) return <p className="stack-calls-none">{say('stacks.no-boards')}</p>;
  const notProbed = boards - probed;
  const present = callsInOrder.filter((call) => calls[call] > 0);
  return (
    <div className="stack-calls">
      <div className="stack-calls-bar" aria-hidden="true">
        {present.map((call) => (
          <span key={call} className={`stack-calls-share call-${call}`} style={{ flexGrow: calls[call] }} />
        ))}
        {notProbed > 0 && (
          <span className="stack-calls-share stack-calls-unprobed" style={{ flexGrow: notProbed }} />
        )}
      </div>
      <ul className="stack-calls-counts">
        {present.map((call) => (
          <li key={call} className={`call-${call}`}>
            <CallShape call={call} />
            {say(`stacks.count-${call}`, { boards: calls[call] })}
          </li>
        ))}
        {notProbed > 0 && (
          <li className="stack-calls-unprobed">{say('stacks.count-not-probed', { boards: notProbed })}</li>
        )}
      </ul>
    </div>
  );
}
