import { useCallback, useEffect, useRef, useState } from 'react';
import { firstOpenSpot, type RoundState } from '../../../shared-core/contract/round.ts';
import { openSpot } from '../../../shared-core/probing/readings/open-spot.ts';
import { planSpots } from '../../../shared-core/probing/readings/spots.ts';
import { thicknessOf } from '../../../shared-core/words/message.ts';
import { parseDecimal } from '../../form/decimal.ts';
import { isLiveHere, useMeter } from '../../stores/meter.ts';
import {
  aimAt,
  probedOf,
  replaceByLive,
  replaceByTyped,
  saveLive,
  saveTyped,
  undoLast,
  useRound,
} from '../../stores/round.ts';
import { Banner } from '../../ui/Banner.tsx';
import { Button } from '../../ui/Button.tsx';
import { rawText } from '../../ui/McValue.tsx';
import { ScreenHeading } from '../../ui/Screen.tsx';
import { useWords } from '../../words.ts';
import { BoardCall } from './BoardCall.tsx';
import { BoardStrip } from './BoardStrip.tsx';
import { FinishDialog } from './FinishDialog.tsx';
import { GoToBoardDialog } from './GoToBoardDialog.tsx';
import { KeysDialog } from './KeysDialog.tsx';
import { LivePanel } from './LivePanel.tsx';
import { nextStep } from './next-step.ts';
import { ReplaceBanner } from './ReplaceBanner.tsx';
import { actionOf, type RoundAction } from './round-keys.ts';
import { SavedNote } from './SavedNote.tsx';
import { SpotList } from './SpotList.tsx';
import { TemperatureDialog } from './TemperatureDialog.tsx';
import { TypedPanel } from './TypedPanel.tsx';
import { useDraft } from './useDraft.ts';
import { useSavedSound } from './useSavedSound.ts';

type Open = 'go-to-board' | 'temperature' | 'keys' | 'finish' | null;

/** Probing: this board, this spot, this reading; then the next. All of it can be done from the keyboard. */
export function Probe({ round }: { round: RoundState }) {
  const { say, formats } = useWords();
  const trouble = useRound((store) => store.trouble);
  const offersReplacing = useRound((store) => store.offersReplacing);
  const meterIsLive = useMeter(isLiveHere);
  const insertion = useMeter((meter) => meter.insertion);
  const [open, setOpen] = useState<Open>(null);
  const region = useRef<HTMLDivElement>(null);
  const field = useRef<HTMLInputElement>(null);
  useSavedSound();

  const probed = probedOf(round);
  const { draft, filledBy, ...drafting } = useDraft(round.aim, probed);
  /** The reading typed so far; null while the meter's are saved. */
  const typing = draft?.text ?? (meterIsLive ? null : '');
  const spotIndex = round.aim?.spotIndex ?? null;
  const boardIndex = round.boards.findIndex(({ boardId }) => boardId === round.aim?.boardId);
  const board = round.boards[boardIndex];
  /** The board of the reading that these pins were saved as, where the person asked to save them again. */
  const savedBoard = offersReplacing && round.boards.find(({ boardId }) => boardId === insertion?.boardId);
  const lastIndex = round.boards.length - 1;
  const fieldIsEmpty = typing === null || typing.trim() === '';
  const isBoardDone = spotIndex === null && fieldIsEmpty;

  function act(action: Exclude<RoundAction, 'start-typing'>): void {
    switch (action) {
      case 'take':
        void saveLive();
        break;
      case 'save-typed':
        saveTypedValue();
        break;
      case 'exclude-last':
        void undoLast();
        break;
      case 'next-board':
        if (boardIndex < lastIndex) goTo(boardIndex + 1, null);
        else setOpen('finish');
        break;
      case 'previous-board':
        if (boardIndex > 0) goTo(boardIndex - 1, null);
        break;
      case 'first-board':
        goTo(0, null);
        break;
      case 'last-board':
        goTo(lastIndex, null);
        break;
      case 'replace':
        replace();
        break;
      case 'save-at-next':
        saveAtNext();
        break;
      case 'go-to-board':
        setOpen('go-to-board');
        break;
      case 'spot-up':
      case 'spot-down':
        chooseSpot(action === 'spot-up' ? -1 : 1);
        break;
      case 'stop-typing':
        drafting.stop();
        break;
      case 'temperature':
        setOpen('temperature');
        break;
      case 'help':
        setOpen('keys');
        break;
    }
  }

  function goTo(index: number, spot: number | null): void {
    const to = round.boards[index];
    if (!to) return;
    drafting.moveTo({ boardId: to.boardId, spotIndex: spot ?? firstOpenSpot(to) });
    void aimAt(to.boardId, spot);
  }

  /** The number typed; null for what is none, which the round then says. */
  function typedNumber(): number | null {
    const raw = parseDecimal(typing ?? '');
    if (raw !== null && !Number.isNaN(raw)) return raw;
    useRound.setState({ trouble: say('round.not-a-number', { typedText: typing?.trim() ?? '' }) });
    return null;
  }

  function saveTypedValue(): void {
    const raw = typedNumber();
    // Where the spot was filled meanwhile, the person says what is meant.
    if (raw === null || draft === null || filledBy !== null) return;
    drafting.stop();
    void saveTyped(raw, draft);
  }

  function replace(): void {
    if (filledBy !== null) {
      const raw = typedNumber();
      if (raw === null) return;
      drafting.stop();
      void replaceByTyped(raw, filledBy);
    } else if (savedBoard && insertion) void replaceByLive(insertion);
    giveKeysBack();
  }

  /** The next spot of the board that has no reading; null where all have one. */
  const nextSpot =
    filledBy !== null && board && probed
      ? openSpot(
          planSpots(board).plan.length,
          probed.assessment?.readings ?? [],
          (filledBy.spotIndex ?? 0) + 1,
        )
      : null;

  function saveAtNext(): void {
    const raw = nextSpot === null || !board ? null : typedNumber();
    if (raw === null || !board) return;
    drafting.stop();
    void saveTyped(raw, { boardId: board.boardId, spotIndex: nextSpot });
    giveKeysBack();
  }

  function chooseSpot(by: -1 | 1): void {
    if (!board) return;
    const spots = planSpots(board).plan.length;
    const from = spotIndex ?? (by === 1 ? -1 : spots);
    goTo(boardIndex, Math.min(Math.max(from + by, 0), spots - 1));
  }

  // Keys work wherever the focus is, so that a glove on the table does not stop the round.
  useEffect(() => {
    if (open !== null) return;
    const onKey = (event: KeyboardEvent) => {
      const target = event.target as HTMLElement;
      const onControl = target.closest('button, a, select, textarea, input') && target !== field.current;
      if (onControl && (event.key === 'Enter' || event.key === ' ')) return;
      const action = actionOf(event, typing);
      // A digit belongs in the field, also when a button was the last thing pressed.
      if (action === null && typing !== null && /^[0-9]$/.test(event.key)) field.current?.focus();
      if (action === null) return;
      if (action === 'start-typing') drafting.type(event.key);
      else act(action);
      event.preventDefault();
    };
    addEventListener('keydown', onKey);
    return () => removeEventListener('keydown', onKey);
  });

  const giveKeysBack = useCallback(() => (field.current ?? region.current)?.focus(), []);

  // A press by mouse or finger, or a closed dialog, gives the keys back to the round.
  useEffect(() => {
    if (open !== null) return;
    const onClick = (event: MouseEvent) => {
      const isPress = event.detail > 0 && !(event.target as HTMLElement).closest('dialog');
      if (isPress) queueMicrotask(giveKeysBack);
    };
    const element = region.current;
    giveKeysBack();
    element?.addEventListener('click', onClick);
    return () => element?.removeEventListener('click', onClick);
  }, [open, giveKeysBack]);

  if (!board) return null;
  const thickness = thicknessOf(board);
  return (
    <div className="probe" ref={region} tabIndex={-1}>
      <header className="probe-head">
        <p className="probe-where">
          {say('round.progress', {
            stackName: round.stackName,
            board: boardIndex + 1,
            boards: round.boards.length,
            summary: round.summary.message,
          })}
        </p>
        <div className="probe-board">
          <ScreenHeading
            title={say('round.window-title', { boardCode: board.code, stackName: round.stackName })}
          >
            <span className="spoken-only">{say('round.board')} </span>
            <span className="probe-code" translate="no">
              {board.code}
            </span>
          </ScreenHeading>
          <p>
            <span translate="no">{board.speciesName}</span>
            <br />
            {board.lengthMm === null
              ? formats.thickness(thickness)
              : say('round.size-and-length', { thickness, lengthMm: board.lengthMm })}
          </p>
        </div>
        <p className="probe-next">{say(nextStep(board, spotIndex, boardIndex === lastIndex))}</p>
      </header>

      <section className="probe-value" aria-label={say('round.reading')}>
        {typing === null ? (
          <LivePanel boardId={board.boardId} />
        ) : (
          <TypedPanel
            value={typing}
            fieldRef={field}
            onValue={drafting.type}
            onUseMeter={meterIsLive ? drafting.stop : null}
          />
        )}
        {filledBy !== null && (
          <ReplaceBanner onReplace={replace} onSaveAtNext={nextSpot === null ? null : saveAtNext}>
            {say('round.filled-meanwhile', { shownValue: rawText(filledBy.raw, filledBy.unit, formats) })}
          </ReplaceBanner>
        )}
        {savedBoard && (
          <ReplaceBanner onReplace={replace}>
            {say('round.pins-saved', { boardCode: savedBoard.code })}
          </ReplaceBanner>
        )}
        {trouble ? <Banner kind="problem">{trouble}</Banner> : <SavedNote />}
      </section>

      <div className="probe-actions">
        <div className="probe-main-actions">
          {typing === null ? (
            <Button
              kind={isBoardDone ? 'plain' : 'main'}
              shortcut={say('key.space')}
              onClick={() => act('take')}
            >
              {say('round.save-now')}
            </Button>
          ) : (
            <Button
              kind={fieldIsEmpty ? 'plain' : 'main'}
              shortcut={fieldIsEmpty ? undefined : say('key.enter')}
              disabled={fieldIsEmpty}
              onClick={() => act('save-typed')}
            >
              {say('common.save')}
            </Button>
          )}
          <Button shortcut="⌫" onClick={() => act('exclude-last')}>
            {say('round.undo-last')}
          </Button>
          <Button
            kind={isBoardDone ? 'main' : 'plain'}
            shortcut={say(fieldIsEmpty ? 'key.enter' : 'key.page-down')}
            onClick={() => act('next-board')}
          >
            {say(boardIndex === lastIndex ? 'round.finish' : 'round.next-board')}
          </Button>
        </div>
        <div className="probe-more-actions">
          <Button kind="quiet" shortcut="←" disabled={boardIndex === 0} onClick={() => act('previous-board')}>
            {say('round.previous-board')}
          </Button>
          <Button kind="quiet" shortcut="G" onClick={() => act('go-to-board')}>
            {say('round.go-to')}
          </Button>
          <Button kind="quiet" shortcut="T" onClick={() => act('temperature')}>
            {board.woodTempC === null
              ? say('round.wood-temp-unknown')
              : say(board.ownTemp ? 'round.wood-temp-own' : 'round.wood-temp', {
                  woodTempC: board.woodTempC,
                })}
          </Button>
          <Button kind="quiet" shortcut="?" onClick={() => act('help')}>
            {say('round.keys')}
          </Button>
          {typing === null && (
            <Button
              kind="quiet"
              className="type-button"
              shortcut={say('key.digits')}
              onClick={() => drafting.type('')}
            >
              {say('round.type')}
            </Button>
          )}
          <Button kind="quiet" onClick={() => setOpen('finish')}>
            {say('round.finish-round')}
          </Button>
        </div>
      </div>

      <div className="probe-side">
        <BoardCall board={board} reasons={probed?.assessment?.reasons} endUseName={round.endUseName} />
        <SpotList
          board={board}
          readings={probed && (probed.assessment?.readings ?? [])}
          spotIndex={spotIndex}
          onAim={(index) => goTo(boardIndex, index)}
        />
      </div>

      <BoardStrip boards={round.boards} boardIndex={boardIndex} onChoose={(index) => goTo(index, null)} />

      {open === 'go-to-board' && (
        <GoToBoardDialog
          boards={round.boards}
          stackName={round.stackName}
          onChoose={(index) => goTo(index, null)}
          onClose={() => setOpen(null)}
        />
      )}
      {open === 'temperature' && <TemperatureDialog board={board} onClose={() => setOpen(null)} />}
      {open === 'keys' && <KeysDialog onClose={() => setOpen(null)} />}
      {open === 'finish' && <FinishDialog round={round} onClose={() => setOpen(null)} />}
    </div>
  );
}
