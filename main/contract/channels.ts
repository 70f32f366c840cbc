/** The names under which the pages and the Electron shell talk; one for each verb of `Host`. */
export const CHANNELS = {
  openedAtStart: 'ringtrue:opened-at-start',
  open: 'ringtrue:open',
  save: 'ringtrue:save',
  setEdited: 'ringtrue:set-edited',
} as const;
