import type { Verdict } from '../../shared-core/probing/assessment.ts';
import './verdict-badge.css';

/** A call in words. */
export const verdictWords: Record<Verdict, string> = {
  ready: 'Ready',
  'bring-in': 'Bring in',
  'keep-drying': 'Keep drying',
  'probe-again': 'Probe again',
};

/** A call in one letter, where there is room for no more (the map of a pile). */
export const verdictLetters: Record<Verdict, string> = {
  ready: 'R',
  'bring-in': 'B',
  'keep-drying': 'K',
  'probe-again': 'P',
};

/** In the order in which a person wants to hear them. */
export const verdictsInOrder: readonly Verdict[] = ['ready', 'bring-in', 'keep-drying', 'probe-again'];

/** Filled disc with a tick; house with an arrow in; hourglass; diamond with a question mark. */
const shapes: Record<Verdict, React.ReactNode> = {
  ready: (
    <>
      <circle cx="12" cy="12" r="11" fill="currentColor" />
      <path d="M6.5 12.5l4 4 7-8" className="verdict-cut" />
    </>
  ),
  'bring-in': (
    <>
      <path d="M12 1 23 10.5V23H1V10.5z" fill="currentColor" />
      <path d="M12 8v9m-4-4 4 4 4-4" className="verdict-cut" />
    </>
  ),
  'keep-drying': <path d="M3 1h18v4l-7 7 7 7v4H3v-4l7-7-7-7z" fill="currentColor" />,
  'probe-again': (
    <>
      <path d="M12 0 24 12 12 24 0 12z" fill="currentColor" />
      <path d="M9 9.5a3 3 0 1 1 4.2 2.8c-.8.4-1.2.9-1.2 1.9M12 17.2v.3" className="verdict-cut" />
    </>
  ),
};

/** The shape of a call alone; only where its word or letter stands beside it. */
export function VerdictShape({ verdict }: { verdict: Verdict }) {
  return (
    <svg className={`verdict-shape verdict-${verdict}`} viewBox="0 0 24 24" aria-hidden="true">
      {shapes[verdict]}
    </svg>
  );
}

/** A call: shape, word and colour, always together. */
export function VerdictBadge({ verdict, size = 'small' }: { verdict: Verdict; size?: 'small' | 'large' }) {
  return (
    <span className={`verdict-badge verdict-badge-${size} verdict-${verdict} verdict-soft-${verdict}`}>
      <VerdictShape verdict={verdict} />
      {verdictWords[verdict]}
    </span>
  );
}
