/** One small button that keeps what it stands beside, as one of a few kinds of files. */
import { Button, Menu, MenuItem, MenuTrigger, Popover, Text } from 'react-aria-components';
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

export function SaveMenu({ what, ways, isDisabled = false }: SaveMenuProps) {
  return (
    <MenuTrigger>
      <Button className="save-button" isDisabled={isDisabled} aria-label={`Save “${what}”`}>
        Save
        <span aria-hidden="true" className="choice-arrow" />
      </Button>
      <Popover className="choice-popover save-popover" placement="bottom end">
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
      </Popover>
    </MenuTrigger>
  );
}
