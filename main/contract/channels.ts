/** The names under which the pages and the Electron shell talk; one for each verb of `Host`. */
export const CHANNELS = {
  openedAtStart: 'ringtrue:opened-at-start',
  open: 'ringtrue:open',
  reopen: 'ringtrue:reopen',
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
  setEdited: 'ringtrue:set-edited',
} as const;
