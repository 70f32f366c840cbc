/** The file or the options are wrong: exit code 2, one sentence a line on standard error, nothing on standard output. */
export class Refusal extends Error {
  readonly lines: readonly string[];

  constructor(lines: readonly string[]) {
    super(lines.join(' '));
    this.lines = lines;
  }
}
