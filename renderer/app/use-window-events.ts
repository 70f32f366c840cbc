/** Keys, dropped files and the edited mark: what the window as a whole listens to. */
import { useEffect } from 'react';
import type { Host } from '../../main/contract/host';
import { useDocument } from '../state/document-store';
import { isEdited, useFile } from '../state/file-store';
import { type Command, isPressed } from './commands';
import { mayLeave, takeUpDropped } from './open-save';

export function useCommandKeys(commands: readonly Command[]): void {
  useEffect(() => {
    const onKeyDown = (event: KeyboardEvent): void => {
      if (document.querySelector('dialog[open]')) return;
      const command = commands.find(({ shortcut }) => shortcut && isPressed(shortcut, event));
      if (!command) return;
      event.preventDefault();
      takeOverTyping();
      if (command.when()) void command.run();
    };
    window.addEventListener('keydown', onKeyDown);
    return () => window.removeEventListener('keydown', onKeyDown);
  }, [commands]);
}

/** Ends the gesture of the field that is being typed in, so that its number is saved or undone whole; the focus stays. */
function takeOverTyping(): void {
  const field = document.activeElement;
  if (!(field instanceof HTMLInputElement)) return;
  field.blur();
  field.focus();
}

/** A project file dropped anywhere on the window is opened. */
export function useDroppedFiles(): void {
  useEffect(() => {
    const onDragOver = (event: DragEvent): void => {
      if (event.dataTransfer?.types.includes('Files')) event.preventDefault();
    };
    const onDrop = (event: DragEvent): void => {
      const file = event.dataTransfer?.files[0];
      if (!file) return;
      event.preventDefault();
      if (mayLeave()) void takeUpDropped(file);
    };
    window.addEventListener('dragover', onDragOver);
    window.addEventListener('drop', onDrop);
    return () => {
      window.removeEventListener('dragover', onDragOver);
      window.removeEventListener('drop', onDrop);
    };
  }, []);
}

export function useIsEdited(): boolean {
  useDocument((state) => state.project);
  useFile((state) => state.savedProject);
  return isEdited();
}

/** Shows in the window's title, and tells the host, whether closing would lose anything. */
export function useEditedMark(host: Host): void {
  const title = useDocument((state) => state.project.title);
  const edited = useIsEdited();
  useEffect(() => {
    document.title = `${edited ? '• ' : ''}${title} – Ringtrue`;
  }, [title, edited]);
  useEffect(() => host.setEdited(edited), [host, edited]);
}
