/** One small button that keeps what it stands beside, as one of a few kinds of files. */
import { memo, useCallback, useEffect, useRef } from 'react';
import { Button, Menu, MenuItem, MenuTrigger, Popover, Text } from 'react-aria-components';
import { useProblems } from '../state/problems';
import '../inputs/choice.css';
import './save-menu.css';

export interface WayToSave {
  id: string;
  /** "SVG". */
  label: string;
  /** What it is good for, in a few words. */
  note: string;
  /** Why it cannot be saved just now; null or absent when it can. */
  whyNot?: string | null;
  save: () => Promise<void>;
}

interface SaveMenuProps {
  /** What stands beside the button. */
  what: string;
  ways: readonly WayToSave[];
  isDisabled?: boolean;
}

/** What can be saved changes with every figure; the button does not, and is left as it is until it is opened. */
export function SaveMenu({ what, ways, isDisabled = false }: SaveMenuProps) {
  const latest = useRef(ways);
  useEffect(() => {
    latest.current = ways;
  });
  const waysNow = useCallback(() => latest.current, []);
  const isRefused = useProblems().length > 0;
  return <SaveButton what={what} waysNow={waysNow} isDisabled={isDisabled || isRefused} />;
}

interface SaveButtonProps {
  what: string;
  waysNow: () => readonly WayToSave[];
  isDisabled: boolean;
}

const SaveButton = memo(function SaveButton({ what, waysNow, isDisabled }: SaveButtonProps) {
  return (
    <MenuTrigger>
      <Button className="save-button" isDisabled={isDisabled} aria-label={`Save “${what}”`}>
        Save
        <span aria-hidden="true" className="choice-arrow" />
      </Button>
      <Popover className="choice-popover save-popover" placement="bottom end">
        <Ways waysNow={waysNow} />
      </Popover>
    </MenuTrigger>
  );
});

function Ways({ waysNow }: { waysNow: () => readonly WayToSave[] }) {
  const ways = waysNow();
  return (
    <Menu className="choice-list" disabledKeys={ways.flatMap(({ id, whyNot }) => (whyNot ? [id] : []))}>
      {ways.map(({ id, label, note, whyNot, save }) => (
        <MenuItem key={id} id={id} textValue={label} className="choice-item" onAction={() => void save()}>
          <Text slot="label">{label}</Text>
          <Text slot="description" className="choice-note">
            {whyNot ?? note}
          </Text>
        </MenuItem>
      ))}
    </Menu>
  );
}
