export const IS_MAC = /Mac|iP(hone|ad)/.test(navigator.platform);
