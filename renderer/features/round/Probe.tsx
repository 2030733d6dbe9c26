import { useRef } from 'react';
import type { RoundBoard, RoundState } from '../../../shared-core/contract/round.ts';
import { useWords } from '../../words.ts';
import { OffMeterAfar } from '../meter-check/OffMeterAfar.tsx';
import { QuestionableMeter } from '../meter-check/QuestionableMeter.tsx';
import { BoardCall } from './BoardCall.tsx';
import { BoardStrip } from './BoardStrip.tsx';
import { CoreDialog } from './CoreDialog.tsx';
import { FinishDialog } from './FinishDialog.tsx';
import { GoToBoardDialog } from './GoToBoardDialog.tsx';
import { KeysDialog } from './KeyList.tsx';
import { MeterDialog } from './MeterDialog.tsx';
import css from './Probe.module.css';
import { ProbeActions } from './ProbeActions.tsx';
import { ProbeHead } from './ProbeHead.tsx';
import { RoundNoteDialog } from './RoundNoteDialog.tsx';
import { SpotDrawing } from './SpotDrawing.tsx';
import { SpotList } from './SpotList.tsx';
import { TemperatureDialog } from './TemperatureDialog.tsx';
import { useKeysHome } from './useKeysHome.ts';
import { useProbing } from './useProbing.ts';
import { useRoundKeys } from './useRoundKeys.ts';
import { useRoundSignals } from './useRoundSignals.ts';
import { ValuePanel } from './ValuePanel.tsx';

const dialogs = {
  'go-to-board': GoToBoardDialog,
  temperature: TemperatureDialog,
  core: CoreDialog,
  note: RoundNoteDialog,
  meter: MeterDialog,
  keys: KeysDialog,
  finish: FinishDialog,
};

/** Probing: this board, this spot, this reading; then the next. All of it can be done from the keyboard. */
export function Probe({ round, board }: { round: RoundState; board: RoundBoard }) {
  const { say } = useWords();
  const region = useRef<HTMLElement>(null);
  const field = useRef<HTMLInputElement>(null);
  const probing = useProbing(round, board, field);
  useRoundKeys(probing);
  useKeysHome(region, field);
  useRoundSignals(probing);
  const Asking = probing.dialog && dialogs[probing.dialog];
  return (
    <section
      data-far={probing.isFar || undefined}
      className={probing.isFar ? `${css.probe} ${css.far}` : css.probe}
      ref={region}
      tabIndex={-1}
      aria-label={say('round.title')}
    >
      <ProbeHead {...probing} />
      <ValuePanel {...probing} />
      <ProbeActions {...probing} />
      {probing.isFar ? (
        <div className={css.drawing}>
          <OffMeterAfar {...probing} />
          <SpotDrawing {...probing} />
        </div>
      ) : (
        <>
          <div className={css.side}>
            <QuestionableMeter roundId={round.id} hasOffer={false} />
            <BoardCall {...probing} />
            <SpotList {...probing} />
          </div>
          <BoardStrip {...probing} />
        </>
      )}
      {/* A board may come by itself. */}
      <p className="spoken-only" aria-live="polite">
        {say('round.now-on', { boardCode: board.code })}
      </p>
      {Asking && <Asking {...probing} />}
    </section>
  );
}
