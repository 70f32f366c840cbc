/** Another run of the grain. Ripped staves cannot be turned end for end, so methods that do it are changed with it on request. */
import type { Grain, Project } from '../../../sim/project/document';
import { listText } from '../../../sim/wording/figures';
import { askToChoose } from '../../state/choice-store';
import { edit, useDocument } from '../../state/document-store';
import { withSection } from '../../state/edits';

/** Names of the methods that turn the strip end for end. */
function turningMethods({ methods }: Project): string {
  const turning = methods.filter(({ sequence }) => sequence === 'swapSides');
  return listText(turning.map(({ name }) => `“${name}”`));
}

/** The grain up the stave, and every strip turned over. */
export function withGrainUpStave(project: Project): Project {
  const methods = project.methods.map((method) => ({ ...method, sequence: 'flipFace' as const }));
  return withSection('piece', { grain: 'upStave' })({ ...project, methods });
}

/** @param say is told, in a sentence, what was changed besides; '' for nothing */
export function chooseGrain(grain: Grain, say: (sentence: string) => void): void {
  const names = turningMethods(useDocument.getState().project);
  const alone = (): void => {
    edit(withSection('piece', { grain }));
    say('');
  };
  if (grain === 'alongRing' || names === '') {
    alone();
    return;
  }
  askToChoose({
    title: 'The grain up the stave',
    lines: [
      `Such staves are ripped, and a board is turned over between rips. Now the strip is turned end for end in ${names}.`,
    ],
    answers: [
      {
        label: 'Turn it over there too',
        detail: 'one step, which Undo takes back',
        take: () => {
          edit(withGrainUpStave);
          say(`The strip is turned over now in ${names}. Undo takes both back.`);
        },
      },
      { label: 'Change the grain alone', take: alone },
    ],
    mayWait: true,
  });
}
