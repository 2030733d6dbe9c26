import { hrefOf } from '../stores/navigation.ts';
import { useWords } from '../words.ts';
import css from './sources-link.module.css';

/** Where figures come from, for whoever asks: that part of the methods page. */
export function SourcesLink({ part }: { part: string }) {
  const { say } = useWords();
  return (
    <a className={css.link} href={hrefOf({ name: 'methods', part })}>
      {say('common.sources')}
    </a>
  );
}
