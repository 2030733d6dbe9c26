import type { Backup } from '../../../shared-core/contract/backups.ts';
import { useQuery } from '../../data/useQuery.ts';

/** The newest backup that can be read: null where there is none, undefined while that is not known. */
export function useNewestBackup(): Backup | null | undefined {
  const backups = useQuery('backups.list', {}).output;
  return backups === null ? undefined : (backups.find(({ contents }) => contents !== null) ?? null);
}
