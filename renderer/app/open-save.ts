/** Opening and saving the project through the host. Whatever is refused is said in a dialog, and the project on the screen stays. */
import type { Host, HostProblem, OpenedFile } from '../../main/contract/host';
import type { Project } from '../../sim/project/document';
import { exampleProject } from '../../sim/project/example';
import { sizeProblem } from '../../sim/project/file-size';
import { type Problem, problemLine } from '../../sim/project/problem';
import { readProject } from '../../sim/project/read';
import { writeProject } from '../../sim/project/write';
import { replaceProject, useDocument } from '../state/document-store';
import { isEdited, useFile } from '../state/file-store';
import { problemsOf } from '../state/problems';
import { announce, refuse, useView } from '../state/view-store';

const EXTENSION = '.ringtrue.json';

function isProblem(answer: object): answer is HostProblem {
  return 'problem' in answer;
}

function lines(problems: readonly Problem[]): string[] {
  return problems.map(problemLine);
}

/** A file name made of the title: letters, digits and dashes. */
export function fileNameFor(title: string): string {
  const stem = title
    .toLowerCase()
    .replace(/[^\p{Letter}\p{Number}]+/gu, '-')
    .replace(/^-+|-+$/g, '')
    .slice(0, 60);
  return `${stem || 'project'}${EXTENSION}`;
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

export async function openFile(host: Host): Promise<void> {
  const answer = await host.open();
  if (!answer) return;
  if (isProblem(answer)) refuse('Nothing was opened', [answer.problem]);
  else takeUp(answer);
}

export async function openAtStart(host: Host): Promise<void> {
  const answer = await host.openedAtStart();
  if (!answer) return;
  if (isProblem(answer)) refuse('The file was not opened', [answer.problem]);
  else takeUp(answer);
}

export async function takeUpDropped(file: File): Promise<void> {
  const problem = sizeProblem(file.name, file.size);
  if (problem) return refuse(`${file.name} was not opened`, [problem]);
  try {
    takeUp({ name: file.name, text: await file.text(), place: null });
  } catch {
    refuse(`${file.name} was not opened`, [`${file.name} could not be read. Drop a Ringtrue project file.`]);
  }
}

export async function saveFile(host: Host): Promise<void> {
  const { project } = useDocument.getState();
  const problems = problemsOf(project);
  if (problems.length > 0) {
    return refuse('Not saved: a file with these values could not be opened again', lines(problems));
  }
  const { fileName, place } = useFile.getState();
  const name = fileName ?? fileNameFor(project.title);
  const answer = await host.save({ name, text: writeProject(project), place });
  if (!answer) return;
  if (isProblem(answer)) return refuse('Not saved', [answer.problem]);
  useFile.setState({ savedProject: project, fileName: answer.name, place: answer.place });
  announce(`${answer.name} is saved.`);
}

export function openExample(): void {
  show(exampleProject(), { name: null, place: null });
}

/** Asks before edits are lost; true when there are none or the person agrees. */
export function mayLeave(): boolean {
  return !isEdited() || window.confirm('There are unsaved changes. Go on and lose them?');
}
