/** Keys, dropped files and the edited mark: what the window as a whole listens to. */
import { useEffect } from 'react';
import type { Host } from '../../main/contract/host';
import { isPressed, menuShortcut } from '../parts/shortcut';
import { useDocument } from '../state/document-store';
import { isEdited, useFile } from '../state/file-store';
import { useRun } from '../state/run-store';
import { useView } from '../state/view-store';
import { tellOfChange } from './changed-on-disk';
import type { Command } from './command';
import { mayLeave, takeUpDropped } from './open-save';

/** A slider moves many times a second; the menu, which is closed then, need not. */
const MENU_FOLLOWS_MS = 250;

export function useCommandKeys(commandsNow: () => readonly Command[]): void {
  useEffect(() => {
    const onKeyDown = (event: KeyboardEvent): void => {
      if (document.querySelector('dialog[open]')) return;
      const command = commandsNow().find(({ shortcut }) => shortcut && isPressed(shortcut, event));
      if (!command) return;
      event.preventDefault();
      takeOverTyping();
      if (command.whyNot() === null) void command.run();
    };
    window.addEventListener('keydown', onKeyDown);
    return () => window.removeEventListener('keydown', onKeyDown);
  }, [commandsNow]);
}

/** Ends the gesture of the field that is being typed in, so that its number is saved or undone whole; the focus stays. */
function takeOverTyping(): void {
  const field = document.activeElement;
  if (!(field instanceof HTMLInputElement)) return;
  field.blur();
  field.focus();
}

/** A project file dropped anywhere on the window is opened. */
export function useDroppedFiles(host: Host): void {
  useEffect(() => {
    const onDragOver = (event: DragEvent): void => {
      if (event.dataTransfer?.types.includes('Files')) event.preventDefault();
    };
    const onDrop = (event: DragEvent): void => {
      const file = event.dataTransfer?.files[0];
      if (!file) return;
      event.preventDefault();
      if (mayLeave()) void takeUpDropped(host, file);
    };
    window.addEventListener('dragover', onDragOver);
    window.addEventListener('drop', onDrop);
    return () => {
      window.removeEventListener('dragover', onDragOver);
      window.removeEventListener('drop', onDrop);
    };
  }, [host]);
}

/** While the person was elsewhere, another program may have changed the file. */
export function useComingBack(host: Host): void {
  useEffect(() => {
    const onFocus = (): void => void tellOfChange(host);
    window.addEventListener('focus', onFocus);
    return () => window.removeEventListener('focus', onFocus);
  }, [host]);
}

export function useIsEdited(): boolean {
  useDocument((state) => state.project);
  useFile((state) => state.savedProject);
  return isEdited();
}

/** Keeps the window's own menu, where the host has one, at what can be done just now. */
export function useWindowMenu(host: Host, commandsNow: () => readonly Command[]): void {
  useEffect(() => {
    let shown = '';
    let isDue = false;
    const show = (): void => {
      isDue = false;
      const commands = commandsNow().map(({ id, label, group, shortcut, whyNot }) => ({
        id,
        label,
        group,
        shortcut: shortcut && menuShortcut(shortcut),
        applies: whyNot() === null,
      }));
      const text = JSON.stringify(commands);
      if (text === shown) return;
      shown = text;
      host.setMenu(commands);
    };
    const showSoon = (): void => {
      if (isDue) return;
      isDue = true;
      setTimeout(show, MENU_FOLLOWS_MS);
    };
    host.onMenuChosen((id) => {
      const command = commandsNow().find((one) => one.id === id);
      if (!command || command.whyNot() !== null || document.querySelector('dialog[open]')) return;
      takeOverTyping();
      void command.run();
    });
    show();
    const stops = [useDocument.subscribe(showSoon), useView.subscribe(showSoon), useRun.subscribe(showSoon)];
    return () => {
      for (const stop of stops) stop();
    };
  }, [host, commandsNow]);
}

/** Work shorter than this is over before anybody looks for how far it has come. */
const LONG_WORK_MS = 1000;

/** Shows how far long work has come where the host can, also while its window is out of sight. */
export function useProgressShown(host: Host): void {
  useEffect(() => {
    let beganMs = 0;
    let isShown = false;
    return useRun.subscribe(({ work }, before) => {
      if (work && !before.work) beganMs = performance.now();
      if (work && work.ringsWanted > 0 && performance.now() - beganMs > LONG_WORK_MS) {
        isShown = true;
        host.setProgress(Math.min(1, work.ringsDone / work.ringsWanted));
      } else if (!work && isShown) {
        isShown = false;
        host.setProgress(null);
      }
    });
  }, [host]);
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
