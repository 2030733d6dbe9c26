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

/** What can be chosen. */
export interface ComboboxItem {
  id: string;
  name: string;
  /** More about it, in small. */
  detail?: string;
}

/**
 * Chooses one of many by typing: arrow keys and Enter, or a click; Enter alone takes the first that was found. A text
 * that is nobody's name chooses nothing and stays, with `none` below it.
 */
export function Combobox({
  label,
  hint,
  error,
  none,
  chosen,
  find,
  onChoose,
  autoFocus,
}: {
  label: ReactNode;
  hint?: ReactNode;
  error?: string | null;
  /** Says that nothing has the typed name. */
  none: string;
  chosen: ComboboxItem | null;
  /** The best first. */
  find: (text: string) => readonly ComboboxItem[];
  onChoose: (item: ComboboxItem | null) => void;
  autoFocus?: boolean;
}) {
  /** What was typed since something was chosen; null where nothing was. */
  const [typed, setTyped] = useState<string | null>(null);
  const found = find(typed ?? '');
  const problem = typed && found.length === 0 ? none : error;

  function choose(item: ComboboxItem | null): void {
    setTyped(null);
    onChoose(item);
  }

  function type(text: string): void {
    if (text === (typed ?? chosen?.name ?? '')) return;
    setTyped(text);
    if (chosen) onChoose(null);
  }

  return (
    <ComboBox
      className="field"
      items={found}
      inputValue={typed ?? chosen?.name ?? ''}
      onInputChange={type}
      selectedKey={chosen?.id ?? null}
      onSelectionChange={(id) => {
        const item = found.find((each) => each.id === id);
        if (item) choose(item);
      }}
      menuTrigger="input"
      allowsCustomValue
      allowsEmptyCollection
      isInvalid={Boolean(problem)}
    >
      <Label>{label}</Label>
      <ChoosingInput typed={typed} found={found} autoFocus={autoFocus} />
      {hint && (
        <Text slot="description" className="field-hint">
          {hint}
        </Text>
      )}
      <FieldError className="field-error">{problem}</FieldError>
      <Popover className={menu.popover!}>
        <ListBox<ComboboxItem> items={found} renderEmptyState={() => <p className={menu.empty}>{none}</p>}>
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

/** Enter takes the first that was found where the arrow keys are on none, and leaving takes one whose name was typed. */
function ChoosingInput({
  typed,
  found,
  autoFocus,
}: {
  typed: string | null;
  found: readonly ComboboxItem[];
  autoFocus: boolean | undefined;
}) {
  const state = useContext(ComboBoxStateContext);
  return (
    <Input
      autoFocus={autoFocus}
      onFocus={(event) => event.target.select()}
      onKeyDownCapture={({ key }) => {
        const first = found[0];
        if (key === 'Enter' && typed && first && state?.selectionManager.focusedKey == null) {
          state?.selectionManager.setFocusedKey(first.id);
        }
      }}
      onBlur={() => {
        const named = found.find(({ name }) => name.toLowerCase() === typed?.trim().toLowerCase());
        if (named) state?.setValue(named.id);
      }}
    />
  );
}
