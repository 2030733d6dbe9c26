import { type ReactNode, useState } from 'react';
import { z } from 'zod';
import { says } from '../../../shared-core/contract/validation.ts';
import type {
  Exclusion,
  ExclusionCode,
  GivenExclusion,
} from '../../../shared-core/probing/readings/exclusion.ts';
import { TextField } from '../../form/Field.tsx';
import { useDraft } from '../../form/useDraft.ts';
import { useSaving } from '../../form/useSaving.ts';
import { Banner } from '../../ui/Banner.tsx';
import { Actions, Button } from '../../ui/Button.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { useWords } from '../../words.ts';

const reasonSchema = z.object({ text: z.string().trim().min(1, says('exclude.reason-missing')) });

interface Asking {
  /** As the question names it: "P1", "4.1 kg". */
  recordName: string;
  /** The usual reasons to exclude such a record. */
  reasons: readonly ExclusionCode[];
  onExclude: (why: GivenExclusion) => Promise<unknown>;
  /** The record itself, where its name does not show all of it. */
  children?: ReactNode;
}

/** Excludes something that was measured, or includes it again. Either way it stays on record. */
export function ExcludeButton({
  excluded,
  onInclude,
  ...asking
}: Asking & {
  /** Why it is excluded; null where it is not. */
  excluded: Exclusion | null;
  onInclude: () => void;
}) {
  const { say } = useWords();
  const [open, setOpen] = useState(false);
  const { recordName } = asking;
  const isExcluded = excluded !== null;
  // One button for both, so that the focus stays on it.
  return (
    <>
      <Button
        kind="quiet"
        aria-label={say(isExcluded ? 'include.button' : 'exclude.button', { recordName })}
        onClick={() => (isExcluded ? onInclude() : setOpen(true))}
      >
        {say(isExcluded ? 'common.include' : 'common.exclude')}
      </Button>
      {open && <ExcludeDialog {...asking} onClose={() => setOpen(false)} />}
    </>
  );
}

/** Asks why: one press for a usual reason, or the person's own words. */
function ExcludeDialog({
  recordName,
  reasons,
  onExclude,
  children,
  onClose,
}: Asking & { onClose: () => void }) {
  const { say } = useWords();
  const { field, read } = useDraft(reasonSchema, { text: '' });
  const { busy, problem, save, form } = useSaving(onClose);
  const exclude = (why: GivenExclusion) => void save(() => onExclude(why));
  return (
    <Dialog title={say('exclude.question', { recordName })} onClose={onClose}>
      {children}
      <p>{say('exclude.effect')}</p>
      <Actions>
        {reasons.map((code) => (
          <Button key={code} disabled={busy} onClick={() => exclude({ code })}>
            {say(`exclusion.${code}`)}
          </Button>
        ))}
      </Actions>
      <form
        ref={form}
        className="column"
        onSubmit={(event) => {
          event.preventDefault();
          void save(async () => onExclude(read()));
        }}
      >
        <TextField label={say('exclude.other-reason')} maxLength={200} {...field('text')} />
        {problem && <Banner kind="problem">{problem.sentence}</Banner>}
        <Actions>
          <Button kind="main" type="submit" disabled={busy}>
            {say('common.exclude')}
          </Button>
          <Button onClick={onClose}>{say('common.cancel')}</Button>
        </Actions>
      </form>
    </Dialog>
  );
}
