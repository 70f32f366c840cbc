import type { Host } from './host';

/** The names under which the pages and the Electron shell talk; one for each verb of `Host`. */
export const CHANNELS = {
  openedAtStart: 'ringtrue:opened-at-start',
  open: 'ringtrue:open',
  openDropped: 'ringtrue:open-dropped',
  reopen: 'ringtrue:reopen',
  changedOnDisk: 'ringtrue:changed-on-disk',
  recent: 'ringtrue:recent',
  save: 'ringtrue:save',
  keepRecovery: 'ringtrue:keep-recovery',
  recovery: 'ringtrue:recovery',
  dropRecovery: 'ringtrue:drop-recovery',
  printPdf: 'ringtrue:print-pdf',
  exportFile: 'ringtrue:export-file',
  keptView: 'ringtrue:kept-view',
  keepView: 'ringtrue:keep-view',
  setMenu: 'ringtrue:set-menu',
  onMenuChosen: 'ringtrue:menu-chosen',
  onFileWanted: 'ringtrue:file-wanted',
  setProgress: 'ringtrue:set-progress',
  setEdited: 'ringtrue:set-edited',
} as const satisfies Record<Exclude<keyof Host, 'kind'>, string>;

/** The verbs with which the pages speak to the shell; with the others the shell speaks and the pages listen. */
export type SpokenVerb = Exclude<keyof typeof CHANNELS, `on${string}`>;

/** Those whose answer the pages wait for. */
export type AskedVerb = {
  [Verb in SpokenVerb]: Host[Verb] extends (...payload: never[]) => Promise<unknown> ? Verb : never;
}[SpokenVerb];

/** Those that nobody waits for an answer to. */
export type ToldVerb = Exclude<SpokenVerb, AskedVerb>;
