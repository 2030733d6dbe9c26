import { useState } from 'react';
import { z } from 'zod';
import { targetForRoom } from '../../../shared-core/wood/species/target.ts';
import { NumberField } from '../../form/Field.tsx';
import { TempField } from '../../form/MeasureFields.tsx';
import { useDraft } from '../../form/useDraft.ts';
import { Button } from '../../ui/Button.tsx';
import { useWords } from '../../words.ts';
import { EndUseForm, emptyUse } from '../species/EndUseForm.tsx';
import { AirFigures } from './AirFigures.tsx';
import css from './air.module.css';
import { airTempSchema, humidityPctSchema, USUAL_C } from './air-fields.ts';

const roomSchema = z.object({
  tempC: airTempSchema,
  driestPct: humidityPctSchema,
  dampestPct: humidityPctSchema,
});

/** From the humidity of the room where the work goes: the target for its wood, to save as a use. */
export function RoomTarget() {
  const { say, formats } = useWords();
  const { made: room, field } = useDraft(roomSchema, { tempC: USUAL_C, driestPct: 30, dampestPct: 50 });
  const [saving, setSaving] = useState(false);
  const isTurned = room !== undefined && room.driestPct > room.dampestPct;
  const target =
    room === undefined || isTurned
      ? null
      : targetForRoom({
          tempC: room.tempC,
          driestRh: room.driestPct / 100,
          dampestRh: room.dampestPct / 100,
        });
  return (
    <>
      <p>{say('air.room-lead')}</p>
      <div className="form-grid">
        <TempField label={say('air.room-temperature')} {...field('tempC')} />
        <NumberField label={say('air.lowest-humidity')} unit="%" {...field('driestPct')} />
        <NumberField
          label={say('air.highest-humidity')}
          unit="%"
          {...field('dampestPct')}
          {...(isTurned && { error: say('air.humidity-turned') })}
        />
      </div>
      {room && target && (
        <div className={css.room}>
          <AirFigures of={[[say('air.room-target'), formats.mcRange(target)]]} />
          <Button kind="main" onClick={() => setSaving(true)}>
            {say('air.save-as-use')}
          </Button>
        </div>
      )}
      {saving && room && target && (
        <EndUseForm
          endUse={null}
          start={{
            ...emptyUse,
            ...target,
            source: say('air.room-source', {
              roomTempC: room.tempC,
              driestRhPct: room.driestPct,
              dampestRhPct: room.dampestPct,
            }),
          }}
          onClose={() => setSaving(false)}
        />
      )}
    </>
  );
}
