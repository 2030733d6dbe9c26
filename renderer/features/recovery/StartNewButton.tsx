import { useState } from 'react';
import { attempt } from '../../stores/notices.ts';
import { startYardAfresh } from '../../stores/yard.ts';
import { Actions, Button } from '../../ui/Button.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { useWords } from '../../words.ts';

/** Starts an empty yard, after a question. What is left of the present one gets another name. */
export function StartNewButton({ isFileMissing }: { isFileMissing: boolean }) {
  const { say } = useWords();
  const [isAsking, setAsking] = useState(false);
  return (
    <>
      <Button kind={isFileMissing ? 'plain' : 'quiet'} onClick={() => setAsking(true)}>
        {say(isFileMissing ? 'problem-page.start-new-yes' : 'problem-page.start-new')}
      </Button>
      {isAsking && (
        <Dialog title={say('problem-page.start-new-title')} onClose={() => setAsking(false)}>
          <p>{say(isFileMissing ? 'problem-page.start-new-missing' : 'problem-page.start-new-effect')}</p>
          <Actions>
            <Button
              kind="main"
              onClick={() => {
                setAsking(false);
                void attempt(startYardAfresh());
              }}
            >
              {say('problem-page.start-new-yes')}
            </Button>
            <Button onClick={() => setAsking(false)}>{say('common.cancel')}</Button>
          </Actions>
        </Dialog>
      )}
    </>
  );
}
