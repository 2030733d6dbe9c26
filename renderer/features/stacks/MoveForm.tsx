import { z } from 'zod';
import type { RequestInput, RequestOutput } from '../../../shared-core/contract/requests.ts';
import { says } from '../../../shared-core/contract/validation.ts';
import { type BoardRow, dayUntil, type StackRow } from '../../../shared-core/contract/yard.ts';
import { bridge } from '../../data/bridge.ts';
import { useLongWork } from '../../data/useLongWork.ts';
import { FormDialog } from '../../form/FormDialog.tsx';
import { useDraft } from '../../form/useDraft.ts';
import { tellDone } from '../../stores/notices.ts';
import { momentOfDay } from '../../ui/days.ts';
import { useWords } from '../../words.ts';
import { MoveFields } from './MoveFields.tsx';
import { useMoveQuestions } from './useMoveQuestions.tsx';

type Target =
  | { stack: Pick<StackRow, 'id' | 'name' | 'placeId' | 'elsewhere'> }
  | { board: Pick<BoardRow, 'id' | 'code' | 'placeId'> }
  | {
      boards: readonly Pick<BoardRow, 'id' | 'version'>[];
      /** Where all of them are; left out where they may be in several places. */
      placeId?: number;
      /** Which those are, in words. */
      which?: string;
      onMoved: (output: RequestOutput<'boards.editTogether'>, placeId: number) => void;
    };

const schemaOn = (today: string) =>
  z.object({
    placeId: z.int(says('validation.place-missing')),
    since: dayUntil(today),
    /** Blank: not known. */
    time: z.string(),
  });

/** Asks where a board, some boards, or a stack with all its boards, was moved to, and when. */
export function MoveForm({
  target,
  placeId: suggested = null,
  onClose,
}: {
  target: Target;
  /** Where to, at first; null for none. */
  placeId?: number | null;
  onClose: () => void;
}) {
  const { say, formats } = useWords();
  const today = formats.localDay(new Date());
  const typed = useDraft(schemaOn(today), { placeId: suggested, since: today, time: '' });
  const { underWay, follow, cancel } = useLongWork();
  const questions = useMoveQuestions(typed.draft);

  async function save(): Promise<void> {
    const { placeId, since, time } = typed.read();
    const to = { placeId, ...momentOfDay(since, time, new Date()) };
    await questions.ask((answers) => moveTo({ ...to, ...answers }));
  }

  async function moveTo(to: Omit<RequestInput<'boards.move'>, 'boardIds' | 'work'>): Promise<void> {
    const { placeId } = to;
    if ('boards' in target) {
      const boards = target.boards.map(({ id, version }) => ({ id, basedOn: version }));
      const edit = { boards, changed: {}, move: to };
      target.onMoved(
        await follow((work) => bridge().command('boards.editTogether', { ...edit, work })),
        placeId,
      );
      return;
    }
    if ('stack' in target) {
      const { id } = target.stack;
      await follow((work) => bridge().command('stacks.move', { id, ...to, work }));
    } else await bridge().command('boards.move', { boardIds: [target.board.id], ...to });
    const places = await bridge().query('places.list', {});
    const name = nameOf(target);
    tellDone(say('stacks.moved', { name, placeName: places.find(({ id }) => id === placeId)!.name }));
  }

  return (
    <FormDialog
      title={
        'boards' in target
          ? say('stacks.move-boards', { boards: target.boards.length })
          : say('stacks.move-named', { name: nameOf(target) })
      }
      saveWords={questions.saveWords ?? say('stacks.move-button')}
      isQuestion={questions.isAsking}
      onSave={save}
      onClose={onClose}
      work={{ label: say('stacks.moving-boards'), underWay, onCancel: cancel }}
    >
      {'which' in target && target.which && <p>{target.which}</p>}
      <MoveFields move={typed} butNot={presentPlace(target)} boards={whichOf(target)} />
      {questions.choice}
    </FormDialog>
  );
}

const whichOf = (target: Target): RequestInput<'stacks.ifMoved'> => {
  if ('stack' in target) return { id: target.stack.id };
  return { boardIds: 'board' in target ? [target.board.id] : target.boards.map(({ id }) => id) };
};

const nameOf = (target: Exclude<Target, { boards: unknown }>): string =>
  'stack' in target ? target.stack.name : target.board.code;

/** Where all of it is. A stack of which boards are elsewhere can be brought together where it is. */
function presentPlace(target: Target): number | undefined {
  if ('boards' in target) return target.placeId;
  if ('board' in target) return target.board.placeId;
  return target.stack.elsewhere.boards === 0 ? target.stack.placeId : undefined;
}
