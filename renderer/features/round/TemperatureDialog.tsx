import { useState } from 'react';
import { useQuery } from '../../data/useQuery.ts';
import { Checkbox } from '../../form/Field.tsx';
import { FormDialog } from '../../form/FormDialog.tsx';
import { TemperatureField, useWoodTemp } from '../../form/TemperatureField.tsx';
import { setWoodTemp } from '../../stores/round-opening.ts';
import { useWords } from '../../words.ts';
import { MeasuredTemp } from './MeasuredTemp.tsx';
import { isRoundsTempDoubted } from './TemperatureDoubt.tsx';
import type { Probing } from './useProbing.ts';

/** The wood's temperature: this board's own, or a new one for the whole round. */
export function TemperatureDialog(probing: Probing) {
  const { round, board, onClose } = probing;
  const { say } = useWords();
  const answer = useWoodTemp({ woodTempC: board.woodTempC, unknown: board.woodTempC === null });
  const probe = useQuery('sensors.probe', {}).output ?? null;
  const [forAll, setForAll] = useState(() => isRoundsTempDoubted(probing));
  return (
    <FormDialog
      title={say('round-temp.title', { boardCode: board.code })}
      saveWords={say('common.save')}
      onSave={async () => void setWoodTemp(forAll ? null : board.boardId, answer.read())}
      onClose={onClose}
    >
      <TemperatureField answer={answer} autoFocus />
      {probe !== null && (
        <p className="soft">
          {say('round-temp.from-probe', { woodTempC: probe.tempC, sensorName: probe.name })}
        </p>
      )}
      <MeasuredTemp answer={answer} placeId={round.placeId} />
      <Checkbox
        label={say('round-temp.for-round')}
        hint={say('round-temp.for-round-hint')}
        checked={forAll}
        onChecked={setForAll}
      />
    </FormDialog>
  );
}
