import { z } from 'zod';
import { says } from '../../../shared-core/contract/validation.ts';
import { joinedNote, type StackRow } from '../../../shared-core/contract/yard.ts';
import { bridge } from '../../data/bridge.ts';
import { useLongWork } from '../../data/useLongWork.ts';
import { useQuery } from '../../data/useQuery.ts';
import { FormDialog } from '../../form/FormDialog.tsx';
import { useDraft } from '../../form/useDraft.ts';
import { wayOn } from '../../stores/navigation.ts';
import { tellDone } from '../../stores/notices.ts';
import { useWords } from '../../words.ts';
import { StackField } from './StackField.tsx';
import { useCarried } from './useCarried.tsx';

const schema = z.object({ stackId: z.int(says('validation.stack-missing')) });

/** Brings all of a stack to another one, goes there, and closes it. */
export function MergeStackForm({ stack, onClose }: { stack: StackRow; onClose: () => void }) {
  const { say } = useWords();
  const { draft, field, read } = useDraft(schema, { stackId: null });
  const into = useQuery('stacks.list', {}).output?.find(({ id }) => id === draft.stackId);
  const isElsewhere = into !== undefined && stack.boards > 0 && into.placeId !== stack.placeId;
  const carried = useCarried(isElsewhere ? { id: into.placeId, name: into.placeName } : null, stack.boards);
  const { underWay, follow, cancel } = useLongWork();
  const { id, version: basedOn, name: stackName } = stack;

  async function save(): Promise<void> {
    const { stackId: intoId } = read();
    const goOn = wayOn();
    await carried.ask((move) =>
      follow((work) => bridge().command('stacks.merge', { id, basedOn, intoId, move, work })),
    );
    // Told there, or it would go with the page that was left.
    goOn({ name: 'stack', id: intoId });
    tellDone(say('closing.merged', { name: stackName, intoName: into?.name ?? '' }));
  }

  return (
    <FormDialog
      title={say('closing.merge-named', { name: stackName })}
      saveWords={carried.saveWords ?? say('closing.merge')}
      isQuestion={carried.isAsking}
      onSave={save}
      onClose={onClose}
      work={{ label: say('stacks.changing-boards'), underWay, onCancel: cancel }}
    >
      <StackField label={say('closing.into')} butNot={id} mayAdd={false} {...field('stackId')} />
      <p className="soft">{say('closing.merge-stack-effect')}</p>
      {into && into.endUseId !== stack.endUseId && (
        <p>{say('closing.merge-use', { endUseName: into.endUseName })}</p>
      )}
      {into && joinedNote(into.note, stack.note) === null && (
        <p>{say('closing.merge-note-too-long', { name: stackName })}</p>
      )}
      {carried.fields}
    </FormDialog>
  );
}
