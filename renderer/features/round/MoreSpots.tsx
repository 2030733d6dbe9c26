import { extraSpots } from '../../../shared-core/probing/readings/spots.ts';
import { message } from '../../../shared-core/words/message.ts';
import { Button } from '../../ui/Button.tsx';
import { useWords } from '../../words.ts';
import css from './SpotList.module.css';
import type { Probing } from './useProbing.ts';

/** What can be read beyond the plan: the core that the pins do not tell, and more readings at any depth. */
export function MoreSpots({ board, goTo, act, can }: Probing) {
  const { say } = useWords();
  const { faces, core } = board.planBasis;
  return (
    <div className={css.more}>
      {faces !== 'pairs' && (
        <div className={css.moreLine}>
          <small>
            {core === null ? say('core.skip-effect') : say('spots.core-by', { way: message(`core.${core}`) })}
          </small>
          <Button kind="quiet" shortcut="C" disabled={!can('core')} onClick={() => act('core')}>
            {say(core === null ? 'spots.read-core' : 'spots.change-core')}
          </Button>
        </div>
      )}
      <div className={css.moreLine}>
        <small>{say('spots.one-more')}</small>
        {extraSpots(board).map(([index, { spot }]) => (
          <Button key={index} kind="quiet" disabled={!can('spot-down')} onClick={() => goTo(board, index)}>
            {say('spots.one-more-depth', { depth: spot.depth })}
          </Button>
        ))}
      </div>
    </div>
  );
}
