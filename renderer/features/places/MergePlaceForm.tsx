import { z } from 'zod';
import { says } from '../../../shared-core/contract/validation.ts';
import type { PlaceRow } from '../../../shared-core/contract/yard.ts';
import { bridge } from '../../data/bridge.ts';
import { useLongWork } from '../../data/useLongWork.ts';
import { useQuery } from '../../data/useQuery.ts';
import { Choice } from '../../form/Choice.tsx';
import { FormDialog } from '../../form/FormDialog.tsx';
import { useDraft } from '../../form/useDraft.ts';
import { tellDone } from '../../stores/notices.ts';
import { useWords } from '../../words.ts';
import { PlaceField } from './PlaceField.tsx';

const airSchema = z.enum(['into', 'own']);
type Air = z.infer<typeof airSchema>;
const schema = z.object({ placeId: z.int(says('validation.place-missing')), air: airSchema });

/** Brings all that is or was in a place to another one, with the air that is right, and closes it. */
export function MergePlaceForm({
  place: { id, version: basedOn, name },
  onClose,
}: {
  place: Pick<PlaceRow, 'id' | 'version' | 'name'>;
  onClose: () => void;
}) {
  const { say } = useWords();
  const { draft, field, read, set } = useDraft(schema, { placeId: null, air: 'into' });
  const into = useQuery('places.list', {}).output?.find((each) => each.id === draft.placeId);
  const { underWay, follow, cancel } = useLongWork();

  async function save(): Promise<void> {
    const { placeId: intoId, air } = read();
    await follow((work) => bridge().command('places.merge', { id, basedOn, intoId, air, work }));
    tellDone(say('closing.merged', { name, intoName: into?.name ?? '' }));
  }

  return (
    <FormDialog
      title={say('closing.merge-named', { name })}
      saveWords={say('closing.merge')}
      onSave={save}
      onClose={onClose}
      work={{ label: say('closing.merging-places'), underWay, onCancel: cancel }}
    >
      <PlaceField label={say('closing.into')} butNot={id} {...field('placeId')} />
      <p className="soft">{say('closing.merge-place-effect')}</p>
      {into && (
        <Choice<Air>
          label={say('closing.right-air')}
          value={draft.air}
          options={[
            { value: 'into', label: say('closing.air-of', { placeName: into.name }) },
            { value: 'own', label: say('closing.air-of', { placeName: name }) },
          ]}
          onValue={(air) => set({ air })}
        />
      )}
    </FormDialog>
  );
}
