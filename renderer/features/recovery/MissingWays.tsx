import { useQuery } from '../../data/useQuery.ts';
import { Sheet } from '../../ui/Screen.tsx';
import { useWords } from '../../words.ts';
import { RestoreButton } from './DamagedWays.tsx';

/** The newest backup that can be read, where the yard file is missing; nothing where there is none. */
export function MissingWays() {
  const { say } = useWords();
  const newest = useQuery('backups.list', {}).output?.find(({ contents }) => contents !== null);
  if (!newest) return null;
  return (
    <Sheet title={say('damaged.backup-title')}>
      <p>{say('damaged.backup-of', { backedUpAt: newest.at, readings: newest.contents?.readings ?? 0 })}</p>
      <RestoreButton backup={newest} isMain />
    </Sheet>
  );
}
