import { verdictMarks, verdictShapePath } from '../../shared-core/labels/verdict-mark.ts';
import type { Verdict } from '../../shared-core/probing/assessment.ts';
import './verdict-badge.css';

/** The order in which a person wants to hear them. Words, letters and shapes are `verdictMarks`, as on the labels. */
export const verdictsInOrder: readonly Verdict[] = ['ready', 'bring-in', 'keep-drying', 'probe-again'];

const SIDE = 24;
const STROKE = 3;

/** The shape of a call alone; only where its word or letter stands beside it. */
export function VerdictShape({ verdict }: { verdict: Verdict }) {
  const { shape, filled } = verdictMarks[verdict];
  const inset = filled ? 0 : STROKE / 2 + 0.5;
  return (
    <svg className={`verdict-shape verdict-${verdict}`} viewBox={`0 0 ${SIDE} ${SIDE}`} aria-hidden="true">
      <path
        d={verdictShapePath(shape, inset, inset, SIDE - 2 * inset)}
        fill={filled ? 'currentColor' : 'none'}
        stroke={filled ? 'none' : 'currentColor'}
        strokeWidth={STROKE}
        strokeLinejoin="round"
      />
    </svg>
  );
}

/** A call: shape, word and colour, always together. */
export function VerdictBadge({ verdict, size = 'small' }: { verdict: Verdict; size?: 'small' | 'large' }) {
  return (
    <span className={`verdict-badge verdict-badge-${size} verdict-${verdict} verdict-soft-${verdict}`}>
      <VerdictShape verdict={verdict} />
      {verdictMarks[verdict].word}
    </span>
  );
}
