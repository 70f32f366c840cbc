/** Everything a person can do from the whole window. Buttons, keys, the list of commands and the window's menu read this one list. */
import type { Host } from '../../main/contract/host';
import { savePrediction, saveRings, whyNoPrediction, whyNoRings } from '../exports/project-exports';
import { openOrientation } from '../parts/orientation';
import type { Shortcut } from '../parts/shortcut';
import { edit, redo, undo, useDocument } from '../state/document-store';
import { offered } from '../state/offered-commands';
import { whyNoOutput } from '../state/problems';
import type { Simulation } from '../state/simulate-project';
import { standingNow } from '../state/standing';
import { PAGE_NAMES, PAGES, showPage, type ThemeChoice, useView } from '../state/view-store';
import type { Command, CommandGroup } from './command';
import { methodCommands } from './method-commands';
import { mayLeave, openExample, openFile, openRecent, saveFile } from './open-save';
import { openPalette } from './palette-store';

const mod = (key: string, shift = false): Shortcut => ({ key, mod: true, shift });
const applies = (): null => null;

/** What follows from a command's id and head alone is left out. */
type Plain = Pick<Command, 'id' | 'label' | 'run'> & Partial<Command>;

function under(group: CommandGroup, commands: readonly Plain[]): Command[] {
  return commands.map((command) => ({ group, keywords: [], shortcut: null, whyNot: applies, ...command }));
}

/** As they stand just now: methods have commands of their own, and switches say which way they go. */
export function commandsFor(host: Host, simulation: Simulation): readonly Command[] {
  return [
    ...under('File', fileCommands(host)),
    ...under('Edit', editCommands()),
    ...under(
      'Go to',
      PAGES.map((page) => ({
        id: `show-${page}`,
        label: PAGE_NAMES[page],
        keywords: ['page', 'go to', 'show'],
        whyNot: () => (useView.getState().page === page ? 'This page is on the screen.' : null),
        run: () => showPage(page),
      })),
    ),
    ...under('Figures', figureCommands(simulation)),
    ...under('Methods', methodCommands()),
    ...under('View', viewCommands()),
    ...under('Help', [
      { id: 'commands', label: 'Commands', keywords: ['find', 'search', 'all'], shortcut: mod('k'), run: openPalette },
      {
        id: 'orientation',
        label: 'How to begin',
        keywords: ['help', 'first steps', 'introduction', 'orientation', 'explain the screen'],
        shortcut: { key: 'f1', mod: false, shift: false },
        run: openOrientation,
      },
    ]),
  ];
}

function fileCommands(host: Host): Plain[] {
  return [
    {
      id: 'open',
      label: 'Open',
      keywords: ['file', 'load', 'project'],
      shortcut: mod('o'),
      run: async () => {
        if (mayLeave()) await openFile(host);
      },
    },
    {
      id: 'open-recent',
      label: 'Recent',
      keywords: ['file', 'last', 'open again', 'reopen'],
      run: () => openRecent(host),
    },
    {
      id: 'save',
      label: 'Save',
      keywords: ['file', 'keep', 'store'],
      shortcut: mod('s'),
      run: () => saveFile(host),
    },
    {
      id: 'save-as',
      label: 'Save under another name',
      keywords: ['file', 'save as', 'copy', 'keep', 'store'],
      shortcut: mod('s', true),
      run: () => saveFile(host, 'anew'),
    },
    {
      id: 'open-example',
      label: 'Open the example',
      keywords: ['sample', 'start', 'demo', 'lantern'],
      run: () => {
        if (mayLeave()) openExample();
      },
    },
    {
      id: 'print',
      label: 'Print the sheet',
      keywords: ['paper', 'report', 'client', 'explain'],
      whyNot: () =>
        offered('print') ? whyNoOutput() : 'What is printed is the sheet on the page Explain; go there first.',
      run: () => offered('print')?.(),
    },
    {
      id: 'save-pdf',
      label: 'Save the sheet as PDF',
      keywords: ['paper', 'report', 'client', 'explain', 'export'],
      whyNot: () =>
        offered('save-pdf') ? whyNoOutput() : 'The PDF is of the sheet on the page Explain; go there first.',
      run: () => offered('save-pdf')?.(),
    },
    {
      id: 'save-prediction',
      label: 'Save the prediction as JSON',
      keywords: ['export', 'machine', 'figures', 'verdict', 'data'],
      whyNot: whyNoPrediction,
      run: () => savePrediction(host),
    },
    {
      id: 'save-rings',
      label: 'Save all rings as CSV',
      keywords: ['export', 'table', 'spreadsheet', 'single rings', 'joints', 'data'],
      whyNot: whyNoRings,
      run: () => saveRings(host),
    },
  ];
}

function editCommands(): Plain[] {
  const history = () => useDocument.temporal.getState();
  return [
    {
      id: 'undo',
      label: 'Undo',
      keywords: ['back', 'revert'],
      shortcut: mod('z'),
      whyNot: () => (history().pastStates.length > 0 ? null : 'Nothing was changed yet.'),
      run: undo,
    },
    {
      id: 'redo',
      label: 'Redo',
      keywords: ['again', 'forward'],
      shortcut: mod('z', true),
      whyNot: () => (history().futureStates.length > 0 ? null : 'Nothing was undone.'),
      run: redo,
    },
  ];
}

function figureCommands(simulation: Simulation): Plain[] {
  return [
    {
      id: 'stop',
      label: 'Stop refining the figures',
      keywords: ['simulation', 'work', 'cancel', 'halt'],
      whyNot: () => (['preview', 'refining'].includes(standingNow()) ? null : 'No figure is being refined just now.'),
      run: simulation.cancel,
    },
    {
      id: 'go-on',
      label: 'Go on refining the figures',
      keywords: ['simulation', 'work', 'continue', 'resume'],
      whyNot: () => (standingNow() === 'stopped' ? null : 'Nothing was stopped.'),
      run: simulation.goOn,
    },
  ];
}

const THEMES: readonly { theme: ThemeChoice; label: string }[] = [
  { theme: 'system', label: 'Theme: light or dark as the machine has it' },
  { theme: 'light', label: 'Theme: light' },
  { theme: 'dark', label: 'Theme: dark' },
];

function viewCommands(): Plain[] {
  const { project } = useDocument.getState();
  const { inchFractions, angleStyle } = useView.getState();
  const isInch = project.display === 'inch';
  const isSo = (so: boolean, why: string) => () => (so ? why : null);
  return [
    {
      id: 'units-metric',
      label: 'Lengths in millimetres',
      keywords: ['units', 'metric', 'mm'],
      whyNot: isSo(!isInch, 'Lengths are in millimetres already.'),
      run: () => edit((project) => ({ ...project, display: 'metric' })),
    },
    {
      id: 'units-inch',
      label: 'Lengths in inches',
      keywords: ['units', 'imperial', 'in'],
      whyNot: isSo(isInch, 'Lengths are in inches already.'),
      run: () => edit((project) => ({ ...project, display: 'inch' })),
    },
    {
      id: 'inch-fractions',
      label: inchFractions ? 'Inches as decimals' : 'Inches as fractions to 1/64',
      keywords: ['units', 'fractions', 'decimals'],
      whyNot: isSo(!isInch, 'Lengths are in millimetres.'),
      run: () => useView.setState({ inchFractions: !inchFractions }),
    },
    {
      id: 'angle-style',
      label: angleStyle === 'decimal' ? 'Angles in degrees and minutes' : 'Angles in decimal degrees',
      keywords: ['units', 'degrees', 'minutes', 'decimals'],
      whyNot: () => null,
      run: () => useView.setState({ angleStyle: angleStyle === 'decimal' ? 'minutes' : 'decimal' }),
    },
    ...THEMES.map(({ theme, label }) => ({
      id: `theme-${theme}`,
      label,
      keywords: ['colours', 'contrast', 'night', 'bright', 'auto'],
      whyNot: () => (useView.getState().theme === theme ? 'It is so already.' : null),
      run: () => useView.setState({ theme }),
    })),
  ];
}
