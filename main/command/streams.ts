/** Where a command reads and writes; the process's own streams unless a test hands others in. */

export interface Sink {
  write(text: string): unknown;
  isTTY?: boolean | undefined;
}

export interface CommandIo {
  stdout: Sink;
  stderr: Sink;
  /** What the file name `-` reads. */
  stdin?: AsyncIterable<Uint8Array | string>;
  /** From now on the first Ctrl-C aborts this signal instead of ending the program; the second ends it. */
  interrupted?: () => AbortSignal;
}
