import { z } from 'zod';
import { boardTopics } from '../../../shared-core/contract/topics.ts';
import type { AppContext } from '../context.ts';
import type { Judging } from '../judging/judging.ts';
import type { Backups } from './backups.ts';
import type { CheckThread } from './check-thread.ts';
import { DAMAGED_READINGS_NOTE, damagedReadingsNote } from './yard-notes.ts';
import type { Yards } from './yards.ts';

/** The setting that says which damaged readings were found when the yard was last open. */
const KEY = 'damaged-readings';
const foundSchema = z.object({ ids: z.array(z.number()), isDismissed: z.boolean() });

/**
 * Looks in the background through every reading of an open yard for what the disk changed. Boards with such readings are
 * judged again without them, and a note says so until the person dismisses it.
 *
 * @param verifyAfterMs  how long after a yard was opened
 */
export function createVerifying(
  context: AppContext,
  yards: Yards,
  checkThread: CheckThread,
  backups: Pick<Backups, 'newestWith'>,
  judging: Pick<Judging, 'judgeAgain'>,
  verifyAfterMs: number,
) {
  let timer: NodeJS.Timeout | undefined;
  /** Raised when another yard is opened. */
  let era = 0;

  const foundBefore = () => foundSchema.safeParse(context.yard().settings.get(KEY)).data;

  async function verify(mine: number): Promise<void> {
    try {
      const { file } = context.yard();
      const { damage, damagedReadings } = await checkThread.ask({ file, isThorough: true });
      if (mine !== era) return;
      if (damage !== null) yards.foundDamage();
      else if (damagedReadings.length > 0) await tell(damagedReadings, mine);
    } catch (error) {
      if (mine === era) context.reportFault(error);
    }
  }

  async function tell(ids: number[], mine: number): Promise<void> {
    const { readings, settings, transaction } = context.yard();
    const included = readings.included(ids);
    if (included.length === 0) return;
    const before = foundBefore();
    const isNew = included.some(({ id }) => !before?.ids.includes(id));
    const boards = new Map(included.flatMap(({ boardId, code }) => (code === null ? [] : [[boardId, code]])));
    if (isNew) {
      transaction(() => settings.put(KEY, { ids, isDismissed: false }));
      judging.judgeAgain([...boards.keys()]);
    }
    if (!isNew && before?.isDismissed) return;
    const backup = await backups.newestWith(included.map(({ id }) => id));
    if (mine !== era) return;
    yards.notes.add(damagedReadingsNote(included.length, [...boards.values()], backup));
    context.changed(['yardNotes', ...boardTopics([...boards.keys()])]);
  }

  return {
    /** A yard was opened, and can be written to. */
    takeUp: (): void => {
      clearTimeout(timer);
      timer = setTimeout(() => void verify(era), verifyAfterMs).unref();
    },
    leave: (): void => {
      era++;
      clearTimeout(timer);
    },
    /** A note was dismissed: that of these readings is not shown again. */
    noteDismissed: (code: string): void => {
      const found = code === DAMAGED_READINGS_NOTE ? foundBefore() : undefined;
      if (!found) return;
      const { settings, transaction } = context.yard();
      transaction(() => settings.put(KEY, { ...found, isDismissed: true }));
    },
  };
}
