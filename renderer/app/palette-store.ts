/** Whether the list of commands is open. */
import { create } from 'zustand';

export const usePalette = create<{ isOpen: boolean }>()(() => ({ isOpen: false }));

export function openPalette(): void {
  usePalette.setState({ isOpen: true });
}

export function closePalette(): void {
  usePalette.setState({ isOpen: false });
}
