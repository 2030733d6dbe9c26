import { woodTempAnswerSchema } from '../../shared-core/contract/round.ts';
import { FROZEN_FROM_PCT } from '../../shared-core/wood/moisture/fiber-saturation.ts';
import { Banner } from '../ui/Banner.tsx';
import { useWords } from '../words.ts';
import { Checkbox } from './Field.tsx';
import { TempField } from './MeasureFields.tsx';
import { useDraft } from './useDraft.ts';

/** How much colder or warmer wood shifts a reading by about half a point: 10 °F, from memory. */
const HALF_POINT_K = 5.6;

/** What is answered about the wood's temperature; `read()` gives it in °C, null where it is not known. */
export const useWoodTemp = (start: { woodTempC: number | null; unknown: boolean }) =>
  useDraft(woodTempAnswerSchema, start);

/** Asks for the temperature of the wood itself, and says what it costs not to know it. */
export function TemperatureField({
  answer: { draft, set, field },
  autoFocus = false,
}: {
  answer: ReturnType<typeof useWoodTemp>;
  autoFocus?: boolean;
}) {
  const { say } = useWords();
  const temp = field('woodTempC');
  return (
    <div className="column">
      <TempField
        label={say('wood-temp.label')}
        hint={say('wood-temp.hint')}
        disabled={draft.unknown ?? false}
        autoFocus={autoFocus}
        {...temp}
        // Left empty, as to check the meter first, it is asked for once it is needed.
        onBlur={() => draft.woodTempC !== null && temp.onBlur()}
      />
      <Checkbox
        label={say('wood-temp.unknown')}
        checked={draft.unknown ?? false}
        onChecked={(unknown) => set({ unknown, woodTempC: null })}
      />
      {draft.unknown && (
        <Banner kind="caution">
          {say('wood-temp.unknown-effect', { warmerStepK: HALF_POINT_K, shiftPoints: 0.5 })}
        </Banner>
      )}
      {draft.woodTempC !== null && draft.woodTempC <= 0 && (
        <Banner kind="caution">{say('wood-temp.frozen', { frozenLimitPct: FROZEN_FROM_PCT })}</Banner>
      )}
    </div>
  );
}
