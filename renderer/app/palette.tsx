/** The list of everything that can be done, found by typing a few words of it. */
import { useEffect, useId, useRef, useState } from 'react';
import { Autocomplete, Header, Input, ListBox, ListBoxSection, TextField } from 'react-aria-components';
import { announce } from '../state/view-store';
import { COMMAND_GROUPS, type Command, commandsMatching } from './command';
import './palette.css';
import { PaletteRow } from './palette-row';
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
  const titleId = useId();
  const [typed, setTyped] = useState('');
  const found = commandsMatching(commandsNow(), typed).filter(({ id }) => id !== 'commands');

  useEffect(() => dialog.current?.showModal(), []);

  const act = (command: Command): void => {
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
      aria-labelledby={titleId}
      onClose={closePalette}
      onClick={(event) => event.target === dialog.current && dialog.current.close()}
    >
      <div className="palette-sheet">
        <h2 id={titleId}>Commands</h2>
        <Autocomplete inputValue={typed} onInputChange={setTyped} disableAutoFocusFirst>
          <TextField className="palette-field" aria-label="Find a command">
            <Input
              className="palette-input"
              role="combobox"
              aria-expanded="true"
              placeholder="Type a few words of it"
            />
          </TextField>
          {/* Made anew for other words, so that its first row is chosen whatever was typed, pasted or taken away. */}
          <ListBox
            key={typed}
            className="palette-list"
            aria-label="Commands found"
            autoFocus="first"
            shouldFocusWrap
            shouldFocusOnHover
          >
            {COMMAND_GROUPS.map((group) => {
              const commands = found.filter((command) => command.group === group);
              if (commands.length === 0) return null;
              return (
                <ListBoxSection key={group} id={group} className="palette-group">
                  <Header className="palette-group-name">{group}</Header>
                  {commands.map((command) => (
                    <PaletteRow key={command.id} command={command} onAct={() => act(command)} />
                  ))}
                </ListBoxSection>
              );
            })}
          </ListBox>
        </Autocomplete>
        {found.length === 0 && <p className="palette-none">No command has all of these words. Try fewer.</p>}
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
