import type { Sensor } from '../../../shared-core/contract/air.ts';
import { requests } from '../../../shared-core/contract/requests.ts';
import { useEdit } from '../../data/useEdit.ts';
import { TextField } from '../../form/Field.tsx';
import { FormDialog } from '../../form/FormDialog.tsx';
import { useDraft } from '../../form/useDraft.ts';
import { useWords } from '../../words.ts';

const schema = requests['sensors.edit'].input.shape.changed.required();

/** Asks for another name of a sensor. */
export function RenameSensorForm({ sensor, onClose }: { sensor: Sensor; onClose: () => void }) {
  const { say } = useWords();
  const edit = useEdit('sensors.edit', sensor);
  const { field, read, refill } = useDraft(schema, { name: sensor.name }, edit.theirs);
  return (
    <FormDialog
      title={say('sensors.rename-named', { name: sensor.name })}
      saveWords={say('common.save')}
      onSave={async () => void (await edit.save(read()))}
      onClose={onClose}
      conflict={edit.conflict(refill)}
    >
      <TextField label={say('sensors.name')} autoFocus {...field('name')} />
    </FormDialog>
  );
}
