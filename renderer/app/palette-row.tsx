/** One command in the list: what it does, its keys, and why it does nothing just now where that is so. */
import type { ComponentProps } from 'react';
import { ListBoxItem, Text } from 'react-aria-components';
import { IS_MAC } from '../parts/is-mac';
import { shortcutText } from '../parts/shortcut';
import type { Command } from './command';

interface PaletteRowProps {
  command: Command;
  onAct: () => void;
}

export function PaletteRow({ command: { id, label, shortcut, whyNot }, onAct }: PaletteRowProps) {
  const reason = whyNot();
  return (
    <ListBoxItem
      id={id}
      className="palette-row"
      textValue={label}
      onAction={onAct}
      // The row chosen is the one that Enter does. One that does not apply can be chosen too, to hear why.
      render={(row, { isFocused }) => (
        // biome-ignore lint/a11y/useFocusableInteractive: the focus stays in the field above.
        <div
          {...(row as ComponentProps<'div'>)}
          role="option"
          aria-selected={isFocused}
          aria-disabled={reason !== null}
        />
      )}
    >
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
