import { newestOfOwn, type ReadableBackup } from '../../../shared-core/contract/newest-backup.ts';
import { useQuery } from '../../data/useQuery.ts';

/** The backup to offer where the own yard cannot be opened: null where there is none, undefined while that is not known. */
export function useNewestBackup(): ReadableBackup | null | undefined {
  const backups = useQuery('backups.list', {}).output;
  return backups === null ? undefined : (newestOfOwn(backups) ?? null);
}
