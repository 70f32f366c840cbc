import { app, session } from 'electron';
import { isPagesAddress } from './pages-protocol';

/** The pages need no camera, place, notices or the like: every permission is refused, asked or checked. */
export function refusePermissions(): void {
  session.defaultSession.setPermissionRequestHandler((_contents, _permission, decide) => decide(false));
  session.defaultSession.setPermissionCheckHandler(() => false);
  session.defaultSession.setDevicePermissionHandler(() => false);
}

/** No page leads anywhere but to the pages, opens a window or embeds another page. */
export function refuseOtherPages(): void {
  app.on('web-contents-created', (_event, contents) => {
    contents.setWindowOpenHandler(() => ({ action: 'deny' }));
    contents.on('will-navigate', (event) => {
      if (!isPagesAddress(event.url)) event.preventDefault();
    });
    contents.on('will-redirect', (event) => {
      if (!isPagesAddress(event.url)) event.preventDefault();
    });
    contents.on('will-frame-navigate', (event) => {
      if (!event.isMainFrame) event.preventDefault();
    });
    contents.on('will-attach-webview', (event) => event.preventDefault());
  });
}
