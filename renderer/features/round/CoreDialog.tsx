import { useState } from 'react';
import { type CoreWay, pinLengthMm } from '../../../shared-core/probing/readings/plan-basis.ts';
import { howTo, plannedDepthMm, planSpots } from '../../../shared-core/probing/readings/spots.ts';
import { Choice } from '../../form/Choice.tsx';
import { Checkbox } from '../../form/Field.tsx';
import { FormDialog } from '../../form/FormDialog.tsx';
import { planCore } from '../../stores/round-plan.ts';
import { useWords } from '../../words.ts';
import type { Probing } from './useProbing.ts';

const ways = ['skip', 'fresh-cut', 'fresh-rip', 'long-pins'] as const;
/** Firewood is split, and not sawn along. */
const waysOfFirewood = ['skip', 'fresh-split', 'fresh-cut', 'long-pins'] as const;

/** How the core is read that the pins do not reach; or not at all. */
export function CoreDialog({ round, board, onClose }: Probing) {
  const { say } = useWords();
  const { faces, core, pins } = board.planBasis;
  const [way, setWay] = useState<CoreWay | 'skip'>(core ?? round.usualCoreWay ?? 'fresh-cut');
  const [forRound, setForRound] = useState(false);
  const offered = round.usualCoreWay === 'fresh-split' ? waysOfFirewood : ways;
  const chosen = way === 'skip' ? null : way;
  const { plan } = planSpots({ ...board, planBasis: { ...board.planBasis, core: chosen } });
  const how = plan.map(howTo).find((each) => each !== null);
  const isUnreached = faces === 'shell';
  const isAssumed = pins?.lengthMm == null;
  const pinsMm = pinLengthMm(pins);
  return (
    <FormDialog
      title={say('core.title', { boardCode: board.code })}
      saveWords={say('common.save')}
      onSave={async () => void planCore(board.boardId, chosen, forRound)}
      onClose={onClose}
    >
      <p>
        {isUnreached
          ? say(isAssumed ? 'core.out-of-reach-assumed' : 'core.out-of-reach', {
              pinsMm,
              coreDepthMm: plannedDepthMm('core', board.thicknessMm),
            })
          : isAssumed
            ? say('core.average-only-assumed', { pinsMm })
            : say('core.average-only')}
      </p>
      <Choice
        label={say('core.way')}
        value={way}
        options={offered.map((value) => ({ value, label: say(`core.${value}`) }))}
        onValue={setWay}
      />
      <p className="soft" aria-live="polite">
        {how ? say(how) : say('core.skip-effect')}
      </p>
      {isUnreached && (
        <Checkbox
          label={say('core.for-round')}
          hint={say('core.for-round-hint')}
          checked={forRound}
          onChecked={setForRound}
        />
      )}
    </FormDialog>
  );
}
