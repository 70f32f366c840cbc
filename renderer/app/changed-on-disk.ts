/** Tells, when the person comes back to the window, that another program changed the file behind the project. */
import type { Host } from '../../main/contract/host';
import { askToChoose } from '../state/choice-store';
import { isEdited, useFile } from '../state/file-store';
import { takeUpAnswer } from './open-save';

/** Looks once at the file; where another dialog is open, that one goes first and the next coming back looks again. */
export async function tellOfChange(host: Host): Promise<void> {
  const { place } = useFile.getState();
  if (place === null || isAsking()) return;
  const sentence = await host.changedOnDisk(place);
  if (sentence === null || useFile.getState().place !== place || isAsking()) return;
  const wasEdited = isEdited();
  // What is on the screen is in no file any more, so from now on it counts as edits of what is there.
  useFile.setState(({ savedProject }) => ({ savedProject: structuredClone(savedProject) }));
  askToChoose({
    title: 'The file is not as it was',
    lines: [sentence],
    answers: [
      {
        label: 'Open it as it is now',
        ...(wasEdited && { detail: 'Your edits are given up.' }),
        take: () => void host.reopen(place).then(takeUpAnswer),
      },
      {
        label: 'Keep what is here',
        detail: 'Saving asks before it writes over the file.',
        take: () => {},
      },
    ],
    mayWait: false,
  });
}

function isAsking(): boolean {
  return document.querySelector('dialog[open]') !== null;
}
