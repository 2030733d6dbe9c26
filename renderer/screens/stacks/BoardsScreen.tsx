import { ButtonLink } from '../../parts/Button.tsx';
import { EmptyState, Screen } from '../../parts/Screen.tsx';
import { hrefOf } from '../../stores/navigation.ts';
import { BoardList } from './BoardList.tsx';
import './stacks.css';

/** All boards of the yard, whatever stack they are in. */
export function BoardsScreen() {
  return (
    <Screen title="All boards" lead="Every board of the yard; search by ID, wood or log.">
      <BoardList
        stackId={null}
        whenEmpty={
          <EmptyState sentence="No boards yet. Boards are added to a stack.">
            <ButtonLink kind="main" href={hrefOf({ name: 'stacks' })}>
              Go to the stacks
            </ButtonLink>
          </EmptyState>
        }
      />
    </Screen>
  );
}
