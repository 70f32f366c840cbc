// @vitest-environment happy-dom
import { act, cleanup, renderHook } from '@testing-library/react';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { drawn, useAfterDrawing } from '../../../renderer/state/after-drawing';

/** Frames come when the test says so. */
let frames: FrameRequestCallback[] = [];

beforeEach(() => {
  frames = [];
  vi.useFakeTimers();
  vi.stubGlobal('requestAnimationFrame', (callback: FrameRequestCallback) => frames.push(callback));
});

afterEach(() => {
  cleanup();
  vi.unstubAllGlobals();
  vi.useRealTimers();
});

function beginFrame(): void {
  for (const callback of frames.splice(0)) callback(0);
}

async function endFrame(): Promise<void> {
  await act(() => vi.advanceTimersByTimeAsync(1));
}

test('a value is held back until the page is drawn with what else changed', async () => {
  const { result, rerender } = renderHook((value: string) => useAfterDrawing(value), { initialProps: 'before' });
  expect(result.current).toBe('before');
  rerender('after');
  expect(result.current).toBe('before');
  beginFrame();
  expect(result.current).toBe('before');
  await endFrame();
  expect(result.current).toBe('after');
});

test('values that come faster than frames do not hold each other back', async () => {
  const { result, rerender } = renderHook((value: number) => useAfterDrawing(value), { initialProps: 0 });
  const shown: number[] = [];
  for (const value of [1, 2, 3, 4]) {
    rerender(value);
    beginFrame();
    rerender(value + 0.5);
    await endFrame();
    shown.push(result.current);
  }
  expect(shown).toEqual([1, 2, 3, 4]);
  beginFrame();
  await endFrame();
  expect(result.current).toBe(4.5);
});

test('where there are no frames, as in a window that nobody sees, it comes all the same', async () => {
  const { result, rerender } = renderHook((value: string) => useAfterDrawing(value), { initialProps: 'before' });
  rerender('after');
  const isDrawn = vi.fn();
  void drawn().then(isDrawn);
  await act(() => vi.advanceTimersByTimeAsync(99));
  expect([result.current, isDrawn.mock.calls.length]).toEqual(['before', 0]);
  await act(() => vi.advanceTimersByTimeAsync(1));
  expect([result.current, isDrawn.mock.calls.length]).toEqual(['after', 1]);
});
