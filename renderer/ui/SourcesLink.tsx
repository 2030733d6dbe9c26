import { hrefOf } from '../stores/navigation.ts';
import { useWords } from '../words.ts';
import { ButtonLink } from './Button.tsx';

/** Where figures come from, for whoever asks: that part of the methods page. */
export function SourcesLink({ part }: { part: string }) {
  const { say } = useWords();
  return (
    <p>
      <ButtonLink kind="quiet" href={hrefOf({ name: 'methods', part })}>
        {say('common.sources')}
      </ButtonLink>
    </p>
  );
}
