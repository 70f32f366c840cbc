/** Keeps unsaved edits aside while they are made, and offers at the start what a former window left. */
import type { Host, OpenedFile } from '../../main/contract/host';
import type { Project } from '../../sim/project/document';
import { writeProject } from '../../sim/project/write';
import { readProject } from '../../sim/reading/read';
import { fileNameFor } from '../exports/file-name';
import { askToChoose } from '../state/choice-store';
import { useDocument } from '../state/document-store';
import { isEdited, useFile } from '../state/file-store';
import { keepableProject } from '../state/keepable-project';
import { problemsOf } from '../state/problems';
import { refuse } from '../state/view-store';
import { takeUpEdits } from './open-save';

const KEPT_AFTER_MS = 2000;
/** Somebody who never rests is not to lose more than this. */
const KEPT_AT_LEAST_EVERY_MS = 10_000;

/**
 * From now on: two seconds after the last edit, and every ten seconds while they follow one another, the edits are kept
 * aside, and as soon as nothing is unsaved, because it was
 * saved or given up, what was kept is dropped.
 *
 * @returns what ends it
 */
export function keepEdits(host: Host): () => void {
  let good: Project = useFile.getState().savedProject;
  let timer: ReturnType<typeof setTimeout> | undefined;
  let wasEdited = isEdited();
  let hasComplained = false;
  /** When the first of the edits not kept yet was made; null when there are none. */
  let waitsSinceMs: number | null = null;

  const keep = async (): Promise<void> => {
    waitsSinceMs = null;
    const { project } = useDocument.getState();
    const { fileName, place } = useFile.getState();
    const text = writeProject(keepableProject(project, good));
    const answer = await host.keepRecovery({ name: fileName ?? fileNameFor(project.title), text, place });
    if (!answer || hasComplained) return;
    hasComplained = true;
    refuse('Unsaved edits cannot be kept aside', [
      answer.problem,
      'Save often: what is not saved ends with the window.',
    ]);
  };

  const look = (): void => {
    const { project } = useDocument.getState();
    if (problemsOf(project).length === 0) good = project;
    clearTimeout(timer);
    const edited = isEdited();
    if (edited) {
      const nowMs = Date.now();
      waitsSinceMs ??= nowMs;
      const leftMs = Math.max(0, waitsSinceMs + KEPT_AT_LEAST_EVERY_MS - nowMs);
      timer = setTimeout(() => void keep(), Math.min(KEPT_AFTER_MS, leftMs));
    } else {
      waitsSinceMs = null;
      if (wasEdited) void host.dropRecovery();
    }
    wasEdited = edited;
  };

  // Opening and saving change both stores one after the other; in between, a project just opened looks edited.
  let isDue = false;
  const lookSoon = (): void => {
    if (isDue) return;
    isDue = true;
    queueMicrotask(() => {
      isDue = false;
      look();
    });
  };

  const stops = [useDocument.subscribe(lookSoon), useFile.subscribe(lookSoon)];
  return () => {
    clearTimeout(timer);
    for (const stop of stops) stop();
  };
}

/** Asks whether edits left by a window that ended should be brought back. They stay kept until the answer. */
export async function offerRecovery(host: Host): Promise<void> {
  const edits = await host.recovery();
  if (!edits) return;
  askToChoose({
    title: 'Bring back unsaved edits?',
    lines: [`Ringtrue ended without saving ${whatOf(edits)}; bring back the edits?`],
    answers: [
      { label: 'Bring back the edits', take: () => takeUpEdits(edits) },
      { label: 'Throw them away', take: () => void host.dropRecovery().then(() => offerRecovery(host)) },
    ],
    mayWait: false,
  });
}

function whatOf({ name, text }: OpenedFile): string {
  const outcome = readProject(text);
  return outcome.ok ? `“${outcome.project.title}” (${name})` : name;
}
