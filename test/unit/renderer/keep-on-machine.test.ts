import { afterEach, expect, test } from 'vitest';
import { keepViewOnMachine, keptView } from '../../../renderer/state/keep-on-machine';
import { STATE_TABLE } from '../../../renderer/state/state-table';
import { useView } from '../../../renderer/state/view-store';

function memory(entries: Record<string, string> = {}): Storage {
  const kept = new Map(Object.entries(entries));
  return {
    get length() {
      return kept.size;
    },
    clear: () => kept.clear(),
    getItem: (key) => kept.get(key) ?? null,
    key: (place) => [...kept.keys()][place] ?? null,
    removeItem: (key) => void kept.delete(key),
    setItem: (key, value) => void kept.set(key, value),
  };
}

afterEach(() => useView.setState(useView.getInitialState()));

test('what is kept on this machine comes back, and nothing else is written there', () => {
  const storage = memory();
  keepViewOnMachine(storage);
  useView.setState({ theme: 'dark', page: 'piece', switchedOff: ['Fixed stop'] });
  const text = storage.getItem('ringtrue.view');
  expect(keptView(text)).toEqual({ theme: 'dark', inchFractions: false, paper: 'a4' });
  const machineKeys = Object.entries(STATE_TABLE).filter(([, { kept }]) => kept === 'machine');
  expect(Object.keys(JSON.parse(text ?? ''))).toEqual(machineKeys.map(([key]) => key));
});

test('left-over settings of another kind are passed over one by one', () => {
  expect(keptView('{"theme":"sepia","paper":"a3","inchFractions":true,"page":"piece"}')).toEqual({
    inchFractions: true,
  });
  expect(keptView('not JSON')).toEqual({});
  expect(keptView('null')).toEqual({});
  expect(keptView(null)).toEqual({});
});

test('a machine that keeps nothing does not stop the program', () => {
  const refuse = (): never => {
    throw new Error('storage is switched off');
  };
  const storage = { ...memory(), getItem: refuse, setItem: refuse };
  expect(() => keepViewOnMachine(storage)).not.toThrow();
  useView.setState({ theme: 'light' });
  expect(useView.getState().theme).toBe('light');
});

test('only the project is saved in the file, and only it can be undone', () => {
  const inFile = Object.entries(STATE_TABLE).filter(([, { kept }]) => kept === 'file');
  const undoable = Object.entries(STATE_TABLE).filter(([, state]) => state.undoable);
  expect(inFile.map(([key]) => key)).toEqual(['project']);
  expect(undoable.map(([key]) => key)).toEqual(['project']);
});
