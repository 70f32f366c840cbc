/** The list of everything that can be done, found by typing a few words of it. */
import { useEffect, useRef, useState } from 'react';
import {
  Autocomplete,
  Collection,
  Header,
  Input,
  ListBox,
  ListBoxItem,
  ListBoxSection,
  Text,
  TextField,
} from 'react-aria-components';
import { announce } from '../state/view-store';
import { COMMAND_GROUPS, type Command, commandsMatching, shortcutText } from './command';
import { IS_MAC } from './is-mac';
import './palette.css';
import { closePalette, usePalette } from './palette-store';

interface PaletteProps {
  commandsNow: () => readonly Command[];
}

export function Palette({ commandsNow }: PaletteProps) {
  const isOpen = usePalette((state) => state.isOpen);
  return isOpen ? <PaletteDialog commandsNow={commandsNow} /> : null;
}

function PaletteDialog({ commandsNow }: PaletteProps) {
  const dialog = useRef<HTMLDialogElement>(null);
  const [typed, setTyped] = useState('');
  const found = commandsMatching(commandsNow(), typed).filter(({ id }) => id !== 'commands');
  useEffect(() => dialog.current?.showModal(), []);
  const act = (id: string): void => {
    const command = found.find((one) => one.id === id);
    if (!command) return;
    const whyNot = command.whyNot();
    if (whyNot !== null) {
      announce(`Not done. ${whyNot}`);
      return;
    }
    // Gives the focus back first, so that the command finds the window as it was.
    dialog.current?.close();
    void command.run();
    if (document.activeElement === document.body) document.getElementById('page')?.focus();
  };
  return (
    // biome-ignore lint/a11y/useKeyWithClickEvents: Escape closes every dialog; a click beside it is the pointer's way.
    <dialog
      ref={dialog}
      className="palette"
      aria-labelledby="palette-title"
      onClose={closePalette}
      onClick={(event) => event.target === dialog.current && dialog.current.close()}
    >
      <div className="palette-sheet">
        <h2 id="palette-title">Commands</h2>
        <Autocomplete inputValue={typed} onInputChange={setTyped}>
          <TextField aria-label="Find a command" className="palette-field" autoFocus>
            <Input
              className="palette-input"
              placeholder="Type a few words of it"
              autoComplete="off"
              spellCheck={false}
            />
          </TextField>
          <ListBox
            className="palette-list"
            aria-label="Commands found"
            items={groupsOf(found)}
            onAction={(key) => act(String(key))}
            renderEmptyState={() => <p className="palette-none">No command has all of these words. Try fewer.</p>}
          >
            {({ id, commands }) => (
              <ListBoxSection id={id} className="palette-group">
                <Header className="palette-group-name">{id}</Header>
                <Collection items={commands}>{(command) => <Row command={command} />}</Collection>
              </ListBoxSection>
            )}
          </ListBox>
        </Autocomplete>
        <p className="palette-keys" aria-hidden="true">
          <span>↑ ↓ choose</span>
          <span>Enter does it</span>
          <span>Esc closes</span>
        </p>
        <p role="status" className="spoken">
          {typed === '' ? '' : `${found.length} found.`}
        </p>
      </div>
    </dialog>
  );
}

function groupsOf(found: readonly Command[]): { id: string; commands: readonly Command[] }[] {
  return COMMAND_GROUPS.map((id) => ({ id, commands: found.filter(({ group }) => group === id) })).filter(
    ({ commands }) => commands.length > 0,
  );
}

function Row({ command: { id, label, shortcut, whyNot } }: { command: Command }) {
  const reason = whyNot();
  return (
    <ListBoxItem id={id} textValue={label} className="palette-row" data-idle={reason !== null || undefined}>
      <Text slot="label" className="palette-label">
        {label}
      </Text>
      {shortcut && <kbd className="shortcut">{shortcutText(shortcut, IS_MAC)}</kbd>}
      {reason !== null && (
        <Text slot="description" className="palette-reason">
          {reason}
        </Text>
      )}
    </ListBoxItem>
  );
}
