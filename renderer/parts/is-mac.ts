/** Where keys are written the Mac's way. */
export const IS_MAC = typeof navigator === 'object' && /Mac|iP(hone|ad)/.test(navigator.platform);
