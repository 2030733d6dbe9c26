import { z } from 'zod';
import type { MeterOfYard } from '../../../shared-core/contract/meter.ts';
import {
  checkEverySchema,
  expectedSchemas,
  type TestBlock,
  toleranceSchemas,
} from '../../../shared-core/contract/meter-checks.ts';
import { says } from '../../../shared-core/contract/validation.ts';
import { nameSchema } from '../../../shared-core/contract/yard.ts';
import { rightValue } from '../../../shared-core/probing/readings/meter-check.ts';
import { scaleOf } from '../../../shared-core/probing/readings/meter-profile.ts';
import { readingUnitSchema } from '../../../shared-core/wood/moisture/corrected.ts';
import { bridge } from '../../data/bridge.ts';
import { useEdit } from '../../data/useEdit.ts';
import { Choice } from '../../form/Choice.tsx';
import { NumberField, Select, TextField } from '../../form/Field.tsx';
import { FormDialog } from '../../form/FormDialog.tsx';
import { OhmsField } from '../../form/MeasureFields.tsx';
import { useDraft } from '../../form/useDraft.ts';
import { tellDone } from '../../stores/notices.ts';
import { useWords } from '../../words.ts';

/** ± half a point, as blocks are usually sold. Common practice, no source. */
const USUAL_POINTS = 0.5;
/** Of a resistor, %. Common practice, no source. */
const USUAL_OHMS_PERCENT = 1;

const fields = z.object({
  unit: readingUnitSchema,
  name: nameSchema,
  expectedPct: expectedSchemas.pct.nullable(),
  expectedOhm: expectedSchemas.ohm.nullable(),
  tolerancePoints: toleranceSchemas.pct,
  toleranceSharePct: z
    .number(says('test-block.tolerance-ohm-wrong'))
    .refine(
      (share) => toleranceSchemas.ohm.safeParse(share / 100).success,
      says('test-block.tolerance-ohm-wrong'),
    ),
  checkEvery: checkEverySchema,
});
type BlockDraft = z.infer<typeof fields>;

/** @param isOhms  the meter shows ohms */
const blockDraftSchema = (isOhms: boolean) =>
  fields
    .refine(({ unit, expectedPct }) => unit !== 'pct' || expectedPct !== null, {
      path: ['expectedPct'],
      ...says('test-block.value-pct-wrong'),
    })
    .refine(({ unit, expectedOhm }) => unit !== 'ohm' || expectedOhm !== null, {
      path: ['expectedOhm'],
      ...says('test-block.value-ohm-wrong'),
    })
    .transform(
      ({ unit, name, expectedPct, expectedOhm, tolerancePoints, toleranceSharePct, checkEvery }) => ({
        unit,
        name,
        expected: (unit === 'pct' ? expectedPct : expectedOhm) ?? Number.NaN,
        tolerance: isOhms ? toleranceSharePct / 100 : tolerancePoints,
        checkEvery,
      }),
    );

/** What a meter is checked with, what that is, and how often. */
export function BlockForm({
  meter,
  block,
  onClose,
}: {
  meter: MeterOfYard;
  /** Null for a new one. */
  block: TestBlock | null;
  onClose: () => void;
}) {
  const { say } = useWords();
  const isOhms = meter.unit === 'ohm';
  const edit = useEdit('testBlocks.edit', block);
  const draftOf = (of: TestBlock | null): BlockDraft => {
    const unit = of?.unit ?? meter.unit;
    return {
      unit,
      name: of?.name ?? say(`test-block.usual-name.${unit}`),
      expectedPct: of?.unit === 'pct' ? of.expected : null,
      expectedOhm: of?.unit === 'ohm' ? of.expected : null,
      tolerancePoints: of && !isOhms ? of.tolerance : USUAL_POINTS,
      toleranceSharePct: of && isOhms ? of.tolerance * 100 : USUAL_OHMS_PERCENT,
      checkEvery: of?.checkEvery ?? 'day',
    };
  };
  const { draft, field, set, read, refill } = useDraft(
    blockDraftSchema(isOhms),
    draftOf(block),
    edit.theirs && draftOf(edit.theirs),
  );
  const usualNames = (['pct', 'ohm'] as const).map((unit) => say(`test-block.usual-name.${unit}`));

  async function save(): Promise<void> {
    const made = read();
    if (block === null) await bridge().command('testBlocks.add', { ...made, meterId: meter.id });
    else await edit.save(made);
    tellDone(say('test-block.saved', { blockName: made.name }));
  }

  return (
    <FormDialog
      title={
        block
          ? say('test-block.title', { blockName: block.name })
          : say('test-block.title-new', { meterName: meter.name })
      }
      saveWords={say('common.save')}
      onSave={save}
      onClose={onClose}
      conflict={edit.conflict((saved) => refill(draftOf(saved)))}
    >
      {!isOhms && (
        <Choice
          label={say('test-block.kind')}
          value={draft.unit ?? 'pct'}
          options={[
            { value: 'pct', label: say('test-block.kind.pct') },
            { value: 'ohm', label: say('test-block.kind.ohm') },
          ]}
          onValue={(unit) =>
            set({
              unit,
              ...(usualNames.includes(draft.name) && { name: say(`test-block.usual-name.${unit}`) }),
            })
          }
        />
      )}
      {draft.unit === 'ohm' ? (
        <>
          <OhmsField
            label={say('test-block.ohms')}
            hint={say('test-block.ohms-hint')}
            {...field('expectedOhm')}
          />
          {!isOhms && draft.expectedOhm !== null && draft.expectedOhm > 0 && (
            <ShownOnOhms meter={meter} expected={draft.expectedOhm} />
          )}
        </>
      ) : (
        <NumberField
          label={say('test-block.value-pct')}
          unit="%"
          hint={say('test-block.value-hint')}
          {...field('expectedPct')}
        />
      )}
      {isOhms ? (
        <NumberField
          label={say('test-block.tolerance')}
          unit="%"
          hint={say('test-block.tolerance-hint')}
          {...field('toleranceSharePct')}
        />
      ) : (
        <NumberField
          label={say('test-block.tolerance')}
          unit={say('test-block.tolerance-unit')}
          hint={say(
            draft.unit === 'ohm' ? 'test-block.tolerance-resistor-hint' : 'test-block.tolerance-hint',
          )}
          {...field('tolerancePoints')}
        />
      )}
      <Select
        label={say('test-block.every')}
        {...field('checkEvery')}
        options={checkEverySchema.options.map((value) => ({
          value,
          label: say(`test-block.every.${value}`),
        }))}
      />
      <TextField label={say('test-block.name')} {...field('name')} />
    </FormDialog>
  );
}

/** What a meter in % shows on a resistor. */
function ShownOnOhms({ meter, expected }: { meter: MeterOfYard; expected: number }) {
  const { say } = useWords();
  const { name: meterName, unit, profile } = meter;
  const rightPct = rightValue({ expected, unit: 'ohm' }, { unit, scale: scaleOf(unit, profile) });
  return (
    <p role="status">
      {rightPct === null
        ? say('test-block.ohms-unknown', { meterName })
        : say('test-block.ohms-shown', { meterName, rightPct })}
    </p>
  );
}
