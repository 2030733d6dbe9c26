import type { MenuItemConstructorOptions } from 'electron';
import type { Say } from '../../shared-core/words/words.ts';

interface MenuOptions {
  say: Say;
  isMac: boolean;
  /** Development alone has the tools that look into the window. */
  isPackaged: boolean;
  openGuide(): void;
  openLog(): void;
}

/** The menu in plain words: each entry does what Electron names by its role. */
export function menuTemplate({
  say,
  isMac,
  isPackaged,
  openGuide,
  openLog,
}: MenuOptions): MenuItemConstructorOptions[] {
  const separator: MenuItemConstructorOptions = { type: 'separator' };
  return [
    ...(isMac ? [{ role: 'appMenu' } as const] : []),
    {
      label: say('shell.menu.edit'),
      submenu: [
        { role: 'undo', label: say('shell.menu.undo') },
        { role: 'redo', label: say('shell.menu.redo') },
        separator,
        { role: 'cut', label: say('shell.menu.cut') },
        { role: 'copy', label: say('shell.menu.copy') },
        { role: 'paste', label: say('shell.menu.paste') },
        { role: 'selectAll', label: say('shell.menu.select-all') },
      ],
    },
    {
      label: say('shell.menu.view'),
      submenu: [
        { role: 'reload', label: say('shell.menu.reload') },
        separator,
        { role: 'zoomIn', label: say('shell.menu.zoom-in') },
        { role: 'zoomOut', label: say('shell.menu.zoom-out') },
        { role: 'resetZoom', label: say('shell.menu.zoom-usual') },
        separator,
        { role: 'togglefullscreen', label: say('shell.menu.full-screen') },
        ...(isPackaged ? [] : [{ role: 'toggleDevTools' } as const]),
      ],
    },
    {
      label: say('shell.menu.window'),
      submenu: [
        { role: 'minimize', label: say('shell.menu.minimize') },
        isMac
          ? { role: 'close', label: say('shell.menu.close') }
          : { role: 'quit', label: say('shell.menu.quit') },
      ],
    },
    {
      label: say('shell.menu.help'),
      submenu: [
        { label: say('shell.menu.guide'), click: openGuide },
        { label: say('log.open'), click: openLog },
      ],
    },
  ];
}
