import type { YardRecord } from '../../shared-core/exchange/yard-tables.ts';
import type { Db } from '../store/yard-file.ts';
import type { RecordReads } from '../store/yard-records.ts';

/** The UUID of the reading that one is on the board to which an amendment moved it; null for any other amendment. */
export function toOf({ field, value }: YardRecord): string | null {
  const { code, to } = (value ?? {}) as { code?: unknown; to?: unknown };
  return field === 'excluded' && code === 'moved' && typeof to === 'string' ? to : null;
}

/**
 * Which of two amendments holds that moved a reading to the same spot of the same board, each on its own: the one whose
 * reading was corrected there, or has pictures; null where that is so of both, or the two are not alike.
 */
export function movedAlike(db: Db, { mine, theirs }: { mine: RecordReads; theirs: RecordReads }) {
  const touchedIn = (['main', 'theirs'] as const).map((side) =>
    db
      .prepare<{ uuid: string }, number>(
        `SELECT 1 FROM ${side}.reading g WHERE g.uuid = @uuid
           AND (g.id IN (SELECT reading_id FROM ${side}.amendment WHERE field <> 'movedFrom')
             OR g.id IN (SELECT reading_id FROM ${side}.picture))`,
      )
      .pluck(),
  );
  return (own: YardRecord, their: YardRecord): YardRecord | null => {
    const [here, there] = [toOf(own), toOf(their)];
    const one = here === null ? undefined : mine.one('readings', here);
    const other = there === null ? undefined : theirs.one('readings', there);
    if (one === undefined || other === undefined) return null;
    const where = ({ board, spotIndex, spot }: YardRecord) => JSON.stringify([board, spotIndex, spot]);
    if (where(one) !== where(other)) return null;
    const [isOwn, isTheirs] = [one, other].map(({ uuid }) => touchedIn.some((find) => find.get({ uuid })));
    if (isOwn && isTheirs) return null;
    if (isOwn || isTheirs) return isOwn ? own : their;
    // The same in whichever file it is done.
    return one.uuid < other.uuid ? own : their;
  };
}
