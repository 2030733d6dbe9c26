import type { ReactNode } from 'react';
import { Button, MenuItem, MenuTrigger, Menu as OpenMenu, Popover } from 'react-aria-components';
import { type ButtonKind, buttonLook } from './Button.tsx';
import styles from './menu.module.css';

/** What else can be done, behind one button. */
export function Menu({
  title,
  label,
  kind = 'plain',
  items,
}: {
  title: ReactNode;
  /** Its spoken name, where several on a screen have the same title. */
  label?: string;
  kind?: ButtonKind;
  items: readonly { id: string; title: ReactNode; onPress: () => void }[];
}) {
  return (
    <MenuTrigger>
      <Button className={buttonLook(kind)} {...(label && { 'aria-label': label })}>
        {title}
        <span aria-hidden="true">▾</span>
      </Button>
      <Popover className="popover">
        <OpenMenu>
          {items.map(({ id, title, onPress }) => (
            <MenuItem key={id} id={id} onAction={onPress} className={styles.item!}>
              {title}
            </MenuItem>
          ))}
        </OpenMenu>
      </Popover>
    </MenuTrigger>
  );
}
