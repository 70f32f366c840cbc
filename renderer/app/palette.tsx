/** The list of everything that can be done, found by typing a few words of it. */
import { type KeyboardEvent, useEffect, useId, useRef, useState } from 'react';
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
  const listId = useId();
  const [typed, setTyped] = useState('');
  const [chosen, setChosen] = useState(0);
  const found = commandsMatching(commandsNow(), typed).filter(({ id }) => id !== 'commands');
  const optionId = (command: Command): string => `${listId} ${command.id}`.replaceAll(/\s+/g, '-');
  const current = found[chosen];

  useEffect(() => dialog.current?.showModal(), []);

  const act = (command: Command | undefined): void => {
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

  const onKeyDown = (event: KeyboardEvent): void => {
    const next = rowAfter(event.key, chosen, found.length);
    if (next !== null) setChosen(next);
    else if (event.key === 'Enter' && !event.nativeEvent.isComposing) act(current);
    else return;
    event.preventDefault();
  };

  return (
    // biome-ignore lint/a11y/useKeyWithClickEvents: Escape closes every dialog; a click beside it is the pointer's way.
    <dialog
      ref={dialog}
      className="palette"
      aria-labelledby={`${listId}-title`}
      onClose={closePalette}
      onClick={(event) => event.target === dialog.current && dialog.current.close()}
    >
      <div className="palette-sheet">
        <h2 id={`${listId}-title`}>Commands</h2>
        <div className="palette-field">
          <input
            className="palette-input"
            role="combobox"
            aria-label="Find a command"
            aria-autocomplete="list"
            aria-expanded="true"
            aria-controls={listId}
            aria-activedescendant={current && optionId(current)}
            placeholder="Type a few words of it"
            autoComplete="off"
            spellCheck={false}
            value={typed}
            onChange={(event) => {
              setTyped(event.target.value);
              setChosen(0);
            }}
            onKeyDown={onKeyDown}
          />
        </div>
        <div id={listId} className="palette-list" role="listbox" aria-label="Commands found">
          {COMMAND_GROUPS.map((group) => {
            const commands = found.filter((command) => command.group === group);
            if (commands.length === 0) return null;
            const headId = `${listId}-${group.replace(' ', '-')}`;
            return (
              // biome-ignore lint/a11y/useSemanticElements: a fieldset groups fields, not rows of a list.
              <div key={group} className="palette-group" role="group" aria-labelledby={headId}>
                <p id={headId} className="palette-group-name">
                  {group}
                </p>
                {commands.map((command) => (
                  <PaletteRow
                    key={command.id}
                    id={optionId(command)}
                    command={command}
                    isChosen={command === current}
                    onPoint={() => setChosen(found.indexOf(command))}
                    onAct={() => act(command)}
                  />
                ))}
              </div>
            );
          })}
        </div>
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

const PAGE_ROWS = 8;

/** The row that a key leads to from row `from` of `count`; null for a key that leads nowhere. Past either end the list goes round. */
function rowAfter(key: string, from: number, count: number): number | null {
  if (count === 0) return null;
  switch (key) {
    case 'ArrowDown':
      return (from + 1) % count;
    case 'ArrowUp':
      return (from + count - 1) % count;
    case 'PageDown':
      return Math.min(from + PAGE_ROWS, count - 1);
    case 'PageUp':
      return Math.max(from - PAGE_ROWS, 0);
    default:
      return null;
  }
}
