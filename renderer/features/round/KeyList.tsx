import type { Code } from '../../../shared-core/words/en/index.ts';
import { useWords } from '../../words.ts';
import css from './KeyList.module.css';
import type { roundKeys } from './round-keys.ts';

/** Keys of a round, each with what it does. */
export function KeyList({ keys }: { keys: readonly (typeof roundKeys)[number][] }) {
  const { say } = useWords();
  return (
    <dl className={css.keys}>
      {keys.map(({ key, does }) => (
        <div key={key}>
          <dt>
            <kbd>{hasName(key) ? say(key) : key}</kbd>
          </dt>
          <dd>{say(does)}</dd>
        </div>
      ))}
    </dl>
  );
}

/** A letter is on its key in every language; Space and Enter have a name. */
const hasName = (key: string): key is Extract<Code, `key.${string}`> => key.startsWith('key.');
