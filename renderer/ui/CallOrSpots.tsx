import type { LatestFinding } from '../../shared-core/contract/yard.ts';
import { useWords } from '../words.ts';
import { CallBadge } from './CallBadge.tsx';

/** The call of a finding, or how many spots are read of those that it needs. */
export function CallOrSpots({
  finding: { call, spotsRead },
  size = 'small',
}: {
  finding: Pick<LatestFinding, 'call' | 'spotsRead'>;
  size?: 'small' | 'large';
}) {
  const { say } = useWords();
  if (call !== null) return <CallBadge call={call} size={size} />;
  return spotsRead && <em>{say('board.spots-read', spotsRead)}</em>;
}
