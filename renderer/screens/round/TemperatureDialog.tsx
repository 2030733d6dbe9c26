import { useState } from 'react';
import type { RoundBoard } from '../../../shared-core/contract/round.ts';
import { temperatureFromC } from '../../../shared-core/units/temperature.ts';
import type { Message } from '../../../shared-core/words/message.ts';
import { Actions, Button } from '../../parts/Button.tsx';
import { Dialog } from '../../parts/Dialog.tsx';
import { Checkbox } from '../../parts/Field.tsx';
import { TemperatureField } from '../../parts/TemperatureField.tsx';
import { readTemperature } from '../../parts/wood-temp.ts';
import { setWoodTemp } from '../../stores/round.ts';
import { useUnits } from '../../stores/settings.ts';

/** The wood's temperature: this board's own, or a new one for the whole round. */
export function TemperatureDialog({ board, onClose }: { board: RoundBoard; onClose: () => void }) {
  const units = useUnits();
  const [value, setValue] = useState({
    typed: board.woodTempC === null ? null : temperatureFromC(board.woodTempC, units),
    unknown: board.woodTempC === null,
  });
  const [forAll, setForAll] = useState(false);
  const [problem, setProblem] = useState<Message | null>(null);
  return (
    <Dialog title={`Wood temperature of ${board.code}`} onClose={onClose}>
      <form
        onSubmit={(event) => {
          event.preventDefault();
          const read = readTemperature(value, units);
          if (!read.ok) return setProblem(read.problem);
          onClose();
          void setWoodTemp(forAll ? null : board.boardId, read.woodTempC);
        }}
      >
        <TemperatureField value={value} units={units} problem={problem} autoFocus onValue={setValue} />
        <Checkbox
          label="For the whole round"
          hint="Boards that were given a temperature of their own keep it."
          checked={forAll}
          onChecked={setForAll}
        />
        <Actions>
          <Button type="submit" kind="main">
            Set it
          </Button>
          <Button onClick={onClose}>Leave it</Button>
        </Actions>
      </form>
    </Dialog>
  );
}
