import type { Move } from '../../../shared-core/contract/yard.ts';
import { dayWords } from '../../parts/days.ts';

/** The places where a board stood, the present one first. */
export function MovesOfBoard({ moves }: { moves: readonly Move[] }) {
  const newestFirst = moves.toSorted((a, b) => b.since.localeCompare(a.since) || b.id - a.id);
  return (
    <ol className="board-moves">
      {newestFirst.map((move, index) => {
        const until = newestFirst[index - 1]?.since;
        return (
          <li key={move.id}>
            <strong>{move.placeName}</strong>{' '}
            {until ? `${dayWords(move.since)} to ${dayWords(until)}` : `since ${dayWords(move.since)}`}
          </li>
        );
      })}
    </ol>
  );
}
