import type { PlaceRow } from '../../../shared-core/contract/yard.ts';
import type { Code } from '../../../shared-core/words/en/index.ts';
import { bridge } from '../../data/bridge.ts';
import { useWords } from '../../words.ts';
import { ConfirmDialog } from '../closing/ConfirmDialog.tsx';
import { MergePlaceForm } from './MergePlaceForm.tsx';

export type Ending = 'close' | 'merge' | 'delete';

/** How a place leaves the lists: closed, merged into another, or deleted where it was added by mistake. */
export function PlaceEnding({
  place,
  ending,
  onOther,
  onClose,
}: {
  place: Pick<PlaceRow, 'id' | 'version' | 'name'>;
  ending: Ending;
  /** Opens another dialog, where this act is refused. A closed place has no other. */
  onOther?: (ending: Ending) => void;
  onClose: () => void;
}) {
  const { say } = useWords();
  const { id, version: basedOn, name } = place;
  const insteadTo = (other: 'close' | 'merge', after: Code) =>
    onOther && {
      after,
      words: say(`closing.${other}-place`),
      onDo: async () => onOther(other),
    };
  switch (ending) {
    case 'merge':
      return <MergePlaceForm place={place} onClose={onClose} />;
    case 'close':
      return (
        <ConfirmDialog
          key={ending}
          title={say('closing.close-named', { name })}
          effect={say('closing.close-place-effect')}
          doWords={say('closing.close-place')}
          doneWords={say('closing.closed', { name })}
          onDo={() => bridge().command('places.close', { id, basedOn })}
          instead={[insteadTo('merge', 'refusal.place-in-use')]}
          onClose={onClose}
        />
      );
    case 'delete':
      return (
        <ConfirmDialog
          key={ending}
          title={say('closing.delete-named', { name })}
          effect={say('closing.delete-place-effect')}
          doWords={say('life.delete')}
          doneWords={say('closing.deleted', { name })}
          onDo={() => bridge().command('places.delete', { id, basedOn })}
          instead={[insteadTo('close', 'refusal.place-has-records')]}
          onClose={onClose}
        />
      );
  }
}
