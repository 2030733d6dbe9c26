import type { Session, WebContents } from 'electron';
import { isOurPage } from './pages.ts';

/**
 * The window may use the camera, which it does only while a person has it scan a label, and keep the screen on during a
 * round. It needs nothing else: no microphone either, and printing and sound do not ask.
 */
export function denyPermissions(session: Session): void {
  session.setPermissionRequestHandler((contents, permission, answer, details) => {
    const kinds = 'mediaTypes' in details ? (details.mediaTypes ?? []) : [];
    const isCameraAlone =
      permission === 'media' && kinds.length > 0 && kinds.every((kind) => kind === 'video');
    answer((isCameraAlone || permission === 'screen-wake-lock') && isOurPage(contents.getURL()));
  });
  session.setPermissionCheckHandler((_contents, permission, origin, { mediaType }) => {
    // An origin may come without the path of its page.
    const isNeeded = (permission === 'media' && mediaType === 'video') || permission === 'screen-wake-lock';
    return isNeeded && isOurPage(`${origin.replace(/\/$/, '')}/`);
  });
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
