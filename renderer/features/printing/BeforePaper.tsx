import { useState } from 'react';
import { useUpdating } from '../../data/useUpdating.ts';
import { Banner } from '../../ui/Banner.tsx';
import { Actions, Button } from '../../ui/Button.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { useWords } from '../../words.ts';

/** How something gets on paper. */
interface ToPaper {
  how: 'print' | 'pdf';
  go: () => Promise<void>;
}
const WORDS = { print: 'common.print', pdf: 'labels.save-as-pdf' } as const;
const ANYWAY = { print: 'print.anyway', pdf: 'print.save-anyway' } as const;

/**
 * Asks before calls go on paper that are still being made. Nothing goes by itself: the person waits, or goes on.
 * @param stackId  of one stack; null: of any
 */
export function useBeforePaper(stackId: number | null = null) {
  const { say } = useWords();
  const isUpdating = useUpdating(stackId);
  const [asked, setAsked] = useState<ToPaper | null>(null);
  const stop = () => setAsked(null);
  return {
    /** What the screen says meanwhile. */
    note: isUpdating && <Banner>{say('stacks.forecasting')}</Banner>,
    before: (how: ToPaper['how'], go: () => Promise<void>): void => {
      if (isUpdating) setAsked({ how, go });
      else void go();
    },
    question: asked && (
      <Dialog title={say('print.updating-title')} onClose={stop}>
        <p role="status">{say(isUpdating ? 'print.updating' : 'print.updated')}</p>
        <Actions>
          <Button
            kind="main"
            onClick={() => {
              stop();
              void asked.go();
            }}
          >
            {say((isUpdating ? ANYWAY : WORDS)[asked.how])}
          </Button>
          <Button onClick={stop}>{say('common.cancel')}</Button>
        </Actions>
      </Dialog>
    ),
  };
}
export type BeforePaper = ReturnType<typeof useBeforePaper>;
