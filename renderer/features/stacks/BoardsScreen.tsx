import { boardFilterSchema } from '../../../shared-core/contract/yard.ts';
import { hrefOf } from '../../stores/navigation.ts';
import { ButtonLink } from '../../ui/Button.tsx';
import { EmptyState, Screen } from '../../ui/Screen.tsx';
import { useWords } from '../../words.ts';
import { BoardList } from './BoardList.tsx';

/** All boards of the yard, whatever stack they are in. */
export function BoardsScreen() {
  const { say } = useWords();
  return (
    <Screen
      title={say('stacks.all-boards')}
      lead={say('stacks.all-boards-lead')}
      actions={
        <>
          <ButtonLink href={hrefOf({ name: 'tally', stackId: null })}>{say('tally.open')}</ButtonLink>
          <ButtonLink href={hrefOf({ name: 'check' })}>{say('report.check-link')}</ButtonLink>
        </>
      }
    >
      <BoardList
        stackId={null}
        counts={Object.fromEntries(['all', ...boardFilterSchema.options].map((each) => [each, null]))}
        whenEmpty={() => (
          <EmptyState sentence={say('stacks.boards-in-stacks-only')}>
            <ButtonLink kind="main" href={hrefOf({ name: 'stacks' })}>
              {say('stacks.go-to-stacks')}
            </ButtonLink>
          </EmptyState>
        )}
      />
    </Screen>
  );
}
