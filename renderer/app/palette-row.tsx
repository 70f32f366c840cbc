/** One command in the list: what it does, its keys, and why it does nothing just now where that is so. */
import { useEffect, useRef } from 'react';
import { IS_MAC } from '../parts/is-mac';
import { shortcutText } from '../parts/shortcut';
import type { Command } from './command';

interface PaletteRowProps {
  id: string;
  command: Command;
  isChosen: boolean;
  onPoint: () => void;
  onAct: () => void;
}

export function PaletteRow({ id, command: { label, shortcut, whyNot }, isChosen, onPoint, onAct }: PaletteRowProps) {
  const row = useRef<HTMLDivElement>(null);
  const reason = whyNot();
  useEffect(() => {
    if (isChosen) row.current?.scrollIntoView({ block: 'nearest' });
  }, [isChosen]);
  return (
    // biome-ignore lint/a11y/useFocusableInteractive: the focus stays in the field above.
    // biome-ignore lint/a11y/useKeyWithClickEvents: the field above hears the keys.
    <div
      ref={row}
      id={id}
      role="option"
      className="palette-row"
      aria-selected={isChosen}
      aria-disabled={reason !== null}
      aria-labelledby={`${id}-label`}
      aria-describedby={reason === null ? undefined : `${id}-reason`}
      onPointerMove={isChosen ? undefined : onPoint}
      onClick={onAct}
    >
      <span id={`${id}-label`} className="palette-label">
        {label}
      </span>
      {shortcut && <kbd className="shortcut">{shortcutText(shortcut, IS_MAC)}</kbd>}
      {reason !== null && (
        <span id={`${id}-reason`} className="palette-reason">
          {reason}
        </span>
      )}
    </div>
  );
}
