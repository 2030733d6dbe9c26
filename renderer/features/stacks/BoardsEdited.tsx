import { useState } from 'react';
import { Refusal } from '../../../shared-core/contract/answer.ts';
import type { RequestOutput } from '../../../shared-core/contract/requests.ts';
import { type Message, message } from '../../../shared-core/words/message.ts';
import { useLongWork } from '../../data/useLongWork.ts';
import { useQuery } from '../../data/useQuery.ts';
import { forgetEdit, type LastEdit } from '../../stores/last-edit.ts';
import { attempt, undoAct } from '../../stores/notices.ts';
import { Banner } from '../../ui/Banner.tsx';
import { Button } from '../../ui/Button.tsx';
import { WorkUnderWay } from '../../ui/WorkUnderWay.tsx';
import { useWords } from '../../words.ts';

/** A sentence names no more boards than a person reads. */
const MOST_NAMED = 5;

/** What an edit of several boards came to: whose calls it changed, and the way back. */
export function BoardsEdited({
  edit: { act, boards: versions, movedTo },
  onShow,
}: {
  edit: LastEdit;
  /** Shows the boards that were moved, where the list does not; null where it does. */
  onShow: (() => void) | null;
}) {
  const { say } = useWords();
  const came = useQuery('boards.callsChanged', { act }).output;
  const boards = versions.length;
  const place = useQuery('places.list', {}).output?.find(({ id }) => id === movedTo);
  const done = place
    ? say('stacks.boards-moved', { boards, placeName: place.name })
    : say('stacks.boards-changed', { boards });
  /** Why it cannot be undone any more. */
  const [whyNot, setWhyNot] = useState<Message | null>(null);

  const { underWay, follow, cancel } = useLongWork();
  const isLong = underWay !== null && underWay.total > 0;

  // Here, by a key, in the history or in another window.
  if (came?.isUndone) return null;

  async function undo(): Promise<void> {
    try {
      await follow((work) => undoAct(act, 'undo', work));
    } catch (error) {
      if (!(error instanceof Refusal) || error.problem.code === 'refusal.stopped') throw error;
      setWhyNot(error.problem);
    }
  }

  return (
    <Banner
      kind={whyNot ? 'problem' : 'done'}
      actions={
        isLong ? (
          <WorkUnderWay label={say('frame.undoing')} {...underWay} onCancel={cancel} />
        ) : (
          <>
            {!whyNot && <Button onClick={() => attempt(undo())}>{say('stacks.undo-edit')}</Button>}
            {onShow && <Button onClick={onShow}>{say('stacks.show-moved')}</Button>}
            <Button kind="quiet" onClick={forgetEdit}>
              {say('frame.dismiss')}
            </Button>
          </>
        )
      }
    >
      {whyNot ? say(whyNot) : done}{' '}
      {!whyNot && came && (came.isJudging ? say('stacks.calls-judging') : say(callsChanged(came.changed)))}
    </Banner>
  );
}

function callsChanged(changed: RequestOutput<'boards.callsChanged'>['changed']) {
  const more = changed.length - MOST_NAMED;
  return message('stacks.calls-changed', {
    calls: changed.length,
    changes: [
      ...changed.slice(0, MOST_NAMED).map(({ code: boardCode, call }) =>
        message('stacks.call-now', {
          boardCode,
          callName: message(call ? `call.${call}` : 'stacks.no-call'),
        }),
      ),
      ...(more > 0 ? [message('stacks.more-calls', { more })] : []),
    ],
  });
}
