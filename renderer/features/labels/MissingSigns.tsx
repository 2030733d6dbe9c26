import { Banner } from '../../ui/Banner.tsx';
import { useWords } from '../../words.ts';

/** Said before printing: which signs come out as a box, because no font here has them. */
export function MissingSigns({ signs }: { signs: readonly string[] }) {
  const { say } = useWords();
  if (signs.length === 0) return null;
  return (
    <Banner kind="caution">
      {say('labels.missing-signs', { signs: signs.length, missingText: signs.join(' ') })}
    </Banner>
  );
}
