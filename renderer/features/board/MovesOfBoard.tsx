import type { Move } from '../../../shared-core/contract/yard.ts';
import { useWords } from '../../words.ts';

/** The places where a board has been, the present one first. */
export function MovesOfBoard({ moves }: { moves: readonly Move[] }) {
  const { say } = useWords();
  const newestFirst = moves.toSorted((a, b) => b.since.localeCompare(a.since) || b.id - a.id);
  return (
    <ol className="board-moves">
      {newestFirst.map(({ id, placeName, since }, index) => {
        const until = newestFirst[index - 1]?.since;
        return (
          <li key={id}>
            {until
              ? say('board.moved-through', { placeName, stayRange: { from: since, to: until } })
              : say('board.at-place', { placeName, sinceOn: since })}
          </li>
        );
      })}
    </ol>
  );
}
