import { useState } from 'react';
import type { DisplayUnits } from '../../../shared-core/units/length.ts';
import { type Room, targetForRoom } from '../../../shared-core/wood/species/target.ts';
import { useQuery } from '../../data/useQuery.ts';
import { NumberField } from '../../form/Field.tsx';
import { Button } from '../../ui/Button.tsx';
import { useWords } from '../../words.ts';
import { EndUseForm, emptyUse } from '../species/EndUseForm.tsx';
import { AirFigures } from './AirFigures.tsx';
import { AirTempField } from './AirTempField.tsx';
import { airRh, airTempC } from './air-fields.ts';

/** From the humidity of the room where the work goes: the target for its wood, to save as a use. */
export function RoomTarget({ firstTemp, units }: { firstTemp: number; units: DisplayUnits }) {
  const { say, formats } = useWords();
  const endUses = useQuery('endUses.list', {});
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
  const target = room && targetForRoom(room);
  return (
    <>
      <p>{say('air.room-lead')}</p>
      <div className="form-grid">
        <AirTempField label={say('air.room-temperature')} temp={temp} units={units} onTemp={setTemp} />
        <NumberField
          label={say('air.lowest-humidity')}
          unit="%"
          value={driestPct}
          error={driest.ok ? null : say(driest.problem)}
          onValue={setDriestPct}
        />
        <NumberField
          label={say('air.highest-humidity')}
          unit="%"
          value={dampestPct}
          error={!dampest.ok ? say(dampest.problem) : turned ? say('air.humidity-turned') : null}
          onValue={setDampestPct}
        />
      </div>
      {target && (
        <div className="room-target">
          <AirFigures figures={[{ name: say('air.room-target'), value: formats.mcRange(target) }]} />
          <Button kind="main" disabled={endUses.output === null} onClick={() => setSaving(true)}>
            {say('air.save-as-use')}
          </Button>
        </div>
      )}
      {saving && target && endUses.output && (
        <EndUseForm
          endUse={null}
          start={{
            ...emptyUse,
            ...target,
            source: say('air.room-source', {
              roomTempC: room.tempC,
              driestRhPct: 100 * room.driestRh,
              dampestRhPct: 100 * room.dampestRh,
            }),
          }}
          endUses={endUses.output}
          onClose={() => setSaving(false)}
        />
      )}
    </>
  );
}
