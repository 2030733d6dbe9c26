import { useState } from 'react';
import type { DisplayUnits } from '../../../shared-core/units/length.ts';
import type { EndUse } from '../../../shared-core/wood/species/end-use.ts';
import { endUseForRoom as forRoom, type Room } from '../../../shared-core/wood/species/target.ts';
import { Button } from '../../parts/Button.tsx';
import { NumberField } from '../../parts/Field.tsx';
import { pctWords } from '../../parts/McValue.tsx';
import { useAnswer } from '../../useAnswer.ts';
import { EndUseForm } from '../species/EndUseForm.tsx';
import { emptyUseDraft } from '../species/end-use-draft.ts';
import { AirFigures } from './AirFigures.tsx';
import { AirTempField } from './AirTempField.tsx';
import { airRh, airTempC } from './air-fields.ts';

/** From the humidity of the room where the work will stand: the range that its wood should have, to keep as a use. */
export function RoomTarget({ firstTemp, units }: { firstTemp: number; units: DisplayUnits }) {
  const endUses = useAnswer('endUses.list', {});
  const [temp, setTemp] = useState<number | null>(firstTemp);
  const [driestPct, setDriestPct] = useState<number | null>(30);
  const [dampestPct, setDampestPct] = useState<number | null>(50);
  const [saving, setSaving] = useState(false);
  const tempC = airTempC(temp, units);
  const driest = airRh(driestPct);
  const dampest = airRh(dampestPct);
  const turned = driest.ok && dampest.ok && driest.value > dampest.value;
  const room: Room | null =
    tempC.ok && driest.ok && dampest.ok && !turned
      ? { tempC: tempC.value, driestRh: driest.value, dampestRh: dampest.value }
      : null;
  const made = room && forRoom(roomUse, room, units);
  return (
    <>
      <p>
        Where the finished work will stand: what a hygrometer showed there at the driest and at the dampest
        time of the year. Wood worked within this range moves least afterwards.
      </p>
      <div className="form-grid">
        <AirTempField label="Temperature of the room" temp={temp} units={units} onTemp={setTemp} />
        <NumberField
          label="Humidity at its driest"
          unit="%"
          value={driestPct}
          error={driest.ok ? null : driest.sentence}
          onValue={setDriestPct}
        />
        <NumberField
          label="Humidity at its dampest"
          unit="%"
          value={dampestPct}
          error={
            !dampest.ok ? dampest.sentence : turned ? 'The dampest must not lie below the driest.' : null
          }
          onValue={setDampestPct}
        />
      </div>
      {made && (
        <div className="room-target">
          <AirFigures
            figures={[
              {
                name: 'Wood for this room',
                value: `${pctWords(made.minPct)} to ${pctWords(made.maxPct)} % MC`,
              },
            ]}
          />
          <Button kind="main" disabled={endUses.output === null} onClick={() => setSaving(true)}>
            Keep it as a use
          </Button>
        </div>
      )}
      {saving && made && endUses.output && (
        <EndUseForm
          endUse={null}
          start={{ ...emptyUseDraft, minPct: made.minPct, maxPct: made.maxPct, note: made.note }}
          endUses={endUses.output}
          onClose={() => setSaving(false)}
        />
      )}
    </>
  );
}

/** A use that the room gives its range to. */
const roomUse: EndUse = { id: 'room', name: 'A room', minPct: 0, maxPct: 100, maxShellCorePct: 2, note: '' };
