import { type ReactNode, useContext, useState } from 'react';
import {
  ComboBox,
  ComboBoxStateContext,
  FieldError,
  Input,
  Label,
  ListBox,
  ListBoxItem,
  Popover,
  Text,
} from 'react-aria-components';
import menu from '../ui/menu.module.css';
import { afterPress } from './after-press.ts';

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
  /** The one that the text can only mean. */
  meant: ComboboxItem | null;
  /** Says that there is none, and which ones there are where the text may mean several. */
  none: string;
  which: string;
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
  meant,
  none,
  which,
  onText,
  onChoose,
  onBlur,
}: ComboboxProps) {
  const [wasLeft, setWasLeft] = useState(false);
  const isOpen = text.trim() !== '' && chosenId === null && meant === null && items !== null;
  const isNone = isOpen && items.length === 0;
  const problem = isNone ? none : isOpen && (wasLeft || error) ? which : error;
  return (
    <ComboBox
      className="field"
      items={items ?? []}
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
      {hint && (
        <Text slot="description" className="soft">
          {hint}
        </Text>
      )}
      <FieldError className="field-error">{problem}</FieldError>
      <Popover className="popover">
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
