import { useQuery } from '../../data/useQuery.ts';
import { hrefOf } from '../../stores/navigation.ts';
import { Unfold } from '../../ui/Unfold.tsx';
import { useWords } from '../../words.ts';

/** Stacks that left the lists, each with the way to its page; nothing where there are none. */
export function ClosedStacks() {
  const { say } = useWords();
  const closed = useQuery('stacks.closed', {}).output ?? [];
  if (closed.length === 0) return null;
  return (
    <Unfold words={say('closing.closed-stacks', { stacks: closed.length })}>
      <ul className="list">
        {closed.map(({ id, name, placeName, closedAt }) => (
          <li key={id}>
            <a href={hrefOf({ name: 'stack', id })} translate="no">
              {name}
            </a>{' '}
            {say('closing.stack-was-in', { placeName, closedOn: closedAt })}
          </li>
        ))}
      </ul>
    </Unfold>
  );
}
