import type { Message } from '../../../shared-core/words/message.ts';
import { Unfold } from '../../ui/Unfold.tsx';
import { useWords } from '../../words.ts';

/** What a person could still say of the board, folded; nothing where all is known. */
export function MissingFacts({ missing }: { missing: readonly Message[] }) {
  const { say } = useWords();
  if (missing.length === 0) return null;
  return (
    <Unfold words={say('missing.title')}>
      <ul>
        {missing.map((fact) => (
          <li key={fact.code}>{say(fact)}</li>
        ))}
      </ul>
    </Unfold>
  );
}
