import type { Session, WebContents } from 'electron';
import { isOwnUrl } from './app-scheme.ts';

/**
 * The program needs nothing of what a page may ask for, so every permission is denied, asked or merely looked up: camera, location,
 * notifications, devices and all that may come. Files enter by drop and file input, which need none.
 */
export function denyPermissions(session: Session): void {
  session.setPermissionRequestHandler((_contents, _permission, decide) => decide(false));
  session.setPermissionCheckHandler(() => false);
  session.setDevicePermissionHandler(() => false);
  session.on('will-download', (event, item) => {
    // The printed sheet is saved from memory; nothing is ever fetched.
    if (!item.getURL().startsWith('blob:') || !isOwnUrl(item.getURL().slice('blob:'.length))) event.preventDefault();
  });
}

/** Keeps a window where it is: no other page, no other window, no embedded one. */
export function refuseNavigation(contents: WebContents): void {
  const stay = (event: { preventDefault(): void }) => event.preventDefault();
  contents.on('will-navigate', stay);
  contents.on('will-frame-navigate', stay);
  contents.on('will-redirect', stay);
  contents.on('will-attach-webview', stay);
  contents.setWindowOpenHandler(() => ({ action: 'deny' }));
}
