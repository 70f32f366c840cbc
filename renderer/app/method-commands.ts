/** What can be done with the methods from anywhere: each is named, for there may be six. */
import type { Method, Project } from '../../sim/project/document';
import { edit, useDocument } from '../state/document-store';
import { withMethodAdded, withMethodCopied, withMethodMoved, withoutMethod } from '../state/edits';
import { showMethod } from '../state/method-shown';
import { MOST_METHODS, startingMethods } from '../state/starting-methods';
import { setSwitchedOff, showPage, useView } from '../state/view-store';
import type { Command } from './command';

type MethodCommand = Pick<Command, 'id' | 'label' | 'keywords' | 'whyNot' | 'run'>;

const always = (): null => null;
const FULL = `${MOST_METHODS} methods are as many as can be compared at once.`;

/** Runs on the page Methods, where what was done is seen. */
function onPage(change: (project: Project) => Project): () => void {
  return () => {
    edit(change);
    showPage('methods');
  };
}

export function methodCommands(): MethodCommand[] {
  const { project } = useDocument.getState();
  const { switchedOff } = useView.getState();
  const isFull = project.methods.length >= MOST_METHODS;
  const added = startingMethods(project.piece).map((method) => ({
    id: `add-method-${method.name}`,
    label: `Add a method like “${method.name}”`,
    keywords: ['new', 'start'],
    whyNot: () => (isFull ? FULL : null),
    run: onPage(withMethodAdded(method)),
  }));
  return [...added, ...project.methods.flatMap((method, index) => commandsOf(project, method, index, switchedOff))];
}

function commandsOf({ methods }: Project, { name }: Method, index: number, off: readonly string[]): MethodCommand[] {
  const isOff = off.includes(name);
  const isLastOn = !isOff && methods.every((method) => method.name === name || off.includes(method.name));
  const moved = (by: -1 | 1, towards: string, isAtEnd: boolean): MethodCommand => ({
    id: `move-${towards}-${index}`,
    label: `Move “${name}” to the ${towards}`,
    keywords: ['order', 'reorder'],
    whyNot: () => (isAtEnd ? `It is at the ${towards} end already.` : null),
    run: onPage(withMethodMoved(index, by)),
  });
  return [
    {
      id: `look-inside-${index}`,
      label: `Look at the joints of “${name}”`,
      keywords: ['inside', 'budget', 'gaps', 'show'],
      whyNot: always,
      run: () => {
        showMethod(name);
        showPage('joints');
      },
    },
    {
      id: `switch-${index}`,
      label: isOff ? `Take “${name}” into the comparison` : `Leave “${name}” out of the comparison`,
      keywords: ['switch on', 'switch off', 'hide', 'compare'],
      whyNot: () => (isLastOn ? 'It is the only method that takes part.' : null),
      run: () => setSwitchedOff(name, !isOff),
    },
    {
      id: `duplicate-${index}`,
      label: `Duplicate “${name}”`,
      keywords: ['copy'],
      whyNot: () => (methods.length >= MOST_METHODS ? FULL : null),
      run: onPage(withMethodCopied(index)),
    },
    {
      id: `differs-from-${index}`,
      label: `Show what differs from “${name}”`,
      keywords: ['difference', 'compare', 'highlight', 'held against'],
      whyNot: () => (methods.length === 1 ? 'There is no other method.' : null),
      run: () => {
        useView.setState({ differsFrom: name });
        showPage('methods');
      },
    },
    moved(-1, 'left', index === 0),
    moved(1, 'right', index === methods.length - 1),
    {
      id: `remove-${index}`,
      label: `Remove “${name}”`,
      keywords: ['delete', 'throw away'],
      whyNot: () => (methods.length === 1 ? 'It is the only method.' : null),
      run: onPage(withoutMethod(index)),
    },
  ];
}
