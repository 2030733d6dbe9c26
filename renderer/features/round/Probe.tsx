import { useRef } from 'react';
import type { RoundState } from '../../../shared-core/contract/round.ts';
import { useWords } from '../../words.ts';
import { BoardCall } from './BoardCall.tsx';
import { BoardStrip } from './BoardStrip.tsx';
import { FinishDialog } from './FinishDialog.tsx';
import { GoToBoardDialog } from './GoToBoardDialog.tsx';
import { KeysDialog } from './KeysDialog.tsx';
import css from './Probe.module.css';
import { ProbeActions } from './ProbeActions.tsx';
import { ProbeHead } from './ProbeHead.tsx';
import { SpotList } from './SpotList.tsx';
import { TemperatureDialog } from './TemperatureDialog.tsx';
import { useKeysHome } from './useKeysHome.ts';
import { useProbing } from './useProbing.ts';
import { useRoundKeys } from './useRoundKeys.ts';
import { useSavedSound } from './useSavedSound.ts';
import { ValuePanel } from './ValuePanel.tsx';

/** Probing: this board, this spot, this reading; then the next. All of it can be done from the keyboard. */
export function Probe({ round }: { round: RoundState }) {
  const { say } = useWords();
  const region = useRef<HTMLElement>(null);
  const field = useRef<HTMLInputElement>(null);
  const probing = useProbing(round, field);
  useRoundKeys(field, probing);
  useKeysHome(region, field);
  useSavedSound();

  const { board, boardIndex, probed, spotIndex, pinsAt, dialog, goTo, closeDialog } = probing;
  if (!board) return null;
  return (
    <section className={css.probe} ref={region} tabIndex={-1} aria-label={say('round.title')}>
      <ProbeHead round={round} board={board} probing={probing} />
      <ValuePanel board={board} fieldRef={field} probing={probing} />
      <ProbeActions board={board} probing={probing} />
      <div className={css.side}>
        <BoardCall board={board} reasons={probed?.assessment?.reasons} endUseName={round.endUseName} />
        <SpotList
          board={board}
          probed={probed}
          spotIndex={spotIndex}
          pinsAt={pinsAt}
          onAim={(index) => goTo(boardIndex, index)}
        />
      </div>
      <BoardStrip boards={round.boards} boardIndex={boardIndex} onChoose={(index) => goTo(index, null)} />

      {dialog === 'go-to-board' && (
        <GoToBoardDialog
          round={round}
          onChoose={(chosen) => goTo(round.boards.indexOf(chosen), null)}
          onClose={closeDialog}
        />
      )}
      {dialog === 'temperature' && <TemperatureDialog board={board} onClose={closeDialog} />}
      {dialog === 'keys' && <KeysDialog onClose={closeDialog} />}
      {dialog === 'finish' && <FinishDialog round={round} onClose={closeDialog} />}
    </section>
  );
}
