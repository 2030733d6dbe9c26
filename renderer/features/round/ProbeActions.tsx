import { useQuery } from '../../data/useQuery.ts';
import { Button } from '../../ui/Button.tsx';
import { useWords } from '../../words.ts';
import css from './Probe.module.css';
import type { RoundAction } from './round-keys.ts';
import type { Probing } from './useProbing.ts';

/** All that a hand does in a round, in one corner: what comes next in large, the rest under it. */
export function ProbeActions({
  board,
  typing,
  fieldIsEmpty,
  spotIndex,
  boardIndex,
  isLast,
  meterIsLive,
  can,
  savesFor,
  isFar,
  act,
}: Probing) {
  const { say } = useWords();
  const isBoardDone = spotIndex === null && fieldIsEmpty;
  const probe = useQuery('sensors.probe', {}).output ?? null;
  function temperatureWords(): string {
    const { woodTempC, ownTemp } = board;
    if (probe !== null && !ownTemp)
      return say('round.wood-temp-probe', { woodTempC: probe.tempC, sensorName: probe.name });
    if (woodTempC === null) return say('round.wood-temp-unknown');
    return say(ownTemp ? 'round.wood-temp-own' : 'round.wood-temp', { woodTempC });
  }
  const more: [RoundAction, words: string, shortcut?: string][] = [
    ['previous-board', say('round.back'), '←'],
    ['go-to-board', say('round.go-to'), 'G'],
    ['temperature', temperatureWords(), 'T'],
    ['note', say('round.note'), '*'],
    ['far-view', say('round.far-view'), 'F'],
    ['help', say('round.keys'), '?'],
  ];
  if (meterIsLive && typing === null) more.push(['start-typing', say('round.type')]);
  if (!isLast) more.push(['finish', say('round.finish')]);
  // All keys work from far away as well.
  if (isFar) more.splice(0, more.length, ['far-view', say('round.near-view'), 'F']);
  const isTyped = typing !== null && !fieldIsEmpty;
  return (
    <div className={css.actions}>
      <div className={css.mainActions}>
        {typing === null ? (
          <Button
            kind={isBoardDone ? 'plain' : 'main'}
            shortcut={say('key.space')}
            disabled={!can('take')}
            onClick={() => act('take')}
          >
            {say('round.save-now')}
          </Button>
        ) : (
          <Button
            kind={isTyped ? 'main' : 'plain'}
            shortcut={isTyped ? say('key.enter') : undefined}
            disabled={!isTyped || !can('save-typed')}
            onClick={() => act('save-typed')}
          >
            {savesFor ? say('round.save-for', { boardCode: savesFor }) : say('common.save')}
          </Button>
        )}
        <Button shortcut="⌫" disabled={!can('undo-last')} onClick={() => act('undo-last')}>
          {say('round.undo-last')}
        </Button>
        <Button
          kind={isBoardDone ? 'main' : 'plain'}
          shortcut={say(fieldIsEmpty ? 'key.enter' : 'key.page-down')}
          disabled={!can('next-board')}
          onClick={() => act(fieldIsEmpty ? 'leave-board' : 'next-board')}
        >
          {say(isLast ? 'round.finish' : 'round.next-board')}
        </Button>
      </div>
      <div className={css.moreActions}>
        {more.map(([action, words, shortcut]) => (
          <Button
            key={action}
            kind="quiet"
            shortcut={shortcut}
            disabled={!can(action) || (action === 'previous-board' && boardIndex === 0)}
            onClick={() => act(action)}
          >
            {words}
          </Button>
        ))}
      </div>
    </div>
  );
}
