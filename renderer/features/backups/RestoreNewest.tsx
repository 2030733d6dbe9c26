import { useState } from 'react';
import { useQuery } from '../../data/useQuery.ts';
import { Button } from '../../ui/Button.tsx';
import { useWords } from '../../words.ts';
import { RestoreDialog } from './RestoreDialog.tsx';

/** The shortest way back to a yard that works. Nothing where no backup can be read. */
export function RestoreNewest() {
  const { say } = useWords();
  const newest = useQuery('backups.list', {}).output?.find(({ contents }) => contents !== null);
  const [isAsking, setAsking] = useState(false);
  if (!newest) return null;
  return (
    <>
      <Button onClick={() => setAsking(true)}>{say('restore.newest', { backedUpAt: newest.at })}</Button>
      {isAsking && <RestoreDialog file={newest.file} onClose={() => setAsking(false)} />}
    </>
  );
}
