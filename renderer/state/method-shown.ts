/** Which method the pages inside one method show. */
import type { Method, Project } from '../../sim/project/document';
import { useDocument } from './document-store';
import { useJointsView } from './joints-view';
import type { MethodOutcome } from './method-outcomes';

/** Place in the project of the method chosen; without a choice the first that is `preferred`, else the first of all. */
export function methodShownIn(
  project: Project,
  name: string | null,
  preferred: (method: Method) => boolean = () => true,
): number {
  const chosen = project.methods.findIndex((method) => method.name === name);
  return chosen >= 0 ? chosen : Math.max(0, project.methods.findIndex(preferred));
}

/** The method that was chosen, else the first that takes part in the comparison. */
export function methodLookedAt(outcomes: readonly MethodOutcome[], name: string | null): MethodOutcome | undefined {
  return outcomes.find(({ method }) => method.name === name) ?? outcomes.find(({ isOff }) => !isOff) ?? outcomes[0];
}

export function useMethodShown(preferred?: (method: Method) => boolean): number {
  const project = useDocument((state) => state.project);
  const name = useJointsView((view) => view.lookedAtMethod);
  return methodShownIn(project, name, preferred);
}

export function showMethod(name: string): void {
  useJointsView.setState({ lookedAtMethod: name });
}
