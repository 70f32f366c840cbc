/** What `--help` prints. */

const RUN_OPTIONS_HELP = `  --trials N            rings to simulate for each method, 100 to 10000000; exact
  --seed S              seed of the random draws, 0 to 4294967295
  --rule touch|contact  how the ring closes: contact is the truth of the model, touch a quick preview
  --method NAME         only this method
  --budget, --no-budget with or without the error budget (without, unless asked for)`;

export const HELP = {
  ringtrue: `ringtrue: how the joints of a ring of mitred staves will close, before the first cut.

  ringtrue predict FILE   what each method of the project leads to
  ringtrue compare FILE   the methods side by side, and which to use
  ringtrue example        a worked project file to start from
  ringtrue check FILE     whether a project file can be used

FILE is a project, *.ringtrue.json; - reads standard input.
"ringtrue COMMAND --help" tells more. Exit code: 0 fine, 2 wrong file or options, 1 anything else.
`,
  predict: `ringtrue predict FILE [options]

What each method of the project leads to: gaps, mouth, clear opening, chance of success, cost.

  --json                one JSON object on standard output in place of tables
${RUN_OPTIONS_HELP}
`,
  compare: `ringtrue compare FILE [options]

The methods side by side, which of two pieces is the tighter, and which method to use.

  --json                one JSON object on standard output in place of tables: the prediction's keys, then
                        "pairs" (first, second, firstAhead with its interval) and "recommendation" (headline, because)
${RUN_OPTIONS_HELP}
`,
  example: `ringtrue example [options]

A worked project file, invented for the purpose, on standard output or in a file.

  --which NAME          lantern (unless told otherwise), planter or mirror-frame
  --out FILE            writes this file; one that is there already is kept
  --force               writes it even so
`,
  check: `ringtrue check FILE

Whether the project can be used: what it holds and what is worth a second look, or a line for each problem.
`,
} as const;
