import { useEach } from '../../data/useQuery.ts';
import { Banner } from '../../ui/Banner.tsx';
import { useWords } from '../../words.ts';

/** So many are named; of more, a person reads how many. */
const MOST_NAMED = 5;

/** Why chosen boards have no label: what each became, when it left, and how many nobody knows. */
export function NotInYard({ boardIds }: { boardIds: readonly number[] }) {
  const { say } = useWords();
  const named = useEach(
    'boards.get',
    boardIds.slice(0, MOST_NAMED).map((id) => ({ id })),
  );
  const sentences = named.flatMap(({ output }) => {
    const left = output?.board.archived;
    // One that was entered by mistake, or undone, never left: it was not there.
    if (!output || !left || left.code === 'deleted' || left.code === 'undone') return [];
    const { becameOf } = output;
    const { code: boardCode } = output.board;
    const [first] = becameOf;
    return first
      ? say('labels.became', { boardCode, how: first.how, someCodes: becameOf.map(({ code }) => code) })
      : say('labels.left', { boardCode, leftOn: left.at });
  });
  const others = boardIds.length - sentences.length;
  if (boardIds.length === 0 || named.some(({ loading }) => loading)) return null;
  return (
    <Banner kind="caution">
      {[...sentences, ...(others > 0 ? [say('labels.not-in-yard', { boards: others })] : [])].join(' ')}
    </Banner>
  );
}
