import { type ReactNode, useState } from 'react';
import { Refusal } from '../../../shared-core/contract/answer.ts';
import type { Code } from '../../../shared-core/words/en/index.ts';
import { FormDialog } from '../../form/FormDialog.tsx';
import { tellDone } from '../../stores/notices.ts';

/** What can be done where an act is refused. */
interface Instead {
  /** The refusal that it answers. */
  after: Code;
  words: string;
  onDo: () => Promise<unknown>;
}

/** Says what an act comes to before it is done, and afterwards that it was, with its undo. */
export function ConfirmDialog({
  title,
  effect,
  doWords,
  doneWords,
  onDo,
  instead = [],
  onClose,
}: {
  title: string;
  effect: ReactNode;
  /** What the button does. */
  doWords: string;
  doneWords: string;
  onDo: () => Promise<unknown>;
  instead?: readonly (Instead | undefined)[];
  onClose: () => void;
}) {
  const [refusedBy, setRefusedBy] = useState<string | null>(null);
  const way = instead.find((each) => each?.after === refusedBy);
  return (
    <FormDialog
      title={title}
      saveWords={doWords}
      onSave={async () => {
        await onDo().catch((error: unknown) => {
          if (error instanceof Refusal) setRefusedBy(error.problem.code);
          throw error;
        });
        tellDone(doneWords);
      }}
      instead={way ? { words: way.words, onSave: way.onDo } : null}
      onClose={onClose}
    >
      <p>{effect}</p>
    </FormDialog>
  );
}
