import { useQuery } from '../../data/useQuery.ts';
import { useWords } from '../../words.ts';

/** What is in the copy of a lost yard file. */
export function RescuedCopy({ file }: { file: string }) {
  const { say } = useWords();
  const look = useQuery('backups.look', { file }).output;
  if (!look) return null;
  const { boards, readings } = look.contents;
  return <p>{say('problem-page.copy-has', { boards, readings })}</p>;
}
