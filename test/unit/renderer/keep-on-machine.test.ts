import { afterEach, expect, test } from 'vitest';
import { keepViewOnMachine, keptView } from '../../../renderer/state/keep-on-machine';
import { STATE_TABLE } from '../../../renderer/state/state-table';
import { useView } from '../../../renderer/state/view-store';

afterEach(() => useView.setState(useView.getInitialState()));

test('what is kept on this machine comes back, and nothing else is written there', () => {
  let text: string | null = null;
  keepViewOnMachine('{"orientation":"put away"}', (kept) => {
    text = kept;
  });
  useView.setState({ theme: 'dark', page: 'piece', switchedOff: ['Fixed stop'] });
  expect(keptView(text)).toEqual({
    theme: 'dark',
    orientation: 'put away',
    inchFractions: false,
    angleStyle: 'decimal',
    paper: 'a4',
  });
  const machineKeys = Object.entries(STATE_TABLE).filter(([, { kept }]) => kept === 'machine');
  expect(Object.keys(JSON.parse(text ?? ''))).toEqual(machineKeys.map(([key]) => key));
});

test('left-over settings of another kind are passed over one by one', () => {
  const text = '{"theme":"sepia","paper":"a3","inchFractions":true,"angleStyle":"radians","page":"piece"}';
  expect(keptView(text)).toEqual({ inchFractions: true });
  expect(keptView('{"angleStyle":"minutes"}')).toEqual({ angleStyle: 'minutes' });
  expect(keptView('not JSON')).toEqual({});
  expect(keptView('null')).toEqual({});
  expect(keptView(null)).toEqual({});
});

test('at the first start on a machine the first steps are shown', () => {
  keepViewOnMachine(null, () => {});
  expect(useView.getState().orientation).toBe('shown');
});

test('only the project is saved in the file, and only it can be undone', () => {
  const inFile = Object.entries(STATE_TABLE).filter(([, { kept }]) => kept === 'file');
  const undoable = Object.entries(STATE_TABLE).filter(([, state]) => state.undoable);
  expect(inFile.map(([key]) => key)).toEqual(['project']);
  expect(undoable.map(([key]) => key)).toEqual(['project']);
});
