import type { RequestOutput } from '../../../shared-core/contract/requests.ts';
import type { EndUse } from '../../../shared-core/wood/species/end-use.ts';
import { useQuery } from '../../data/useQuery.ts';
import { Sheet } from '../../ui/Screen.tsx';
import { useWords } from '../../words.ts';
import { HistoryChart } from './HistoryChart.tsx';

/** The history of a board with its forecast, once there is one; nothing where there is neither. */
export function HistoryOfBoard({
  found: { board, findings, moves },
  endUse,
}: {
  found: RequestOutput<'boards.get'>;
  endUse: EndUse | null;
}) {
  const { say } = useWords();
  const forecast = useQuery('boards.forecast', { id: board.id }).output?.details ?? null;
  if (findings.length === 0 && !forecast) return null;
  return (
    <Sheet title={say('history.title')}>
      <HistoryChart
        code={board.code}
        findings={findings}
        stays={moves.map(({ since, placeName }) => ({ fromMs: Date.parse(since), placeName }))}
        endUse={endUse}
        forecast={forecast}
      />
    </Sheet>
  );
}
