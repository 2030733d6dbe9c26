import type { ReactNode } from 'react';
import { Button, MenuItem, MenuTrigger, Menu as OpenMenu, Popover } from 'react-aria-components';
import { buttonLook } from './Button.tsx';
import styles from './menu.module.css';

/** What else can be done, behind one button. */
export function Menu({
  title,
  label,
  items,
}: {
  title: ReactNode;
  /** Its spoken name, where several on a screen have the same title. */
  label?: string;
  items: readonly { id: string; title: ReactNode; onPress: () => void }[];
}) {
  return (
    <MenuTrigger>
      <Button className={buttonLook('plain')} {...(label && { 'aria-label': label })}>
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
