import type { Session, WebContents } from 'electron';
import { isOurPage } from './pages.ts';

/** Nothing in the window needs a permission; printing and sound do not ask for one. */
export function denyPermissions(session: Session): void {
  session.setPermissionRequestHandler((_contents, _permission, answer) => answer(false));
  session.setPermissionCheckHandler(() => false);
  session.setDevicePermissionHandler(() => false);
}

/** The window stays on its own page: it goes nowhere else, opens no other window and holds no other page. */
export function closeToOutside(contents: WebContents): void {
  contents.setWindowOpenHandler(() => ({ action: 'deny' }));
  contents.on('will-attach-webview', (event) => event.preventDefault());
  contents.on('will-navigate', (event, url) => {
    if (!isOurPage(url)) event.preventDefault();
  });
  contents.on('will-redirect', (event, url) => {
    if (!isOurPage(url)) event.preventDefault();
  });
}
