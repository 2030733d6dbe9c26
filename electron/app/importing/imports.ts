import { randomUUID } from 'node:crypto';
import { Refusal } from '../../../shared-core/contract/answer.ts';
import { importCountsSchema } from '../../../shared-core/contract/requests/imports.ts';
import type { Outcome } from '../../../shared-core/outcome.ts';
import { message } from '../../../shared-core/words/message.ts';
import { type AppContext, orRefuse } from '../context.ts';
import type { Commands } from '../handlers.ts';
import type { Comparing } from '../judging/comparing.ts';
import type { Judging } from '../judging/judging.ts';
import type { LongWork } from '../long-work.ts';
import { createOwnThread, type OwnThread } from '../own-thread.ts';
import type { Slices } from '../slices.ts';
import type { Windows } from '../windows.ts';
import { localDay } from '../yard/backup-tasks.ts';
import type { Transfers } from '../yard/transfers.ts';
import type { CheckedAnswer, ImportAnswers, ImportQuestion } from './import-tasks.ts';
import { saveImport } from './saving-import.ts';

/** The table of a window, on its own thread, and what was last checked of it. */
interface OpenTable {
  id: string;
  thread: OwnThread<ImportQuestion, Outcome<ImportAnswers[ImportQuestion['task']]>>;
  plan: { id: string; parts: readonly string[]; content: string; isAny: boolean } | null;
}

/** Tables that windows import. */
export function createImports(
  context: AppContext,
  { judging, comparing, longWork }: { judging: Judging; comparing: Comparing; longWork: LongWork },
  { closed }: Pick<Windows, 'closed'>,
  { whileHeld }: Pick<Transfers, 'whileHeld'>,
  redo: (act: string) => Slices<unknown>,
  script: string,
) {
  const ofWindows = new Map<string, OpenTable>();

  function drop(window: string): void {
    const open = ofWindows.get(window);
    ofWindows.delete(window);
    void open?.thread.close();
  }
  closed.follow(drop);

  async function ask<Q extends ImportQuestion>({ thread }: OpenTable, question: Q) {
    const outcome = await thread.ask(question);
    if (!outcome.ok) throw new Refusal(outcome.problem);
    return outcome.value as ImportAnswers[Q['task']];
  }
  function tableOf(window: string, id: string): OpenTable {
    const open = ofWindows.get(window);
    if (open?.id !== id) throw new Refusal(message('import.refused-gone'));
    return open;
  }
  const today = (): string => localDay(context.now());

  return {
    commands: {
      'imports.read': ({ file, work, ...reader }, window) =>
        longWork.run(window, work, async ({ signal }) => {
          drop(window);
          const open: OpenTable = { id: randomUUID(), thread: createOwnThread(script), plan: null };
          ofWindows.set(window, open);
          const stop = () => void open.thread.close();
          signal.addEventListener('abort', stop);
          try {
            const question = { ...reader, yardFile: context.yard().file, today: today() };
            const read = await whileHeld(file, () => ask(open, { task: 'read', file, reader: question }));
            return { ...read, table: open.id };
          } catch (error) {
            if (ofWindows.get(window) === open) drop(window);
            throw error;
          } finally {
            signal.removeEventListener('abort', stop);
          }
        }),

      'imports.guess': ({ table, units, order, ...chosen }, window) => {
        const reader = { units, order, yardFile: context.yard().file, today: today() };
        return ask(tableOf(window, table), { task: 'guess', reader, ...chosen });
      },

      'imports.check': async ({ table, choices, refusedFrom }, window) => {
        const open = tableOf(window, table);
        const { file: yardFile } = context.yard();
        const checked: CheckedAnswer = await ask(open, {
          task: 'check',
          choices,
          refusedFrom,
          yardFile,
          now: context.now(),
        });
        const { parts, content, ...answer } = checked;
        const isAny = Object.values(answer.counts).some((count) => count > 0);
        open.plan = { id: randomUUID(), parts, content, isAny };
        return { ...answer, plan: open.plan.id };
      },

      *'imports.save'({ plan: id, fileName }, window) {
        const plan = ofWindows.get(window)?.plan;
        if (!plan) throw new Refusal(message('import.refused-gone'));
        if (plan.id !== id) throw new Refusal(message('import.refused-earlier'));
        if (!plan.isAny) throw new Refusal(message('import.refused-nothing'));
        const { acts } = context.yard();
        const { content } = plan;
        const act = acts.now();
        const undone = acts.findOutcome('imports.save', 'content', content);
        if (undone !== null && acts.isUndone(undone)) {
          yield* redo(undone);
          const { counts } = orRefuse(acts.find(undone), 'act').outcome as { counts: unknown };
          return { act, fileName, content, counts: importCountsSchema.parse(counts), isRestored: true };
        }
        const counts = yield* saveImport(context, judging, comparing, plan.parts);
        return { act, fileName, content, counts, isRestored: false };
      },
    } satisfies Partial<Commands>,
    close: async (): Promise<void> => {
      const threads = [...ofWindows.values()].map(({ thread }) => thread);
      ofWindows.clear();
      await Promise.all(threads.map((thread) => thread.close()));
    },
  };
}
