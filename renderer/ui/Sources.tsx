import { useWords } from '../words.ts';
import { Unfold } from './Unfold.tsx';

/** Where figures come from, for whoever asks. */
export function Sources({ sources }: { sources: readonly string[] }) {
  const { say } = useWords();
  return (
    <Unfold words={say('common.sources')}>
      {sources.map((source) => (
        <p key={source} className="soft" translate="no">
          {sourceShown(source)}
        </p>
      ))}
    </Unfold>
  );
}

/** A source without its marks: what is from memory is listed with the methods, not on a working screen. */
export const sourceShown = (source: string): string => source.replaceAll(/ \(from memory\)/g, '');
