import { useState } from 'react';
import type { RoundBoard } from '../../../shared-core/contract/round.ts';
import { temperatureFromC } from '../../../shared-core/units/temperature.ts';
import type { Message } from '../../../shared-core/words/message.ts';
import { Checkbox } from '../../form/Field.tsx';
import { FormDialog, fieldsMarked } from '../../form/FormDialog.tsx';
import { TemperatureField } from '../../form/TemperatureField.tsx';
import { readTemperature } from '../../form/wood-temp.ts';
import { setWoodTemp } from '../../stores/round.ts';
import { useUnits } from '../../stores/settings.ts';
import { useWords } from '../../words.ts';

/** The wood's temperature: this board's own, or a new one for the whole round. */
export function TemperatureDialog({ board, onClose }: { board: RoundBoard; onClose: () => void }) {
  const { say } = useWords();
  const units = useUnits();
  const [value, setValue] = useState({
    typed: board.woodTempC === null ? null : temperatureFromC(board.woodTempC, units),
    unknown: board.woodTempC === null,
  });
  const [forAll, setForAll] = useState(false);
  const [problem, setProblem] = useState<Message | null>(null);
  return (
    <FormDialog
      title={say('round-temp.title', { boardCode: board.code })}
      saveWords={say('common.save')}
      onSave={async () => {
        const read = readTemperature(value, units);
        if (!read.ok) {
          setProblem(read.problem);
          throw fieldsMarked();
        }
        await setWoodTemp(forAll ? null : board.boardId, read.woodTempC);
      }}
      onClose={onClose}
    >
      <TemperatureField value={value} units={units} problem={problem} autoFocus onValue={setValue} />
      <Checkbox
        label={say('round-temp.for-round')}
        hint={say('round-temp.for-round-hint')}
        checked={forAll}
        onChecked={setForAll}
      />
    </FormDialog>
  );
}
