// @vitest-environment happy-dom
/** A part that breaks says so in its place, and takes nothing else with it. */
import { cleanup, fireEvent, render, screen } from '@testing-library/react';
import { afterEach, expect, test, vi } from 'vitest';
import { ChartFrame } from '../../../renderer/charts/chart-frame';
import { FailureBoundary } from '../../../renderer/parts/failure-boundary';
import { HostContext } from '../../../renderer/parts/host-context';
import { memoryHost } from '../../support/memory-host';

afterEach(() => {
  cleanup();
  vi.restoreAllMocks();
});

let isBroken = true;

function Fragile() {
  if (isBroken) throw new Error('no such joint');
  return <p>drawn</p>;
}

function quietly(): void {
  vi.spyOn(console, 'error').mockImplementation(() => {});
}

test('what stands beside a broken part stays, and the part is drawn again on request', () => {
  quietly();
  isBroken = true;
  render(
    <>
      <FailureBoundary what="chart of the joints">
        <Fragile />
      </FailureBoundary>
      <p>beside it</p>
    </>,
  );
  expect(screen.getByRole('alert').textContent).toContain('The chart of the joints could not be drawn: no such joint.');
  expect(screen.getByText('beside it')).toBeTruthy();
  fireEvent.click(screen.getByRole('button', { name: 'Draw again' }));
  expect(screen.getByRole('alert')).toBeTruthy();
  isBroken = false;
  fireEvent.click(screen.getByRole('button', { name: 'Draw again' }));
  expect(screen.getByText('drawn')).toBeTruthy();
  expect(screen.queryByRole('alert')).toBeNull();
});

test.each(['chart', 'table'] as const)('a %s that breaks leaves the other and the title of its frame', (part) => {
  quietly();
  isBroken = true;
  const sound = <p>sound</p>;
  render(
    <HostContext value={memoryHost()}>
      <ChartFrame title="Which joints gape" caption="so it is" table={part === 'table' ? <Fragile /> : sound}>
        {part === 'chart' ? <Fragile /> : sound}
      </ChartFrame>
    </HostContext>,
  );
  const twin = screen.getByRole('group');
  twin.toggleAttribute('open', true);
  fireEvent(twin, new Event('toggle'));
  expect(screen.getByRole('heading', { name: 'Which joints gape' })).toBeTruthy();
  expect(screen.getByText('sound')).toBeTruthy();
  expect(screen.getByRole('alert').textContent).toContain(`The ${part} "Which joints gape" could not be drawn`);
});
