/** Where the project on the screen is kept, and how it stood when it was last saved or opened. */
import { create } from 'zustand';
import type { Project } from '../../sim/project/document';
import { useDocument } from './document-store';

export interface FileState {
  /** File name, null for a project that was never saved. */
  fileName: string | null;
  /** The host's own word for the file, null when it cannot be written back. */
  place: string | null;
  savedProject: Project;
}

export const useFile = create<FileState>()(() => ({
  fileName: null,
  place: null,
  savedProject: useDocument.getState().project,
}));

/** Undo and redo give back the very same project, so that undoing to the saved state counts as saved. */
export function isEdited(): boolean {
  return useDocument.getState().project !== useFile.getState().savedProject;
}
