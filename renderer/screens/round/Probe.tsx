import { useEffect, useRef, useState } from 'react';
import type { RoundState } from '../../../shared-core/contract/round.ts';
import { planSpots } from '../../../shared-core/probing/readings/spots.ts';
import { longLengthText, shortLengthText } from '../../../shared-core/units/length.ts';
import { temperatureText } from '../../../shared-core/units/temperature.ts';
import { Banner } from '../../parts/Banner.tsx';
import { Button } from '../../parts/Button.tsx';
import { parseDecimal } from '../../parts/decimal.ts';
import { ScreenHeading } from '../../parts/Screen.tsx';
import { useMeter } from '../../stores/meter.ts';
import { aimAt, excludeLast, probedOf, saveTyped, takeNow, useRound } from '../../stores/round.ts';
import { useUnits } from '../../stores/settings.ts';
import { useWords } from '../../words.ts';
import { BoardCall } from './BoardCall.tsx';
import { BoardStrip } from './BoardStrip.tsx';
import { FinishDialog } from './FinishDialog.tsx';
import { GoToBoardDialog } from './GoToBoardDialog.tsx';
import { KeysDialog } from './KeysDialog.tsx';
import { LivePanel } from './LivePanel.tsx';
import { nextStep } from './next-step.ts';
import { actionOf, type RoundAction } from './round-keys.ts';
import { SavedWords } from './SavedWords.tsx';
import { SpotList } from './SpotList.tsx';
import { TemperatureDialog } from './TemperatureDialog.tsx';
import { TypedPanel } from './TypedPanel.tsx';
import { useSavedSound } from './useSavedSound.ts';

type Open = 'go-to-board' | 'temperature' | 'keys' | 'finish' | null;

/** Probing: this board, this spot, this value; then the next. Everything can be done from the keyboard. */
export function Probe({ round }: { round: RoundState }) {
  const units = useUnits();
  const { say } = useWords();
  const trouble = useRound((store) => store.trouble);
  const meterIsLive = useMeter((meter) => meter.state?.phase === 'live');
  /** The value typed so far; null while the meter's values are taken. */
  const [typed, setTyped] = useState<string | null>(null);
  const [open, setOpen] = useState<Open>(null);
  const region = useRef<HTMLDivElement>(null);
  const field = useRef<HTMLInputElement>(null);
  useSavedSound();

  const typing = typed ?? (meterIsLive ? null : '');
  const { boardIndex, spotIndex } = round.aim;
  const board = round.boards[boardIndex];
  const probed = probedOf(round);
  const lastIndex = round.boards.length - 1;
  const fieldIsEmpty = typing === null || typing.trim() === '';
  const isBoardDone = spotIndex === null && fieldIsEmpty;

  function act(action: Exclude<RoundAction, 'start-typing'>): void {
    switch (action) {
      case 'take':
        void takeNow();
        break;
      case 'save-typed':
        saveTypedValue();
        break;
      case 'exclude-last':
        void excludeLast();
        break;
      case 'next-board':
        if (boardIndex < lastIndex) void aimAt(boardIndex + 1, null);
        else setOpen('finish');
        break;
      case 'previous-board':
        if (boardIndex > 0) void aimAt(boardIndex - 1, null);
        break;
      case 'first-board':
        void aimAt(0, null);
        break;
      case 'last-board':
        void aimAt(lastIndex, null);
        break;
      case 'go-to-board':
        setOpen('go-to-board');
        break;
      case 'spot-up':
      case 'spot-down':
        chooseSpot(action === 'spot-up' ? -1 : 1);
        break;
      case 'stop-typing':
        setTyped(null);
        break;
      case 'temperature':
        setOpen('temperature');
        break;
      case 'help':
        setOpen('keys');
        break;
    }
  }

  function saveTypedValue(): void {
    const raw = parseDecimal(typing ?? '');
    if (raw === null || Number.isNaN(raw)) {
      useRound.setState({
        trouble: `“${typing?.trim()}” is not a number, so nothing was kept. Type the value as the meter shows it, like 12.4.`,
      });
      return;
    }
    setTyped(null);
    void saveTyped(raw);
  }

  function chooseSpot(by: -1 | 1): void {
    if (!board) return;
    const spots = planSpots(board).plan.length;
    const from = spotIndex ?? (by === 1 ? -1 : spots);
    void aimAt(boardIndex, Math.min(Math.max(from + by, 0), spots - 1));
  }

  // Keys work wherever the focus is, so that a glove on the table does not stop the round.
  useEffect(() => {
    if (open !== null) return;
    const onKey = (event: KeyboardEvent) => {
      const target = event.target as HTMLElement;
      const onControl = target.closest('button, a, select, textarea, input') && target !== field.current;
      if (onControl && (event.key === 'Enter' || event.key === ' ')) return;
      const action = actionOf(event, typing);
      if (action === null) return;
      if (action === 'start-typing') setTyped(event.key);
      else act(action);
      event.preventDefault();
    };
    addEventListener('keydown', onKey);
    return () => removeEventListener('keydown', onKey);
  });

  // A press by mouse or finger, or a closed dialog, gives the keys back to the round.
  useEffect(() => {
    if (open !== null) return;
    const giveKeysBack = () => (field.current ?? region.current)?.focus();
    const onClick = (event: MouseEvent) => {
      const isPress = event.detail > 0 && !(event.target as HTMLElement).closest('dialog');
      if (isPress) queueMicrotask(giveKeysBack);
    };
    const element = region.current;
    giveKeysBack();
    element?.addEventListener('click', onClick);
    return () => element?.removeEventListener('click', onClick);
  }, [open]);

  if (!board) return null;
  return (
    <div className="probe" ref={region} tabIndex={-1}>
      <header className="probe-head">
        <p className="probe-where">
          {round.stackName} · board {boardIndex + 1} of {round.boards.length} · {say(round.summary.message)}
        </p>
        <div className="probe-board">
          <ScreenHeading title={`${board.code}, round on ${round.stackName}`}>
            <span className="spoken-only">Board </span>
            <span className="probe-code">{board.code}</span>
          </ScreenHeading>
          <p>
            {board.speciesName}
            <br />
            {shortLengthText(board.thicknessMm, units)}
            {board.lengthMm !== null && `, ${longLengthText(board.lengthMm, units)} long`}
          </p>
        </div>
        <p className="probe-next">{nextStep(board, spotIndex, boardIndex === lastIndex, units)}</p>
      </header>

      <section className="probe-value" aria-label="Value">
        {typing === null ? (
          <LivePanel boardId={board.boardId} />
        ) : (
          <TypedPanel
            value={typing}
            fieldRef={field}
            onValue={setTyped}
            onUseMeter={meterIsLive ? () => setTyped(null) : null}
          />
        )}
        {trouble ? <Banner kind="problem">{trouble}</Banner> : <SavedWords />}
      </section>

      <div className="probe-actions">
        <div className="probe-main-actions">
          {typing === null ? (
            <Button kind={isBoardDone ? 'plain' : 'main'} shortcut="Space" onClick={() => act('take')}>
              Take now
            </Button>
          ) : (
            <Button
              kind={fieldIsEmpty ? 'plain' : 'main'}
              shortcut={fieldIsEmpty ? undefined : 'Enter'}
              disabled={fieldIsEmpty}
              onClick={() => act('save-typed')}
            >
              Keep
            </Button>
          )}
          <Button shortcut="⌫" onClick={() => act('exclude-last')}>
            Set last aside
          </Button>
          <Button
            kind={isBoardDone ? 'main' : 'plain'}
            shortcut={fieldIsEmpty ? 'Enter' : 'Page ↓'}
            onClick={() => act('next-board')}
          >
            {boardIndex === lastIndex ? 'Finish' : 'Next board'}
          </Button>
        </div>
        <div className="probe-more-actions">
          <Button kind="quiet" shortcut="←" disabled={boardIndex === 0} onClick={() => act('previous-board')}>
            Previous
          </Button>
          <Button kind="quiet" shortcut="G" onClick={() => act('go-to-board')}>
            Go to …
          </Button>
          <Button kind="quiet" shortcut="T" onClick={() => act('temperature')}>
            {board.woodTempC === null
              ? 'Wood temperature unknown'
              : `Wood ${temperatureText(board.woodTempC, units)}${board.ownTemp ? ', this board' : ''}`}
          </Button>
          <Button kind="quiet" shortcut="?" onClick={() => act('help')}>
            Keys
          </Button>
          {typing === null && (
            <Button kind="quiet" className="type-button" shortcut="0–9" onClick={() => setTyped('')}>
              Type a value
            </Button>
          )}
          <Button kind="quiet" onClick={() => setOpen('finish')}>
            Finish round
          </Button>
        </div>
      </div>

      <div className="probe-side">
        <BoardCall board={board} reasons={probed?.assessment?.reasons} endUseName={round.endUseName} />
        <SpotList
          board={board}
          readings={probed && (probed.assessment?.readings ?? [])}
          spotIndex={spotIndex}
          onAim={(index) => void aimAt(boardIndex, index)}
        />
      </div>

      <BoardStrip
        boards={round.boards}
        boardIndex={boardIndex}
        onChoose={(index) => void aimAt(index, null)}
      />

      {open === 'go-to-board' && (
        <GoToBoardDialog
          boards={round.boards}
          stackName={round.stackName}
          onChoose={(index) => void aimAt(index, null)}
          onClose={() => setOpen(null)}
        />
      )}
      {open === 'temperature' && <TemperatureDialog board={board} onClose={() => setOpen(null)} />}
      {open === 'keys' && <KeysDialog onClose={() => setOpen(null)} />}
      {open === 'finish' && <FinishDialog round={round} onClose={() => setOpen(null)} />}
    </div>
  );
}
