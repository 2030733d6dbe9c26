import { type ReactNode, useContext, useState } from 'react';
import {
  ComboBox,
  ComboBoxStateContext,
  Input,
  Label,
  ListBox,
  ListBoxItem,
  Popover,
} from 'react-aria-components';
import { message } from '../../shared-core/words/message.ts';
import menu from '../ui/menu.module.css';
import { useWords } from '../words.ts';
import { afterPress } from './after-press.ts';
import { BelowField } from './BelowField.tsx';

/** As many as a sentence names. */
const MOST_NAMED = 3;
/** As many as a person takes in at a glance. */
const MOST_AT_A_GLANCE = 8;
/** More are slow to draw; all are shown where the note says what to choose by. */
const MOST_SHOWN = 24;

/** What can be chosen. */
export interface ComboboxItem {
  id: string;
  name: string;
  /** More about it, in small. */
  detail?: string;
}

export interface ComboboxProps {
  label: ReactNode;
  hint?: ReactNode;
  error?: string | null;
  text: string;
  chosenId: string | null;
  /** What the text may mean, best first; null while that is not known yet. */
  items: readonly ComboboxItem[] | null;
  /** How many more match. */
  more?: number;
  /** Those of them that the text can only mean. */
  meant: readonly ComboboxItem[];
  /** Says that there is none, and what to choose by where that is not the text. */
  none: string;
  note?: string | null;
  /** Clears what was chosen. */
  onText: (text: string) => void;
  onChoose: (item: ComboboxItem) => void;
  onBlur?: () => void;
}

/**
 * Chooses one of many by typing. Arrow keys and Enter or a click take one; Enter or leaving takes the one that the text
 * can only mean. A text that means none or several chooses nothing: it stays, and the field says so once it was left.
 */
export function Combobox({
  label,
  hint,
  error,
  text,
  chosenId,
  items,
  more = 0,
  meant: candidates,
  none,
  note,
  onText,
  onChoose,
  onBlur,
}: ComboboxProps) {
  const { say } = useWords();
  const [wasLeft, setWasLeft] = useState(false);
  const meant = (candidates.length === 1 && candidates[0]) || null;
  const isOpen = text.trim() !== '' && chosenId === null && meant === null && items !== null;
  const isNone = isOpen && items.length === 0;
  const found = (items?.length ?? 0) + more;
  const names = (candidates.length > 0 ? candidates : (items ?? [])).map(({ name }) => name);
  const others = (candidates.length || found) - MOST_NAMED;
  const which = say('combobox.which', {
    typedText: text.trim(),
    nameChoices: [
      ...names.slice(0, MOST_NAMED),
      ...(others > 0 ? [message('combobox.others', { others })] : []),
    ],
  });
  const problem = isNone ? none : isOpen && (wasLeft || error) ? (note ?? which) : error;
  return (
    <ComboBox
      className="field"
      items={(note ? items : items?.slice(0, MOST_SHOWN)) ?? []}
      inputValue={text}
      onInputChange={(typed) => typed !== text && onText(typed)}
      selectedKey={chosenId}
      onSelectionChange={(id) => {
        const item = items?.find((each) => each.id === id);
        if (item) onChoose(item);
      }}
      onBlur={() => {
        afterPress(() => setWasLeft(true));
        if (meant && chosenId === null) onChoose(meant);
        onBlur?.();
      }}
      menuTrigger="input"
      allowsCustomValue
      allowsEmptyCollection
      isInvalid={Boolean(problem)}
    >
      <Label>{label}</Label>
      <ChoosingInput meant={chosenId === null ? meant : null} first={items?.[0]} />
      <BelowField hint={hint} problem={problem} />
      <Popover className="popover">
        {found > 0 && (note || found > MOST_AT_A_GLANCE) && (
          <p className={menu.empty}>{note ?? say('combobox.many', { found })}</p>
        )}
        <ListBox<ComboboxItem> renderEmptyState={() => items && <p className={menu.empty}>{none}</p>}>
          {(item) => (
            <ListBoxItem textValue={item.name} className={menu.item!}>
              <span translate="no">
                {item.name}
                {item.detail && <small> {item.detail}</small>}
              </span>
            </ListBoxItem>
          )}
        </ListBox>
      </Popover>
    </ComboBox>
  );
}

/** Enter takes what is meant where the arrow keys are on none; where nothing is, it goes to the first, to be seen. */
function ChoosingInput({ meant, first }: { meant: ComboboxItem | null; first: ComboboxItem | undefined }) {
  const list = useContext(ComboBoxStateContext);
  return (
    <Input
      onFocus={({ target }) => target.select()}
      onKeyDownCapture={(event) => {
        const next = meant ?? first;
        if (event.key !== 'Enter' || !list?.isOpen || list.selectionManager.focusedKey !== null || !next)
          return;
        list.selectionManager.setFocusedKey(next.id);
        if (!meant) {
          event.preventDefault();
          event.stopPropagation();
        }
      }}
    />
  );
}
