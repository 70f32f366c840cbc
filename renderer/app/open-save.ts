/** Opening and saving the project through the host. Whatever is refused is said in a dialog, and the project on the screen stays. */
import type { FileToSave, Host, HostProblem, OpenedFile, SavedFile } from '../../main/contract/host';
import type { Project } from '../../sim/project/document';
import { exampleProject } from '../../sim/project/example';
import { sizeProblem } from '../../sim/project/file-size';
import { type Problem, problemLine } from '../../sim/project/problem';
import { writeProject } from '../../sim/project/write';
import { readProject } from '../../sim/reading/read';
import { fileNameFor } from '../exports/file-name';
import { askToChoose } from '../state/choice-store';
import { replaceProject, useDocument } from '../state/document-store';
import { isEdited, useFile } from '../state/file-store';
import { problemsOf } from '../state/problems';
import { announce, refuse, useView } from '../state/view-store';

function isProblem(answer: object): answer is HostProblem {
  return 'problem' in answer;
}

function lines(problems: readonly Problem[]): string[] {
  return problems.map(problemLine);
}

function show(project: Project, file: { name: string | null; place: string | null }): void {
  replaceProject(project);
  useFile.setState({ savedProject: project, fileName: file.name, place: file.place });
  useView.setState({ switchedOff: [] });
  announce(`${project.title} is open.`);
}

/** Reads the text of a project file onto the screen, or says why not and keeps what is there. */
export function takeUp({ name, text, place }: OpenedFile): void {
  const outcome = readProject(text);
  if (outcome.ok) show(outcome.project, { name, place });
  else refuse(`${name} was not opened`, lines(outcome.problems));
}

/** Shows edits that were kept aside, as edits: they are not saved yet. */
export function takeUpEdits({ name, text, place }: OpenedFile): void {
  const outcome = readProject(text);
  if (!outcome.ok) {
    refuse('The edits were not brought back', lines(outcome.problems));
    return;
  }
  const { project } = outcome;
  // First what they are an edit of, so that at no moment they count as saved or given up.
  useFile.setState({ savedProject: structuredClone(project), fileName: name, place });
  replaceProject(project);
  useView.setState({ switchedOff: [] });
  announce(`The edits of ${project.title} are back. They are not saved yet.`);
}

export function takeUpAnswer(answer: OpenedFile | HostProblem | null): void {
  if (!answer) return;
  if (isProblem(answer)) refuse('Nothing was opened', [answer.problem]);
  else takeUp(answer);
}

/** Takes files that are opened from outside while the program runs, once the loss of edits is agreed to. */
export function takeFilesFromOutside(host: Host): void {
  host.onFileWanted((answer) => {
    if (mayLeave()) takeUpAnswer(answer);
  });
}

export async function openFile(host: Host): Promise<void> {
  takeUpAnswer(await host.open());
}

/** Offers the files opened or saved here not long ago. */
export async function openRecent(host: Host): Promise<void> {
  const files = await host.recent();
  const none = 'None yet. Files that the program can write back are listed here once they were opened or saved.';
  askToChoose({
    title: 'Recent files',
    lines: files.length === 0 ? [none] : [],
    answers: files.map(({ name, folder, place }) => ({
      label: name,
      detail: folder,
      take: () => {
        if (mayLeave()) void host.reopen(place).then(takeUpAnswer);
      },
    })),
    mayWait: true,
  });
}

export async function openAtStart(host: Host): Promise<void> {
  const answer = await host.openedAtStart();
  if (!answer) return;
  if (isProblem(answer)) refuse('The file was not opened', [answer.problem]);
  else takeUp(answer);
}

/** Opens a dropped file with its place where the host is told it, else as a text without one. */
export async function takeUpDropped(host: Host, file: File): Promise<void> {
  const answer = await host.openDropped(file);
  if (answer) return takeUpAnswer(answer);
  const problem = sizeProblem(file.name, file.size);
  if (problem) return refuse(`${file.name} was not opened`, [problem]);
  try {
    takeUp({ name: file.name, text: await file.text(), place: null });
  } catch {
    refuse(`${file.name} was not opened`, [`${file.name} could not be read. Drop a Ringtrue project file.`]);
  }
}

/** @param name `anew`: asks for another name even where the project has one */
export async function saveFile(host: Host, name: 'as it is' | 'anew' = 'as it is'): Promise<void> {
  const { project } = useDocument.getState();
  const problems = problemsOf(project);
  if (problems.length > 0) {
    return refuse('Not saved: a file with these values could not be opened again', lines(problems));
  }
  const { fileName, place } = useFile.getState();
  await write(host, project, {
    name: fileName ?? fileNameFor(project.title),
    text: writeProject(project),
    place: name === 'anew' ? null : place,
  });
}

async function write(host: Host, project: Project, file: FileToSave): Promise<void> {
  const answer = await host.save(file);
  if (!answer) return;
  if (!isProblem(answer)) return markSaved(project, answer);
  if (answer.because === 'changed on disk' && file.place !== null)
    askWhatOfChanged(host, project, file, answer.problem);
  else refuse('Not saved', [answer.problem]);
}

function markSaved(project: Project, { name, place }: SavedFile): void {
  useFile.setState({ savedProject: project, fileName: name, place });
  announce(`${name} is saved.`);
}

function askWhatOfChanged(host: Host, project: Project, file: FileToSave, problem: string): void {
  const { place } = file;
  askToChoose({
    title: 'Not saved: the file is not as it was',
    lines: [problem],
    answers: [
      { label: 'Write over it', take: () => void write(host, project, { ...file, overwrite: true }) },
      { label: 'Save under another name', take: () => void write(host, project, { ...file, place: null }) },
      {
        label: 'Open it as it is now',
        detail: 'Your edits are given up.',
        take: () => {
          if (place !== null) void host.reopen(place).then(takeUpAnswer);
        },
      },
    ],
    mayWait: true,
  });
}

export function openExample(): void {
  show(exampleProject(), { name: null, place: null });
}

/** Asks before edits are lost; true when there are none or the person agrees. */
export function mayLeave(): boolean {
  return !isEdited() || window.confirm('There are unsaved changes. Go on and lose them?');
}
