import type { Project } from '../../sim/project/document';
import type { MethodResult } from '../../sim/run/prediction';

/** The place of a result's method in the project; its mark follows from it. */
export function methodIndexOf({ methods }: Project, { prediction }: MethodResult): number {
  return methods.findIndex(({ name }) => name === prediction.name);
}
