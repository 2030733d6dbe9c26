import { cautionsOfReady } from '../../shared-core/probing/calls/cautions.ts';
import { useQuery } from '../data/useQuery.ts';
import { useWords } from '../words.ts';
import { Banner } from './Banner.tsx';

/** What to mind with wood that is ready for this use. */
export function ReadyCautions({ useId }: { useId: string }) {
  const { say } = useWords();
  const endUse = useQuery('endUses.list', {}).output?.find(({ id }) => id === useId);
  const cautions = cautionsOfReady(endUse?.cautions ?? []).map((each) => say(each));
  return cautions.length > 0 && <Banner kind="caution">{cautions.join(' ')}</Banner>;
}
