import { Menu, type MenuItemConstructorOptions } from 'electron';
import type { MenuCommand } from '../contract/host';

/** What the window does of itself, under the head it belongs to, after the pages' commands of that head. */
const OWN_ITEMS: Readonly<Record<string, readonly MenuItemConstructorOptions[]>> = {
  File: [{ role: 'close' }, { role: 'quit' }],
  Edit: [{ role: 'cut' }, { role: 'copy' }, { role: 'paste' }, { role: 'selectAll' }],
  View: [{ role: 'resetZoom' }, { role: 'zoomIn' }, { role: 'zoomOut' }, { role: 'togglefullscreen' }],
  Help: [{ role: 'about' }],
};

/**
 * Builds the menu of the pages' commands, in the order they came. Their keys are shown but not taken: the pages hear them,
 * and so they do the same whether or not a menu is there.
 *
 * @param choose called with the id of the command that was chosen
 */
export function setMenu(commands: readonly MenuCommand[], choose: (id: string) => void): void {
  const heads = [...new Set([...commands.map(({ group }) => group), ...Object.keys(OWN_ITEMS)])];
  const template: MenuItemConstructorOptions[] = [
    ...(process.platform === 'darwin' ? [{ role: 'appMenu' } as const] : []),
    ...heads.map((head) => ({ label: head, submenu: itemsUnder(head, commands, choose) })),
  ];
  Menu.setApplicationMenu(Menu.buildFromTemplate(template));
}

function itemsUnder(
  head: string,
  commands: readonly MenuCommand[],
  choose: (id: string) => void,
): MenuItemConstructorOptions[] {
  const items = commands
    .filter(({ group }) => group === head)
    .map(
      ({ id, label, shortcut, applies }): MenuItemConstructorOptions => ({
        id,
        // A single ampersand would underline the letter after it.
        label: label.replaceAll('&', '&&'),
        enabled: applies,
        click: () => choose(id),
        ...(shortcut !== null && { accelerator: shortcut, registerAccelerator: false }),
      }),
    );
  const own = OWN_ITEMS[head] ?? [];
  return items.length > 0 && own.length > 0 ? [...items, { type: 'separator' }, ...own] : [...items, ...own];
}
