import { verdictMarks } from '../../../shared-core/labels/verdict-mark.ts';
import type { Verdict } from '../../../shared-core/probing/assessment.ts';
import { VerdictShape, verdictsInOrder } from '../../parts/VerdictBadge.tsx';
import './verdict-counts.css';

/** How many boards stand at each call, as a bar of shares and as figures with shapes and words. */
export function VerdictCounts({
  verdicts,
  boards,
  probed,
}: {
  verdicts: Record<Verdict, number>;
  boards: number;
  probed: number;
}) {
  if (boards === 0) return <p className="stack-verdicts-none">No boards yet.</p>;
  const notProbed = boards - probed;
  const present = verdictsInOrder.filter((verdict) => verdicts[verdict] > 0);
  return (
    <div className="stack-verdicts">
      <div className="stack-verdicts-bar" aria-hidden="true">
        {present.map((verdict) => (
          <span
            key={verdict}
            className={`stack-verdicts-share verdict-${verdict}`}
            style={{ flexGrow: verdicts[verdict] }}
          />
        ))}
        {notProbed > 0 && (
          <span className="stack-verdicts-share stack-verdicts-unprobed" style={{ flexGrow: notProbed }} />
        )}
      </div>
      <ul className="stack-verdicts-figures">
        {present.map((verdict) => (
          <li key={verdict} className={`verdict-${verdict}`}>
            <VerdictShape verdict={verdict} />
            <strong>{verdicts[verdict]}</strong> {verdictMarks[verdict].word.toLowerCase()}
          </li>
        ))}
        {notProbed > 0 && (
          <li className="stack-verdicts-unprobed">
            <strong>{notProbed}</strong> not probed yet
          </li>
        )}
      </ul>
    </div>
  );
}
