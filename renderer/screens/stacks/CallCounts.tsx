import { callMarks } from '../../../shared-core/labels/call-mark.ts';
import type { Call } from '../../../shared-core/probing/calls/assessment.ts';
import { CallShape, callsInOrder } from '../../parts/CallBadge.tsx';
import './call-counts.css';

/** How many boards stand at each call, as a bar of shares and as figures with shapes and words. */
export function CallCounts({
  calls,
  boards,
  probed,
}: {
  calls: Record<Call, number>;
  boards: number;
  probed: number;
}) {
  if (boards === 0) return <p className="stack-calls-none">No boards yet.</p>;
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
      <ul className="stack-calls-figures">
        {present.map((call) => (
          <li key={call} className={`call-${call}`}>
            <CallShape call={call} />
            <strong>{calls[call]}</strong> {callMarks[call].word.toLowerCase()}
          </li>
        ))}
        {notProbed > 0 && (
          <li className="stack-calls-unprobed">
            <strong>{notProbed}</strong> not probed yet
          </li>
        )}
      </ul>
    </div>
  );
}
