import { useState } from 'react';
import { useQuery } from '../../data/useQuery.ts';
import { go, hrefOf } from '../../stores/navigation.ts';
import { useYard } from '../../stores/yard.ts';
import { Actions, Button } from '../../ui/Button.tsx';
import { Sheet } from '../../ui/Screen.tsx';
import { useWords } from '../../words.ts';
import { StackField } from '../stacks/StackField.tsx';
import { typedCells } from './page-draft.ts';
import { draftKey, readDraft } from './usePageDraft.ts';

/** The pages of a notebook: to type one, and those that are typed and not saved yet. */
export function NotebookPages() {
  const { say } = useWords();
  const yard = useYard(({ info }) => info?.uuid ?? null);
  const stacks = useQuery('stacks.list', {});
  const [stackId, setStackId] = useState<number | null>(null);
  const [isAsked, setAsked] = useState(false);
  const typed = (stacks.output ?? []).flatMap(({ id, name }) => {
    const draft = readDraft(draftKey(yard, id));
    const readings = typedCells(draft);
    return readings === 0 ? [] : [{ id, name, readings, day: draft.day }];
  });
  return (
    <Sheet title={say('notebook.title')}>
      <p>{say('notebook.lead')}</p>
      <StackField
        label={say('notebook.stack')}
        value={stackId}
        error={isAsked && stackId === null ? say('notebook.stack-missing') : null}
        onValue={setStackId}
      />
      <Actions>
        <Button
          onClick={() => {
            setAsked(true);
            if (stackId !== null) go({ name: 'past-round', stackId });
          }}
        >
          {say('notebook.type')}
        </Button>
      </Actions>
      {typed.length > 0 && (
        <>
          <h3>{say('notebook.not-saved')}</h3>
          <ul>
            {typed.map(({ id, name, readings, day }) => (
              <li key={id}>
                <a href={hrefOf({ name: 'past-round', stackId: id })}>
                  {day === null
                    ? say('notebook.page', { stackName: name, readings })
                    : say('notebook.page-of', { stackName: name, readings, startedOn: day })}
                </a>
              </li>
            ))}
          </ul>
        </>
      )}
    </Sheet>
  );
}
